import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { openWindow, type OpenedWindow, type WindowOptions } from './chromium';

/** The reference cars: they stay as they are while the samples grow. */
const REFERENCE_CARS = path.resolve(import.meta.dirname, '../golden/cars');

/** Opens a sample from the file menu: "car-23" is called Car 23 there. */
export const openSample = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  const shown = name.charAt(0).toUpperCase() + name.slice(1).replaceAll('-', ' ');
  await page.getByRole('menuitem', { name: shown, exact: true }).click();
};

/** The window on a reference car, standing still: with reduced motion nothing plays by itself. */
export const openBench = async (car = 'car-23', options: WindowOptions = {}): Promise<OpenedWindow> => {
  const opened = await openWindow({ reducedMotion: 'reduce', served: { samplesFolder: REFERENCE_CARS }, ...options });
  await openSample(opened.page, car);
  await opened.page.getByRole('heading', { name: `Check car ${car.slice(-2)}` }).waitFor();
  await opened.page.evaluate(() => document.fonts.ready);
  return opened;
};

/** The cells of a reading's row: left, right, difference; one of an axle's two: value, difference. */
export const cellsOf = async (page: Page, reading: string): Promise<readonly string[]> =>
  page.locator(`tr[data-reading="${reading}"] td`).allInnerTexts();

/** A field of the motion strip by the start of its name. */
export const motionField = (page: Page, name: string): Locator =>
  page.getByRole('group', { name: 'Motion' }).getByRole('spinbutton', { name: new RegExp(`^${name}`) });

export const type = async (field: Locator, text: string): Promise<void> => {
  await field.fill(text);
  await field.press('Enter');
};

/**
 * Waits until nothing more is drawn: no frame is on its way and no transition runs. What is written over the picture is then
 * that of the last frame; the picture itself may reach the screen a little later.
 */
export const drawn = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const count = (): number => Number(document.querySelector('canvas')?.dataset['drawn'] ?? 0);
    let before = count();
    for (let quiet = 0; quiet < 3;) {
      await new Promise((resolve) => requestAnimationFrame(resolve));
      await new Promise((resolve) => setTimeout(resolve, 20));
      const still = count() === before && document.getAnimations().every(({ playState }) => playState !== 'running');
      quiet = before > 0 && still ? quiet + 1 : 0;
      before = count();
    }
  });

/**
 * The picture once it stands still: two of it show the same, since the software renderer shows a frame some time after it was
 * asked for. Their bytes may differ by rounding.
 */
export const pictureOf = async (page: Page): Promise<Buffer> => {
  const canvas = page.locator('canvas');
  await canvas.waitFor();
  await drawn(page);
  let last = await canvas.screenshot();
  for (;;) {
    const next = await canvas.screenshot();
    if (last.equals(next) || (await shareChanged(page, last, next)) < UNSEEN) return next;
    last = next;
  }
};

/** Parts of a picture: more has changed than this where anything moved, less where nothing did. */
export const SEEN = 0.002;
export const UNSEEN = 0.0005;

/** The share of pixels that differ between two pictures by more than a hair. */
export const shareChanged = (page: Page, before: Buffer, after: Buffer): Promise<number> =>
  page.evaluate(
    async (pictures) => {
      const pixels = await Promise.all(
        pictures.map(async (picture) => {
          const image = new Image();
          image.src = `data:image/png;base64,${picture}`;
          await image.decode();
          const canvas = new OffscreenCanvas(image.width, image.height);
          const pen = canvas.getContext('2d');
          pen?.drawImage(image, 0, 0);
          return pen?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
        }),
      );
      const [a = new Uint8ClampedArray(), b = new Uint8ClampedArray()] = pixels;
      let changed = 0;
      for (let at = 0; at < a.length; at += 4)
        if ([0, 1, 2].some((channel) => Math.abs((a[at + channel] ?? 0) - (b[at + channel] ?? 0)) > 10)) changed += 1;
      return changed / (a.length / 4);
    },
    [before.toString('base64'), after.toString('base64')],
  );
