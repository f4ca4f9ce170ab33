import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { openWindow } from './chromium';
import { field, seriousFaults, setField, step } from './pointsPage';
import { choosePoint, placeOfMark } from './viewMarks';

/** Where a point stands in the picture [px of the window]; nothing is chosen after. */
const placeOfPoint = async (page: Page, name: string): Promise<readonly [number, number]> => {
  await choosePoint(page, name);
  const place = await placeOfMark(page, 'chosen');
  await choosePoint(page, 'none chosen');
  return place;
};

test(
  'what an adjuster moves is picked in the view, and its direction aimed there; the part follows',
  { timeout: 180_000 },
  async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
    await page.locator('tr[data-reading="camber"]').waitFor();
    await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
    await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: 'Adjusters' }).click();
    await page.getByRole('button', { name: 'Add adjuster', exact: true }).click();
    const ball = await placeOfPoint(page, 'Tie rod end');

    // Each kind has its points or its rod to pick; a rod is picked by one of its ends.
    for (const [kind, label, picked] of [
      ['Slide', 'Point *', 'tieRodEnd'],
      ['Eccentric bolt', 'Point *', 'tieRodEnd'],
      ['Offset bushing', 'Point *', 'tieRodEnd'],
      ['Clamp eccentric', 'Turns about *', 'tieRodEnd'],
      ['Turnbuckle', 'Rod *', 'tieRod'],
    ] as const) {
      await page.getByRole('button', { name: new RegExp(`^${kind}`) }).click();
      await field(page, label).fill('');
      await field(page, label).press('Enter');
      await page.getByRole('button', { name: `${label.slice(0, -2)}: pick in the view` }).click();
      expect(await page.locator('.asked').innerText()).toContain('in the view');
      await page.mouse.click(...ball);
      await expect.poll(() => field(page, label).inputValue(), { message: kind }).toBe(picked);
      expect(await page.locator('.asked').count()).toBe(0);
    }
    // a perch moves the seat of the spring, which is no point
    await page.getByRole('button', { name: /^Perch/ }).click();
    expect(await page.getByRole('button', { name: /: pick in the view$/ }).count()).toBe(0);

    // A direction: the ring follows the hand, and a letter holds it to an axis.
    await page.getByRole('button', { name: /^Slide/ }).click();
    await setField(page, 'Point *', 'tieRodEnd');
    await page.getByRole('button', { name: 'Along: aim in the view' }).click();
    const ring = await placeOfMark(page, 'armend');
    await page.mouse.move(...ring);
    await page.mouse.down();
    await page.mouse.move(ring[0] - 40, ring[1] + 60, { steps: 4 });
    await expect.poll(() => field(page, 'Along *').inputValue()).toMatch(/^[−\d., ]+$/);
    const aimed = await field(page, 'Along *').inputValue();
    expect(aimed).not.toBe('0, 0, 1');
    await page.keyboard.press('z');
    await expect.poll(() => field(page, 'Along *').inputValue()).toBe('0, 0, 1');
    await page.mouse.up();
    await setField(page, 'Range *', '-5, 5');
    await setField(page, 'Step *', '0.5');
    await setField(page, 'Name in the file *', 'endShims');
    await page.getByRole('slider', { name: /^Try it/ }).fill('4');
    expect(await page.getByRole('region', { name: 'Try it' }).innerText()).toContain('Bump steer');
    await page.getByRole('button', { name: 'Make it' }).click();
    await page.getByText('End shims', { exact: true }).click();

    // In the car a drag of the ring is one undo step, and one that is given up is none.
    const part = page.locator('details.part[open]');
    await part.getByRole('button', { name: 'Along: aim in the view' }).click();
    const [x, y] = await placeOfMark(page, 'armend');
    const drag = async (): Promise<void> => {
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x - 50, y + 20, { steps: 4 });
    };
    await drag();
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await part.getByLabel('Along *', { exact: true }).inputValue()).toBe('0, 0, 1');
    expect(await page.getByRole('button', { name: /^Undo: Add adjuster endShims/ }).count()).toBe(1);
    await drag();
    await page.mouse.up();
    expect(await part.getByLabel('Along *', { exact: true }).inputValue()).not.toBe('0, 0, 1');
    await page.getByRole('button', { name: /^Undo: Change along/ }).click();
    expect(await part.getByLabel('Along *', { exact: true }).inputValue()).toBe('0, 0, 1');
    expect(complaints).toEqual([]);
  },
);

test('no car could be opened: the page begins a new one', { timeout: 120_000 }, async () => {
  const samplesFolder = await mkdtemp(path.join(tmpdir(), 'jounce-none-'));
  onTestFinished(() => rm(samplesFolder, { recursive: true, force: true }));
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', served: { samplesFolder } });
  const refused = page.getByText('Open a car file of your own');
  await refused.first().waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
  const newCar = page.getByRole('region', { name: 'New car' });
  expect(await newCar.getByRole('button', { name: 'Cancel' }).count()).toBe(0);
  expect(await seriousFaults(page)).toEqual([]);
  await newCar.getByRole('button', { name: 'Next: points' }).click();
  await page.getByRole('heading', { name: 'New car' }).waitFor();
  expect(await page.getByLabel('armFront, X fwd, left, mm').inputValue()).toBe('15.00');
  for (const theme of ['Dark', 'Light'] as const) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: theme }).click();
    for (const name of ['Points', 'Wheel and body', 'Spring, damper, bar', 'Adjusters', 'Limits', 'Layout']) {
      await step(page, name).click();
      expect(await seriousFaults(page), `${theme} ${name}`).toEqual([]);
    }
  }
  expect(complaints).toEqual([]);
});
