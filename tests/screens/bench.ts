import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { openWindow, type OpenedWindow, type WindowOptions } from './chromium';

/** The reference cars: they stay as they are while the samples grow. */
const REFERENCE_CARS = path.resolve(import.meta.dirname, '../golden/cars');

/** The window on a reference car, standing still: with reduced motion nothing plays by itself. */
export const openBench = async (car = 'car-23', options: WindowOptions = {}): Promise<OpenedWindow> => {
  const opened = await openWindow({ reducedMotion: 'reduce', served: { samplesFolder: REFERENCE_CARS }, ...options });
  await opened.page.getByLabel('Sample car').selectOption(car);
  await opened.page.getByRole('heading', { name: `Check car ${car.slice(-2)}` }).waitFor();
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

/** The picture once it is drawn: waits until two frames in a row are the same. */
export const pictureOf = async (page: Page): Promise<Buffer> => {
  const canvas = page.locator('canvas');
  await canvas.waitFor();
  await page.waitForFunction(() => Number(document.querySelector('canvas')?.dataset['drawn'] ?? 0) > 0);
  let last = await canvas.screenshot();
  for (;;) {
    await page.waitForTimeout(350);
    const next = await canvas.screenshot();
    if (next.equals(last)) return next;
    last = next;
  }
};
