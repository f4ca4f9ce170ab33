import { expect, test } from 'vitest';
import { openWindow } from './chromium';
import { pressOn, tabTo, typeInto } from './keyboard';
import { field, MEASURED, step } from './pointsPage';

test('the same task by keyboard alone: a car from a list in other axes, with two adjusters', { timeout: 180_000 }, async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await pressOn(page, page.getByRole('navigation').getByRole('link', { name: 'Points' }));
  await pressOn(page, page.getByRole('button', { name: 'New car' }));
  const newCar = page.getByRole('region', { name: 'New car' });
  await pressOn(page, newCar.getByRole('region', { name: 'Rear axle' }).getByRole('button', { name: 'No such axle' }));
  await tabTo(page, newCar.getByLabel('Name', { exact: true }));
  await page.keyboard.press('Control+a');
  await page.keyboard.insertText('Fen saloon');
  await tabTo(page, newCar.getByRole('radio', { name: /Typical points/ }));
  await page.keyboard.press('ArrowDown');
  await pressOn(page, newCar.getByRole('button', { name: 'Next: coordinates' }));

  // the list's field has the cursor
  const list = page.getByLabel('The list', { exact: true });
  await expect.poll(() => list.evaluate((element) => element === document.activeElement)).toBe(true);
  await page.keyboard.insertText(MEASURED);
  await tabTo(page, page.getByRole('button', { name: /^Use|^Close/ }).first());
  for (const [label, word] of [
    ['Unit of the list', 'in'],
    ['X is', 'back'],
    ['Y is', 'right'],
  ] as const) {
    await tabTo(page, page.getByLabel(label));
    await page.keyboard.type(word);
    expect(await page.getByLabel(label).inputValue()).toBe(word);
  }
  await pressOn(page, page.getByRole('button', { name: 'Use tieRodEnd' }));
  await pressOn(page, page.getByRole('button', { name: 'Take 8 points' }));
  await page.getByRole('status').filter({ hasText: '8 points taken' }).waitFor();
  await pressOn(page, page.getByRole('button', { name: 'Close' }));

  await pressOn(page, step(page, 'Adjusters'));
  const add = page.getByRole('button', { name: 'Add adjuster', exact: true });
  await pressOn(page, add);
  // the first field of what is made has the cursor
  await page.keyboard.insertText('topPlate');
  await pressOn(page, page.getByRole('button', { name: /^Slide/ }));
  for (const [label, text] of [
    ['Point *', 'strutTop'],
    ['Along *', '0, 1, 0'],
    ['Range *', '-10, 10'],
    ['Step *', '1'],
  ] as const)
    await typeInto(page, field(page, label), text);
  await tabTo(page, page.getByRole('slider', { name: /^Try it/ }));
  for (let presses = 0; presses < 3; presses += 1) await page.keyboard.press('ArrowLeft');
  await expect.poll(() => page.getByRole('region', { name: 'Try it' }).innerText()).toContain('3 mm inboard');
  await pressOn(page, page.getByRole('button', { name: 'Make it' }));
  // what was made has the keys, and the button for the next one is a step further
  await expect
    .poll(() => page.evaluate(() => `${document.activeElement?.tagName}: ${document.activeElement?.textContent}`))
    .toMatch(/^SUMMARY: .*topPlate/s);
  await page.keyboard.press('Tab');
  expect(await add.evaluate((element) => element === document.activeElement)).toBe(true);
  await pressOn(page, add);
  await pressOn(page, page.locator('.draft').getByRole('button', { name: 'Cancel' }));
  await expect.poll(() => add.evaluate((element) => element === document.activeElement)).toBe(true);
  await pressOn(page, add);
  await page.keyboard.insertText('tieRodTurns');
  await pressOn(page, page.getByRole('button', { name: /^Turnbuckle/ }));
  for (const [label, text] of [
    ['Per turn *', '1,5'],
    ['Range *', '-6, 6'],
    ['Step *', '0.5'],
  ] as const)
    await typeInto(page, field(page, label), text);
  await pressOn(page, page.getByRole('button', { name: 'Make it' }));
  await expect.poll(() => step(page, 'Adjusters').innerText()).toContain('2 made');
  await pressOn(page, page.getByRole('navigation').getByRole('link', { name: 'Bench' }));
  await page
    .getByRole('group', { name: /^Tie rod turns/ })
    .first()
    .waitFor();
  expect(complaints).toEqual([]);
});
