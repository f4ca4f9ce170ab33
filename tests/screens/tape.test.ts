import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openBench, type } from './bench';
import { openWindow } from './chromium';
import { choose, choosePoint, collisions, labelsOf, placeOfMark, show } from './viewMarks';

const lengthOf = async (page: Page, name: string): Promise<number> => {
  const text = await page.locator(`tr[data-tape="${name}"] td`).first().innerText();
  return Number(text.replace('−', '-').replace(',', ''));
};

/** What else stands over the view where it asks for something. */
const underWords = (): readonly string[] => {
  const box = document.querySelector('.viewport .asked')?.getBoundingClientRect();
  if (!box) return ['nothing is asked'];
  return [...document.querySelectorAll('[data-over-view]:not(.asked)')].flatMap((element) => {
    const { left, right, top, bottom } = element.getBoundingClientRect();
    return left < box.right && right > box.left && top < box.bottom && bottom > box.top ? [element.className] : [];
  });
};

test('the tape is laid in the view from one point to the next, read under Lengths, and given up with Escape', async () => {
  const { page, complaints } = await openBench();
  await choose(page, 'View', 'Front');
  // where the other end is, while its ring is drawn
  await choosePoint(page, 'Wheel centre');
  const [x, y] = await placeOfMark(page, 'chosen');
  await choosePoint(page, 'Ball joint');
  const tape = page.getByRole('button', { name: 'Tape from Ball joint, left' });
  await tape.click();
  await page.getByText('Pick where the tape from ball joint, left, goes to').waitFor();
  for (const [width, height] of [
    [1600, 1000],
    [1280, 720],
  ] as const) {
    await page.setViewportSize({ width, height });
    await expect.poll(() => page.evaluate(underWords)).toEqual([]);
  }
  await page.keyboard.press('Escape');
  await page.getByText('Pick where the tape').waitFor({ state: 'detached' });
  expect(await page.locator('.overlay .tape').count()).toBe(0);
  await tape.click();
  expect(
    await page.evaluate(([px, py]) => document.elementFromPoint(px, py)?.closest('[data-over-view]') === null, [x, y] as const),
  ).toBe(true);
  await page.mouse.click(x, y);
  await page.getByRole('heading', { name: /^Tape/ }).waitFor();
  expect(await page.getByLabel('Tape from', { exact: true }).inputValue()).toBe('left ballJoint');
  expect(await page.getByLabel('Tape to').inputValue()).toBe('left wheelCentre');
  const [whole, ...along] = await Promise.all(
    ['Length', 'ΔX, forward', 'ΔY, left', 'ΔZ, up'].map((name) => lengthOf(page, name)),
  );
  // Pythagoras, in figures of two decimals
  const squares = along.reduce((sum, value) => sum + value * value, 0);
  expect(Math.abs(Math.sqrt(squares) - (whole ?? NaN))).toBeLessThan(0.02);
  expect(await labelsOf(page)).toContain(`${(whole ?? NaN).toFixed(2)} mm`);
  // the point that was chosen is still the one that the card tells about
  await tape.waitFor();
  expect(complaints).toEqual([]);
});

const openList = async (page: Page): Promise<void> => {
  await page.keyboard.press('Control+k');
  await page.getByRole('dialog', { name: 'Command list' }).waitFor();
};

test('the command list finds the tape by what people call it', async () => {
  const { page } = await openBench();
  for (const word of ['measure', 'distance', 'tape']) {
    await openList(page);
    await page.keyboard.type(word);
    await page.getByRole('option', { name: /Tape between two points/ }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor({ state: 'hidden' });
  }
  await openList(page);
  await page.keyboard.type('measure');
  await page.keyboard.press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Tape from');
});

test('what was turned by hand goes on with the arrow keys, on the side whose part it is', async () => {
  const { page } = await openBench();
  const card = page.getByRole('group', { name: /, in hand$/ });
  const box = await card.locator('.dial').boundingBox();
  if (!box) throw new Error('no dial');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const field = card.getByRole('spinbutton').first();
  const value = async (place = field) => Number((await place.inputValue()).replace('−', '-'));
  const before = await value();
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 20, y, { steps: 4 });
  await page.mouse.up();
  const dragged = await value();
  expect(dragged).not.toBe(before);
  await page.keyboard.press('ArrowDown');
  const stepped = await value();
  expect(stepped).toBeLessThan(dragged);
  await card.getByRole('button', { name: 'apart' }).click();
  const right = card.getByRole('spinbutton').nth(1);
  await right.focus();
  await page.mouse.dblclick(x, y);
  expect(await value(right)).toBe(0);
  await page.keyboard.press('ArrowUp');
  expect(await value(right)).toBeGreaterThan(0);
  expect(await value()).toBe(stepped);
});

test('joints show how far they are tilted now and what is rated, on both axles, in the units that are read', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('canvas').waitFor();
  await show(page, /^Tilt of joints/);
  await expect.poll(() => labelsOf(page)).toContainEqual(expect.stringMatching(/^tilt \d+\.\d° of 18\.0° rated$/));
  expect(await page.locator('.overlay .ratedfan').evaluateAll((all) => all.filter((one) => one.getAttribute('d')).length)).toBe(
    3,
  );
  const tilts = async () => (await labelsOf(page)).filter((text) => text.startsWith('tilt'));
  const standing = await tilts();
  await type(page.getByLabel('Bump: wheel travel from standing, mm', { exact: true }), '60');
  await expect.poll(tilts).not.toEqual(standing);
  expect(await collisions(page)).toEqual([]);
  await choose(page, 'Axle', 'Rear');
  await expect.poll(tilts).toContainEqual(expect.stringMatching(/of 13\.0° rated$/));
  expect(complaints).toEqual([]);
});
