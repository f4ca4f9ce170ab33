import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWindow } from './chromium';

/** A car measured somewhere else: inches, X back, Y right, decimal commas, names as they were written on the floor. */
const MEASURED = [
  'arm front;-0,6;-14,2;8,3',
  'arm_rear;11,4;-14,6;8,4',
  'BallJoint;-0,3;-28,5;7,7',
  'strut top;1,5;-22,7;32,7',
  'strut foot;0,1;-25;15,7',
  'rack end;5,5;-13,4;10,1',
  'tieRod_out;4,9;-27,4;9,7',
  'wheelCentre;0;-30,6;12,2',
].join('\n');

const seriousFaults = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
};
const field = (page: Page, label: string) => page.locator('.draft').getByLabel(label, { exact: true });
const setField = async (page: Page, label: string, text: string): Promise<void> => {
  await field(page, label).fill(text);
  await field(page, label).press('Enter');
};

test('another car: by layout, from a list in other axes, with two adjusters; undone again', { timeout: 180_000 }, async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();

  // A layout for the front, no rear axle, and a list next.
  await page.getByRole('button', { name: 'New car' }).click();
  const newCar = page.getByRole('region', { name: 'New car' });
  await newCar.getByLabel('Name', { exact: true }).fill('Fen saloon');
  await newCar.getByRole('region', { name: 'Rear axle' }).getByRole('button', { name: 'No such axle' }).click();
  await newCar.getByRole('radio', { name: /list of coordinates/ }).check();
  await newCar.getByRole('button', { name: 'Next: coordinates' }).click();
  await page.getByRole('heading', { name: 'Fen saloon' }).waitFor();

  // The list: its unit is asked for, its axes are told, and the name that fits none is offered another.
  const take = page.getByRole('button', { name: /^Take/ });
  await page.getByLabel('The list', { exact: true }).fill(MEASURED);
  expect(await page.getByRole('alert').innerText()).toContain('In what unit');
  expect(await take.isDisabled()).toBe(true);
  await page.getByLabel('Unit of the list').selectOption('in');
  await page.getByLabel('X is').selectOption('back');
  await page.getByLabel('Y is').selectOption('right');
  expect(await page.getByRole('alert').innerText()).toContain('tieRod_out');
  await page.getByRole('button', { name: 'Use tieRodEnd' }).click();
  expect(await page.locator('.previewtable tbody tr').count()).toBe(8);
  expect(await page.locator('.previewtable tbody tr').first().innerText()).toMatch(
    /arm front[\s\S]*15\.24[\s\S]*360\.68[\s\S]*210\.82/,
  );
  expect(await seriousFaults(page)).toEqual([]);
  await take.click();
  expect(await page.getByRole('status').filter({ hasText: 'points taken' }).innerText()).toContain('8 points');
  await page.getByRole('button', { name: 'Close' }).click();
  const armFront = page.getByLabel('armFront, X fwd, left, mm');
  expect(await armFront.inputValue()).toBe('15.24');

  // Two adjusters, made as parts. What is missing is said at its field, and nothing is lost.
  await page.getByRole('button', { name: 'Adjusters', exact: true }).click();
  await page.getByRole('button', { name: 'Add adjuster', exact: true }).click();
  await setField(page, 'Name in the file *', 'topPlate');
  await page.getByRole('button', { name: /^Slide/ }).click();
  await setField(page, 'Point *', 'strutTop');
  await setField(page, 'Along *', '0, 1, 0');
  await setField(page, 'Step *', '1');
  await page.getByRole('button', { name: 'Make it' }).click();
  expect(await page.locator('.draft').getByRole('alert').first().innerText()).toContain('expected');
  await setField(page, 'Range *', '-10, 10');
  await page.getByRole('button', { name: 'Make it' }).click();
  await page.getByRole('button', { name: 'Add adjuster', exact: true }).click();
  await setField(page, 'Name in the file *', 'tieRodTurns');
  await page.getByRole('button', { name: /^Turnbuckle/ }).click();
  await setField(page, 'Per turn *', '1,5');
  await setField(page, 'Range *', '-6, 6');
  await setField(page, 'Step *', '0.5');
  await page.getByRole('button', { name: 'Make it' }).click();
  expect(await page.locator('details.part').count()).toBe(2);
  await page.getByText('Top plate', { exact: true }).click();
  await page.locator('.tryit').getByRole('spinbutton').first().fill('-5');
  await page.locator('.tryit').getByRole('spinbutton').first().press('Enter');
  await expect.poll(() => page.locator('.tryit').innerText()).toContain('5 mm inboard');
  expect(await seriousFaults(page)).toEqual([]);

  // A value that would be a fault stays in its field with the reason, and not in the car.
  await page.getByRole('button', { name: 'Axle', exact: true }).click();
  const radius = page.getByLabel('Loaded radius *').first();
  await radius.fill('-3');
  await radius.press('Enter');
  expect(await page.getByRole('alert').first().innerText()).toContain('greater than 0');
  expect(await radius.inputValue()).toBe('-3');
  await radius.press('Escape');
  expect(await radius.inputValue()).toBe('310');

  // Both adjusters are on the bench; undo takes everything back to where the car began.
  await page.getByRole('navigation').getByRole('link', { name: 'Bench' }).click();
  await page
    .getByRole('group', { name: /^Tie rod turns/ })
    .first()
    .waitFor();
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
  const undo = page.getByRole('button', { name: /^(Undo:|Nothing to undo)/ });
  for (let steps = 0; steps < 10 && (await undo.isEnabled()); steps += 1) await undo.click();
  expect(await undo.isDisabled()).toBe(true);
  expect(await armFront.inputValue()).toBe('15.00');
  expect(complaints).toEqual([]);
});

