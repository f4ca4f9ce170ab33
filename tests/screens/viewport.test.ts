import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { openBench, openSample, pictureOf, SEEN, shareChanged, type } from './bench';
import { openWindow } from './chromium';

const choose = (page: Page, group: string, name: string): Promise<void> =>
  page.getByRole('group', { name: group, exact: true }).getByRole('button', { name, exact: true }).click();
const show = async (page: Page, name: RegExp): Promise<void> => {
  await page.getByRole('button', { name: /^Show \d/ }).click();
  await page.getByRole('checkbox', { name }).click();
  await page.keyboard.press('Escape');
};
const labelsOf = async (page: Page): Promise<readonly string[]> =>
  (await page.locator('.overlay .tag').allTextContents()).filter((text) => text !== '');

/** Pairs of labels that lie on one another, or on something that stands over the view. */
const collisions = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const boxOf = (element: Element) => ({ words: element.textContent ?? '', box: element.getBoundingClientRect() });
    const labels = [...document.querySelectorAll('.overlay .tag')].filter(({ textContent }) => textContent).map(boxOf);
    const over = [...document.querySelectorAll('[data-over-view]')].map(boxOf);
    const meet = (a: DOMRect, b: DOMRect): boolean =>
      a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1;
    return labels.flatMap((label, index) =>
      [...labels.slice(index + 1), ...over]
        .filter((other) => meet(label.box, other.box))
        .map((other) => `${label.words} on ${other.words}`),
    );
  });

describe('what is shown', () => {
  test.each(['front', 'rear'] as const)('corners, axle and whole car, every view, every overlay: %s', async (axle) => {
    const { page, complaints } = await openBench();
    if (axle === 'rear') await choose(page, 'Axle', 'Rear');
    await page.getByLabel('Setup on the bench').selectOption('Trial');
    const pictures: Buffer[] = [await pictureOf(page)];
    for (const scope of ['Right', 'Axle', 'Car']) {
      await choose(page, 'Shown', scope);
      pictures.push(await pictureOf(page));
      expect(await shareChanged(page, pictures.at(-2) ?? Buffer.of(), pictures.at(-1) ?? Buffer.of())).toBeGreaterThan(SEEN);
    }
    expect((await labelsOf(page)).filter((text) => /^(front|rear) roll centre/.test(text))).toHaveLength(2);
    for (const name of [/^Instant centres/, /^Names/, /^Wheel over/]) await show(page, name);
    for (const scope of ['Axle', 'Left']) {
      await choose(page, 'Shown', scope);
      for (const view of [axle === 'rear' || scope === 'Axle' ? 'Behind' : 'Front', 'Side', 'Top', 'Wheel', 'Axis', 'Corner']) {
        await choose(page, 'View', view);
        await pictureOf(page);
        expect(await collisions(page), `${scope} ${view}`).toEqual([]);
      }
    }
    const labels = await labelsOf(page);
    expect(labels.some((text) => / mm further$/.test(text))).toBe(true);
    expect(await page.locator('.overlay .envelope').count()).toBeGreaterThan(2);
    expect(complaints).toEqual([]);
  });

  test('in roll the axle view names both sides, the roll and the roll centre as the readings have them', async () => {
    const { page } = await openBench();
    await choose(page, 'Shown', 'Axle');
    await choose(page, 'View', 'Behind');
    await type(page.getByRole('spinbutton', { name: /^Roll/ }), '1.5');
    await pictureOf(page);
    const labels = await labelsOf(page);
    expect(labels).toContain('roll 1.50°, left side up');
    for (const side of ['Left, droop', 'Right, bump']) expect(labels.some((text) => text.startsWith(side))).toBe(true);
    const reading = await page.locator('tr[data-reading="rollCentreHeight"] td').first().innerText();
    const words = labels.find((text) => text.startsWith('roll centre'));
    const height = Number(words?.match(/roll centre ([\d.]+)/)?.[1]) * (words?.includes('below') ? -1 : 1);
    expect(height).toBeCloseTo(Number(reading.replace('−', '-')), 1);
  });
});

