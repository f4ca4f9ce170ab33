import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellsOf, motionField, openBench, type } from './bench';

const cursorOf = (page: Page, name: string) => page.getByRole('slider', { name: new RegExp(`^${name} over`) });

/** Saves one kind of file from a plot's menu. */
const saved = async (page: Page, plot: string, item: string): Promise<Buffer> => {
  await page.getByRole('button', { name: `${plot}: save and more` }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('menuitem', { name: item }).click()]);
  return readFileSync(await download.path());
};

test('the cursor and the motion are one; what is compared stands behind; curves go to CSV, PNG and SVG', async () => {
  const { page, complaints } = await openBench('car-23', { acceptDownloads: true });
  const camber = cursorOf(page, 'Camber');
  await camber.waitFor();

  // keys and mouse on the plot move the car, and the motion rule moves the cursor
  await camber.focus();
  await camber.press('PageUp');
  await camber.press('ArrowRight');
  expect(await motionField(page, 'Bump').inputValue()).toBe('6');
  const [left] = await cellsOf(page, 'camber');
  expect(await camber.getAttribute('aria-valuetext')).toContain(`left ${left}`);
  await type(motionField(page, 'Bump'), '-20');
  expect(await camber.getAttribute('aria-valuenow')).toBe('-20');
  const box = await camber.boundingBox();
  if (!box) throw new Error('the plot is there');
  await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.5);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.7, box.y + box.height * 0.5, { steps: 4 });
  await page.mouse.up();
  expect(Number((await motionField(page, 'Bump').inputValue()).replace('−', '-'))).toBeGreaterThan(0);

  // a second setup behind, with its own numbers in the file
  await page.getByLabel('Setup compared with').selectOption('own:Trial');
  const csv = (await saved(page, 'Camber', 'Table as CSV')).toString('utf8').split('\r\n');
  expect(csv[0]).toBe(
    'bump [mm],"Camber [°], left, Baseline","Camber [°], right, Baseline","Camber [°], left, Trial","Camber [°], right, Trial",reason',
  );
  expect(csv).toHaveLength(63);
  const middle = csv[31]?.split(',').map(Number) ?? [];
  expect(middle[1]).not.toBe(middle[3]);

  // pictures that stand for themselves
  const svg = (await saved(page, 'Camber', 'Picture as SVG')).toString('utf8');
  expect(svg).toMatch(/^<svg[^>]*xmlns/);
  expect(svg).toContain('Camber ° over bump');
  expect(svg).not.toContain('var(--');
  const png = await saved(page, 'Camber', 'Picture as PNG');
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  expect(png.readUInt32BE(16)).toBeGreaterThan(400);

  // zoom by keys, the whole again; another motion, another reading
  await camber.focus();
  const lines = () => page.locator('.plotbox').nth(1).locator('.plotsvg text').allTextContents();
  const whole = await lines();
  await camber.press('+');
  await camber.press('+');
  expect(await lines()).not.toEqual(whole);
  await camber.press('0');
  expect(await lines()).toEqual(whole);
  await page.getByRole('group', { name: 'Curves over' }).getByRole('button', { name: 'Roll' }).click();
  await page.getByLabel('Reading of curve 1').selectOption('track');
  await cursorOf(page, 'Track').press('ArrowRight');
  expect(await motionField(page, 'Roll').inputValue()).toBe('0.1');
  const { violations } = await new AxeBuilder({ page }).include('.curves').include('.picker').analyze();
  expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id)).toEqual([]);
  expect(complaints).toEqual([]);
});

test('another file and the car as saved are compared with; the corner is picked on the plan', async () => {
  const { page, complaints } = await openBench('car-21');
  await page.getByLabel('Car file to compare with').setInputFiles('tests/golden/cars/car-23.jounce.json');
  await expect.poll(() => page.getByLabel('Setup compared with').inputValue()).toBe('file:Baseline');
  expect((await cellsOf(page, 'camber'))[2]).not.toBe('–');
  const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
  if ((await plate.count()) > 0) {
    await type(plate, '-5');
    await page.getByLabel('Setup compared with').selectOption('saved:Baseline');
    expect((await cellsOf(page, 'camber'))[2]).toMatch(/^[−+]?\d/);
  }
  await page.getByRole('button', { name: /^Rear right: camber/ }).click();
  expect(await page.getByRole('button', { name: /^Rear right: camber/ }).getAttribute('aria-pressed')).toBe('true');
  expect(await page.getByRole('group', { name: 'Axle' }).getByRole('button', { name: 'Rear' }).getAttribute('aria-pressed')).toBe(
    'true',
  );
  expect(complaints).toEqual([]);
});

test('a reading explains itself with this car’s numbers, groups fold, and readings are put away', async () => {
  const { page, complaints } = await openBench('car-23');
  await page
    .getByRole('button', { name: /^Camber °/ })
    .first()
    .click();
  const note = page.getByRole('note', { name: 'About Camber' });
  expect(await note.innerText()).toMatch(/asin\(−.*\) = −?\d+\.\d{3}°/s);
  await page.getByRole('button', { name: 'Steering axis' }).click();
  expect(await page.locator('tr[data-reading="caster"]').count()).toBe(0);
  await page.getByRole('button', { name: 'Choose…' }).click();
  await page.getByRole('checkbox', { name: 'Toe', exact: true }).uncheck();
  await page.getByRole('button', { name: 'Camber to the body: up' }).click();
  await page.getByRole('button', { name: 'Close' }).click();
  expect(await page.locator('tr[data-reading="toe"]').count()).toBe(0);
  const ids = await page.locator('tr[data-reading]').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-reading')));
  expect(ids.indexOf('camberToBody')).toBeLessThan(ids.indexOf('camber'));
  expect(complaints).toEqual([]);
});
