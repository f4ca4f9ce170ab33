import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWindow } from './chromium';

const undoName = (page: Page): Promise<string> => page.getByRole('button', { name: /undo/i }).first().innerText();
const drawn = async (page: Page): Promise<void> => {
  const count = () => page.evaluate(() => document.querySelector('.fitupcanvas canvas')?.getAttribute('data-drawn') ?? '');
  for (let last = ''; ;) {
    await page.waitForTimeout(500);
    const now = await count();
    if (now === last && now !== '') return;
    last = now;
  }
};

test('a part of a row is moved in the picture: one drag one undo step, Escape abandons, by arrow keys too; the rows follow', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'software' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('navigation').getByRole('link', { name: 'Fit-up' }).click();
  const rows = page.getByRole('region', { name: 'Table of clearance' }).locator('tbody tr');
  await rows.first().waitFor({ timeout: 120_000 });
  await rows.filter({ hasText: 'Duct' }).first().click();
  const move = page.getByRole('button', { name: 'Move duct' });
  await move.waitFor({ timeout: 60_000 });
  await page.getByRole('group', { name: 'View', exact: true }).getByRole('button', { name: 'Side' }).click();
  await move.click();
  await drawn(page);
  const arm = page.locator('.fitupcanvas .armend').first();
  const place = async () => (await arm.boundingBox())!;
  const shown = page.locator('.fitupmove output');
  const before = await undoName(page);
  const start = await place();
  const grip = { x: start.x + start.width / 2, y: start.y + start.height / 2 };
  const drag = async (dx: number, dy: number) => {
    await page.mouse.move(grip.x, grip.y);
    await page.mouse.down();
    await page.mouse.move(grip.x + dx / 2, grip.y + dy / 2);
    await page.mouse.move(grip.x + dx, grip.y + dy);
  };
  // the side view has no y, and its first arm is x: nothing else moves
  await drag(-30, 25);
  await expect.poll(() => shown.innerText()).toMatch(/^x [+−]\d+\.\d+ +y [+−]?0\.00 +z [+−]?0\.00 mm$/);
  await page.keyboard.press('Escape');
  await expect.poll(() => shown.innerText()).toContain('Drag it, or an arm');
  await page.mouse.up();
  expect(await undoName(page)).toBe(before);
  await drag(-30, 0);
  await page.mouse.up();
  await expect.poll(() => undoName(page)).toContain('Move duct');
  // what is said stands where it was left, and the rows are worked out anew
  const row = () => rows.filter({ hasText: 'Duct' }).allInnerTexts();
  await rows.first().waitFor({ timeout: 120_000 });
  await page.locator('.fitupanswers.old').waitFor({ state: 'detached', timeout: 120_000 });
  const moved = await row();
  await page.keyboard.press('Control+z');
  await expect.poll(() => undoName(page)).toBe(before);
  await page.locator('.fitupanswers.old').waitFor({ timeout: 60_000 });
  await page.locator('.fitupanswers.old').waitFor({ state: 'detached', timeout: 120_000 });
  expect(await row()).not.toEqual(moved);
  // by keys: held down it is one step, however long
  await page.getByRole('img', { name: /Arrow keys move duct by 1 mm/ }).focus();
  await page.keyboard.down('ArrowUp');
  await page.keyboard.down('ArrowUp');
  await expect.poll(() => shown.innerText()).toMatch(/z \+2\.00 mm$/);
  await page.keyboard.press('Escape');
  await page.keyboard.up('ArrowUp');
  expect(await undoName(page)).toBe(before);
  await page.keyboard.down('ArrowUp');
  await page.keyboard.down('ArrowUp');
  await page.keyboard.up('ArrowUp');
  await expect.poll(() => undoName(page)).toContain('Move duct');
  await page.keyboard.press('Control+z');
  await expect.poll(() => undoName(page)).toBe(before);
  expect(complaints).toEqual([]);
}, 300_000);