describe('a point in the view', () => {
  /** The screen place of a joint: where hovering names it. */
  const find = async (page: Page, name: string): Promise<readonly [number, number]> => {
    const box = await page.locator('.viewport').boundingBox();
    if (!box) throw new Error('the view is there');
    for (let y = box.y + 34; y < box.y + box.height - 10; y += 9)
      for (let x = box.x + 190; x < box.x + box.width - 80; x += 9) {
        await page.mouse.move(x, y);
        if ((await page.locator('.viewport.overjoint').count()) === 0) continue;
        await page.waitForTimeout(350);
        if ((await labelsOf(page)).includes(name)) return [x, y];
      }
    throw new Error(`${name} is not in sight`);
  };

  test('is asked about, dragged, undone in one step, given up with Escape, and put by numbers', async () => {
    const { page, complaints } = await openBench();
    await choose(page, 'View', 'Front');
    await pictureOf(page);
    const [x, y] = await find(page, 'Strut foot');
    await page.mouse.click(x, y);
    const card = page.getByRole('group', { name: 'Chosen point: Strut foot, left' });
    await card.waitFor();
    const undo = page.getByRole('button', { name: /to undo|^Undo/ });
    const standing = await card.innerText();
    // Not asked yet: a drag turns the eye and moves nothing.
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 30, { steps: 3 });
    await page.mouse.up();
    expect(await card.innerText()).toBe(standing);
    await choose(page, 'View', 'Side');
    await choose(page, 'View', 'Front');
    await card.getByRole('button', { name: 'Move the point' }).click();
    await pictureOf(page);
    const height = card.getByRole('spinbutton', { name: /Z, up/ });
    const before = Number(await height.inputValue());
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 14, { steps: 3 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(Number(await height.inputValue())).toBe(before);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 5, y - 10, { steps: 3 });
    await page.keyboard.press('z');
    await page.mouse.move(x + 9, y - 14, { steps: 3 });
    await page.mouse.up();
    const after = Number(await height.inputValue());
    expect(after).toBeGreaterThan(before + 5);
    const across = Number((await card.getByRole('spinbutton', { name: /Y, left/ }).inputValue()).replace(',', ''));
    await page.keyboard.press('Control+z');
    expect(Number(await height.inputValue())).toBe(before);
    expect(Number((await card.getByRole('spinbutton', { name: /Y, left/ }).inputValue()).replace(',', ''))).toBeCloseTo(
      across,
      2,
    );
    await type(height, String(before + 3));
    expect(await card.innerText()).not.toBe(standing);
    expect(await undo.count()).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
  });

  test('that an adjuster moves turns it', async () => {
    const { page } = await openBench();
    await choose(page, 'View', 'Front');
    await pictureOf(page);
    const [x, y] = await find(page, 'Strut top');
    await page.mouse.click(x, y);
    await page
      .getByRole('group', { name: 'Chosen point: Strut top, left' })
      .getByRole('button', { name: 'Plate across' })
      .click();
    await pictureOf(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 4, y, { steps: 4 });
    await page.mouse.up();
    const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
    expect(Number((await plate.inputValue()).replace('−', '-'))).not.toBe(0);
    await page.keyboard.press('Control+z');
    expect(await plate.inputValue()).toBe('0');
  });
});

