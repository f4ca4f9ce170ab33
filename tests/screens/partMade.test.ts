import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openBench } from './bench';
import { field, setField } from './pointsPage';

const openParts = async (page: Page): Promise<void> => {
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
  await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: 'Parts' }).click();
};
const make = (page: Page) => page.locator('.draft').getByRole('button', { name: 'Make it' });

test('a part is not made while a field of it holds what is no value: the keys go there, and all that was typed stays', async () => {
  const { page } = await openBench();
  await openParts(page);
  await page.getByRole('button', { name: 'Add part', exact: true }).click();
  await setField(page, 'Name in the file *', 'ball');
  await field(page, 'Carried by *').selectOption({ label: 'Body' });
  await field(page, 'Shape *').selectOption('sphere');
  await setField(page, 'Middle *', '330, 480, 330');
  await setField(page, 'Radius *', '5');
  await field(page, 'Radius *').fill('7O');
  await field(page, 'Margin of its own').fill('1O');
  await make(page).click();
  await page
    .locator('.draft .draftend + .leaffault')
    .getByText(/Radius and Margin of its own/)
    .waitFor();
  await expect.poll(() => field(page, 'Radius *').evaluate((own) => own === document.activeElement)).toBe(true);
  expect(await field(page, 'Radius *').inputValue()).toBe('7O');
  await setField(page, 'Radius *', '7');
  await setField(page, 'Middle *', '330, NaN, 330');
  await make(page).click();
  await expect.poll(() => field(page, 'Middle *').evaluate((own) => own === document.activeElement)).toBe(true);
  await field(page, 'Middle *').press('Escape');
  await setField(page, 'Margin of its own', '');
  await make(page).click();
  await page.locator('.draft').waitFor({ state: 'detached' });
  await page.locator('details.part > summary').filter({ hasText: 'ball' }).first().waitFor();
});
