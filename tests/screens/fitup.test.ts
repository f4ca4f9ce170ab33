import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { openWindow } from './chromium';

test('fit-up: clearance and joints, a row chosen by key and taken to the bench', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('link', { name: 'Fit-up' }).click();
  const rows = page.getByRole('region', { name: 'Table of clearance' }).locator('tbody tr');
  await rows.first().waitFor({ timeout: 60_000 });
  expect(await rows.count()).toBeGreaterThan(20);
  const [first] = await rows.allInnerTexts();
  expect(first).toMatch(/short/);
  await page.getByText('What would clear it').waitFor();
  await page.getByRole('note', { name: 'Cautions' }).getByText('Prove it with clay or tape').waitFor();
  await page.getByRole('radio').first().focus();
  await page.keyboard.press('ArrowDown');
  expect(await rows.nth(1).getAttribute('class')).toBe('chosen');
  const faults = async (): Promise<readonly string[]> => {
    const { violations } = await new AxeBuilder({ page }).include('main').analyze();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  };
  expect(await faults()).toEqual([]);
  // under the pairs: what is lowest over the ground, reached from the head of the list, which scrolls alone
  await page.getByRole('button', { name: /^Over the ground: [\d.]+ mm$/ }).click();
  const ground = page.getByRole('region', { name: 'Over the ground' });
  expect(await ground.evaluate((table) => table === document.activeElement)).toBe(true);
  expect(await ground.locator('thead').innerText()).toMatch(/Standing[^]*Left flat[^]*Right flat[^]*Solid/);
  expect(await page.evaluate(() => document.scrollingElement!.scrollTop)).toBe(0);
  expect(await faults()).toEqual([]);
  await page.getByRole('group', { name: 'Fit-up' }).getByRole('button', { name: 'Joints' }).click();
  await page.getByRole('region', { name: 'Table of joints' }).locator('tbody tr').first().waitFor();
  expect(await faults()).toEqual([]);
  const bench = page.getByRole('button', { name: 'Take position to the bench' });
  await bench.click();
  await page.getByRole('group', { name: 'Motion' }).waitFor();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Sprint');
  expect(complaints).toEqual([]);
}, 120_000);