describe('pictures to keep', () => {
  test('a PNG at print size with the words on it; drawings true to scale', async () => {
    const { page, complaints } = await openBench();
    await pictureOf(page);
    await page.getByRole('button', { name: /^Show \d/ }).click();
    const saved = async (name: string | RegExp): Promise<Buffer> => {
      const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
      return readFile(await download.path());
    };
    const picture = await saved(/^Picture, PNG/);
    expect(picture.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(picture.readUInt32BE(16)).toBe(3000);
    expect(picture.length).toBeGreaterThan(100_000);
    expect((await saved('Drawing from behind, SVG')).toString('utf8')).toContain('track 1,5');
    expect((await saved('Drawing side, SVG')).toString('utf8')).toContain('trail along the car');
    expect(complaints).toEqual([]);
  });
});

describe('what the graphics driver holds', () => {
  const held = async (page: Page): Promise<readonly string[]> => {
    await pictureOf(page);
    return page.evaluate(() => {
      const { geometries = '', textures = '', programs = '' } = document.querySelector('canvas')?.dataset ?? {};
      return [geometries, textures, programs];
    });
  };

  test('is the same after fifty cars as after the first', async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce', viewport: { width: 1100, height: 540 } });
    await page.locator('tr[data-reading="camber"]').waitFor();
    const cars = ['Chalkboard', 'Marram coupe', 'Saltmarsh hatch'];
    const open = async (index: number): Promise<void> => {
      await openSample(page, cars[index % cars.length] ?? '');
      await page.getByRole('heading', { name: cars[index % cars.length] ?? '' }).waitFor();
      if (index % 5 === 0) await choose(page, 'Axle', 'Rear');
      if (index % 7 === 0) await choose(page, 'Shown', index % 2 === 0 ? 'Car' : 'Left');
    };
    // One corner first: what was once shown of a car stays with the driver until the car goes.
    const settle = async (): Promise<void> => {
      await choose(page, 'Axle', 'Front');
      await choose(page, 'Shown', 'Left');
      await openSample(page, 'Chalkboard');
      await page.getByRole('heading', { name: 'Chalkboard' }).waitFor();
      await openSample(page, 'Saltmarsh hatch');
      await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
    };
    // Once all round, so that what is shared by all cars is there.
    for (let index = 0; index < 8; index += 1) await open(index);
    await settle();
    const before = await held(page);
    for (let index = 0; index < 50; index += 1) await open(index);
    await settle();
    expect(await held(page)).toEqual(before);
    expect(Number(before[0])).toBeGreaterThan(10);
    expect(complaints).toEqual([]);
  }, 240_000);

  test('a context that is lost is said, and drawn again when it comes back', async () => {
    const { page } = await openBench();
    const before = await pictureOf(page);
    await page.evaluate(() => {
      const lose = document.querySelector('canvas')?.getContext('webgl2')?.getExtension('WEBGL_lose_context');
      lose?.loseContext();
      Object.assign(window, { giveBack: () => lose?.restoreContext() });
    });
    await page.getByText('the graphics driver let go of it').waitFor();
    await page.evaluate(() => (window as unknown as { giveBack: () => void }).giveBack());
    await page.getByText('the graphics driver let go of it').waitFor({ state: 'detached' });
    expect(await shareChanged(page, before, await pictureOf(page))).toBeLessThan(0.02);
  });
});

describe('lengths', () => {
  test('stand beside the readings, with a tape in the view, and go out as CSV', async () => {
    const { page, complaints } = await openBench();
    await choose(page, 'Right-hand column', 'Lengths');
    await page.locator('tr[data-length]').first().waitFor();
    const cells = (key: string) => page.locator(`tr[data-length="${key}"] td`).allInnerTexts();
    expect((await cells('rod.tieRod'))[0]).toMatch(/^\d{3}\.\d\d$/);
    await page.getByLabel('Setup on the bench').selectOption('Trial');
    expect((await cells('armLeg.armRear'))[2]).toMatch(/^[+−]\d/);
    await page.getByLabel('Tape from').selectOption({ label: 'Ball joint, left' });
    await page.getByLabel('Tape to').selectOption({ label: 'Ball joint, right' });
    const length = await page.locator('tr[data-tape="Length"] td').first().innerText();
    await choose(page, 'Shown', 'Axle');
    await pictureOf(page);
    expect(
      (await labelsOf(page)).some(
        (text) => text.startsWith(length.replace(',', '').slice(0, 5)) || text.startsWith(length.slice(0, 5)),
      ),
    ).toBe(true);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save lengths as CSV' }).click(),
    ]);
    const text = await readFile(await download.path(), 'utf8');
    expect(text).toMatch(/^part,left \[mm\],right \[mm\]/);
    expect(text.split('\r\n').length).toBeGreaterThan(5);
    expect(complaints).toEqual([]);
  });
});