test('a point is moved in its cell, on the right alone and back; both themes, narrow too', { timeout: 180_000 }, async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
  const rack = page.getByLabel('rackEnd, Z up, left, mm');
  const before = await rack.inputValue();
  await rack.fill('260');
  await rack.press('Enter');
  await expect.poll(() => page.getByRole('button', { name: /^Undo: Move rack end/ }).count()).toBe(1);
  await page.getByRole('button', { name: 'Right', exact: true }).click();
  const right = page.getByLabel('rackEnd, Z up, right, mm');
  expect(await right.inputValue()).toBe('260.00');
  await right.fill('262');
  await right.press('Enter');
  await page.getByRole('button', { name: 'rackEnd: right side the mirror image again' }).click();
  await expect.poll(() => right.inputValue()).toBe('260.00');
  for (let steps = 0; steps < 3; steps += 1) await page.keyboard.press('Control+z');
  await page.getByRole('button', { name: 'Left', exact: true }).click();
  expect(await rack.inputValue()).toBe(before);
  // a point where it makes no linkage is refused with the reason, and what was typed stays
  const wheel = page.getByLabel('wheelCentre, Y left, left, mm');
  await wheel.fill('-776');
  await wheel.press('Enter');
  expect(await page.getByRole('alert').innerText()).toContain('wheel centre on the left');
  await wheel.press('Escape');

  for (const theme of ['Dark', 'Light'] as const) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: theme }).click();
    for (const tab of ['Car', 'Points']) {
      await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: tab }).click();
      expect(await seriousFaults(page), `${theme} ${tab}`).toEqual([]);
    }
    await page.getByRole('button', { name: 'New car' }).click();
    expect(await seriousFaults(page), `${theme} new car`).toEqual([]);
    await page.getByRole('button', { name: 'Cancel' }).click();
  }
  await page.setViewportSize({ width: 1100, height: 720 });
  await rack.scrollIntoViewIfNeeded();
  expect(await rack.isVisible()).toBe(true);
  expect(complaints).toEqual([]);
});
