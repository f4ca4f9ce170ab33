import { expect, test } from 'vitest';
import { motionField, type } from './bench';
import { openWindow } from './chromium';

test('nothing happens that nobody asked for: no ride, no press, no step behind a dialog; a drag given up leaves nothing', async () => {
  const { page } = await openWindow({ graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  const bump = motionField(page, 'Bump');
  await page.keyboard.press('Shift');
  // another page and back: nothing plays by itself again, and the car is where it was put
  await page.getByRole('button', { name: /^Zero/ }).click();
  await type(bump, '30');
  const pages = page.getByRole('navigation');
  await pages.getByRole('link', { name: 'Points' }).click();
  await page.getByRole('table').first().waitFor();
  await pages.getByRole('link', { name: 'Bench' }).click();
  await page.waitForTimeout(500);
  expect(await bump.inputValue()).toBe('30');
  // a drag of the rule that is given up puts it back, and the rest of the drag does nothing
  const rule = page.getByRole('slider', { name: /^Bump/ });
  const { x, y, width, height } = (await rule.boundingBox()) ?? { x: 0, y: 0, width: 0, height: 0 };
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.mouse.move(x + 20, y + height / 2);
  expect(await bump.inputValue()).not.toBe('30');
  await page.keyboard.press('Escape');
  await page.mouse.move(x + 40, y + height / 2);
  await page.mouse.up();
  expect(await bump.inputValue()).toBe('30');

  // a double click on a card at rest takes it in hand and presses nothing of what opens under it; L = R that holds is no change
  await page.getByRole('group', { name: 'Top plate, along', exact: true }).getByRole('spinbutton').dblclick();
  expect(await page.getByRole('group', { name: 'Top plate, along, in hand' }).count()).toBe(1);
  await page.waitForTimeout(700);
  await page.getByRole('button', { name: 'L = R' }).click();
  const undo = page.locator('.top .undo');
  expect(await undo.innerText()).toBe('nothing to undo');
  // keys do nothing to the car behind a dialog
  await page.getByRole('spinbutton', { name: /^Top plate, along/ }).press('ArrowUp');
  const step = await undo.innerText();
  expect(await page.title()).toBe('● Saltmarsh hatch – Jounce');
  await page.getByRole('button', { name: 'Choose…' }).click();
  await page.getByRole('dialog').waitFor();
  for (const keys of ['Control+z', 'Control+k']) await page.keyboard.press(keys);
  expect(await page.getByRole('dialog').count()).toBe(1);
  await page.keyboard.press('Escape');
  expect(await undo.innerText()).toBe(step);
  await page.keyboard.press('Control+z');
  expect(await undo.innerText()).toBe('nothing to undo');
});
