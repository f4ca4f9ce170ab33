import { expect, test } from 'vitest';
import { openWindow } from './chromium';

test('the part that toe is set by is not turned by hand: it says why, and a drag on it marks no words', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await page.getByRole('group', { name: 'Tie rod', exact: true }).click({ position: { x: 150, y: 12 } });
  const card = page.getByRole('group', { name: 'Tie rod, in hand' });
  await card.waitFor();
  const setting = await card.locator('input').first().inputValue();
  // a press so soon after may be the second one of a double click
  await page.waitForTimeout(700);
  // of the field that has the focus
  const marked = () => page.evaluate(() => String(getSelection()));
  const before = await marked();
  const dial = card.locator('.dial');
  const box = await dial.boundingBox();
  if (!box) throw new Error('the drawing is there');
  await page.mouse.move(box.x + 20, box.y + 20);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width + 120, box.y + box.height + 90, { steps: 6 });
  expect(await marked()).toBe(before);
  await page.mouse.up();
  expect(await card.locator('input').first().inputValue()).toBe(setting);
  expect(await dial.getAttribute('title')).toMatch(/^Not turned by hand while the axle’s toe is set/);
  expect(await card.innerText()).toContain('clear “Set toe” first');
});
