import { expect, test } from 'vitest';
import { openWindow } from './chromium';

test('a matrix or a map of another question than the fields say is called so, and not saved, until the field is mended', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('link', { name: 'Studies' }).click();
  for (const [name, answer, save] of [
    ['Influence', page.getByRole('region', { name: 'Matrix of influence' }), page.getByRole('button', { name: /as CSV$/ })],
    ['Map', page.getByRole('region', { name: 'Map drawn' }), page.getByRole('button', { name: /: save and more$/ })],
  ] as const) {
    await page
      .getByRole('navigation', { name: 'Studies' })
      .getByRole('button', { name: new RegExp(`^${name}`) })
      .click();
    await answer.waitFor({ timeout: 60_000 });
    await expect.poll(() => save.count()).toBeGreaterThan(0);
    await page.getByRole('button', { name: /^(one step|the map) at / }).click();
    const travel = page.locator('.placecard').getByRole('textbox', { name: /^Bump/ });
    await travel.fill('1O');
    await page.getByText('Of the question before.').waitFor();
    expect(await save.count()).toBe(0);
    await travel.fill('10');
    await page.getByText('Of the question before.').waitFor({ state: 'detached' });
    await expect.poll(() => save.count()).toBeGreaterThan(0);
    await page.keyboard.press('Escape');
  }
  expect(complaints).toEqual([]);
}, 120_000);
