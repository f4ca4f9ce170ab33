import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { openBench, type } from './bench';

test('setups are made, named, written about, compared and undone, by the keyboard too', async () => {
  const { page, complaints } = await openBench('car-23');
  await page.getByRole('button', { name: 'Setups…' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Setups' });
  await dialog.waitFor();
  const list = dialog.getByRole('listbox', { name: /^Setups of this car/ });
  const names = () => list.getByRole('option').allInnerTexts();
  const before = await names();

  await list.getByRole('option', { name: /^Trial/ }).click();
  await dialog.getByRole('button', { name: 'Copy' }).press('Enter');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 2');
  const name = dialog.getByRole('textbox', { name: 'Name of Trial 2' });
  // the next thing to be typed is its name
  await expect.poll(() => name.evaluate((field) => field === document.activeElement)).toBe(true);
  await type(name, '12');
  expect(await dialog.getByRole('alert').innerText()).toContain('word');
  await type(name, 'Sprint');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Sprint');

  await dialog.getByRole('textbox', { name: 'Notes of Sprint' }).fill('Dry, 24 degrees.');
  await dialog.getByRole('textbox', { name: 'New line: what' }).fill('pressure hot');
  await dialog.getByRole('textbox', { name: 'New line: unit' }).fill('bar');
  await dialog.getByRole('button', { name: 'Add a line' }).click();
  await type(dialog.getByRole('textbox', { name: 'pressure hot, front left, bar' }), '2,1');
  expect(await dialog.getByRole('textbox', { name: 'pressure hot, front left, bar' }).inputValue()).toBe('2.1');

  await dialog.getByLabel('What Sprint is held against').selectOption('Baseline');
  expect(await dialog.locator('.differences').innerText()).toMatch(/inboard|outboard|was/);
  expect(await dialog.innerText()).toContain('Standing, each at its own ride height');

  await list.getByRole('option', { name: /^Sprint/ }).focus();
  await page.keyboard.press('Alt+ArrowUp');
  expect((await names()).findIndex((one) => one.startsWith('Sprint'))).toBe(1);
  await dialog.getByRole('checkbox', { name: 'on the car now' }).check();
  const { violations } = await new AxeBuilder({ page }).include('dialog.setups').analyze();
  expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id)).toEqual([]);
  await dialog.getByRole('button', { name: 'Delete' }).click();
  expect(await page.getByLabel('Setup on the bench').inputValue()).not.toBe('Sprint');
  for (let step = 0; step < 8; step += 1) await dialog.getByRole('button', { name: 'Undo' }).click();
  expect(await names()).toEqual(before);
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  expect(complaints).toEqual([]);
});
