import { expect, test } from 'vitest';
import { motionField } from './bench';
import { openWindow } from './chromium';

test('the car moves by itself at the first start, says so, and stands again at the first touch or after a moment; a ride stops where it is', async () => {
  const { page } = await openWindow({ graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  const bump = motionField(page, 'Bump');
  const head = page.locator('.readingtable thead .at');
  await expect.poll(() => bump.inputValue(), { timeout: 15_000 }).not.toBe('0');
  expect(await head.innerText()).toMatch(/^moving(: bump [+−][\d.]+ mm)?$/);
  expect(await page.locator('.picker .caption').innerText()).toContain('moving');
  await page.keyboard.press('Shift');
  await expect.poll(() => head.innerText()).toBe('standing');
  await page.waitForTimeout(700);
  expect([await bump.inputValue(), await head.innerText()]).toEqual(['0', 'standing']);

  const play = page.getByRole('button', { name: 'Play bump' });
  await play.click();
  await expect.poll(() => bump.inputValue()).not.toBe('0');
  await page.keyboard.press('Shift');
  await expect.poll(() => head.innerText()).toMatch(/^at bump/);
  const stopped = await bump.inputValue();
  await page.waitForTimeout(700);
  expect(await bump.inputValue()).toBe(stopped);
  await play.click();
  await expect.poll(() => bump.inputValue()).not.toBe(stopped);
  await page.keyboard.press('Home');
  await page.waitForTimeout(300);
  expect(await bump.inputValue()).toBe('0');
  expect(await play.getAttribute('aria-pressed')).toBe('false');
  expect(await page.locator('.readingtable thead .at').innerText()).toBe('standing');

  // another ride, chosen by keys; the space bar plays it
  await page.getByRole('button', { name: 'Played: bump' }).press('Enter');
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Bump');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Played: steer');
  await page.getByRole('button', { name: 'Play steer' }).press('Enter');
  await expect.poll(() => motionField(page, 'Steer').inputValue()).not.toBe('0');
  await page.keyboard.press('Shift');
  expect(await bump.inputValue()).toBe('0');

  await page.reload();
  await expect.poll(() => head.innerText()).toBe('standing');
  await page.waitForTimeout(500);
  expect(await head.innerText()).toBe('standing');

  // untouched it ends by itself, where the car stands
  const { page: left } = await openWindow({ graphics: 'none' });
  const said = () => left.locator('.readingtable thead .at').innerText();
  await expect.poll(said, { timeout: 15_000 }).toMatch(/^moving: bump/);
  await expect.poll(said, { timeout: 20_000 }).toBe('standing');
  expect(await motionField(left, 'Bump').inputValue()).toBe('0');
  expect(await left.getByRole('button', { name: 'Play bump' }).getAttribute('aria-pressed')).toBe('false');
});
