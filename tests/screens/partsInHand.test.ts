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

test('a wheel that scrolls the list turns no part that comes under it; begun on the part it turns it, as one step', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  const list = page.getByRole('region', { name: 'Adjusters' }).locator('.scroll');
  await page.getByRole('group', { name: 'Rear bushing', exact: true }).click({ position: { x: 150, y: 12 } });
  const card = page.getByRole('group', { name: 'Rear bushing, in hand' });
  await card.waitFor();
  const field = card.locator('input').first();
  const setting = await field.inputValue();
  const undo = page.getByRole('button', { name: /^(Undo|Nothing to undo)/ });
  // the pointer where the drawing is once the list is at its top
  await list.evaluate((element) => (element.scrollTop = 0));
  const box = await card.locator('.dial').boundingBox();
  if (!box) throw new Error('the drawing is there');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  const gesture = async (notches: number): Promise<void> => {
    const sent: Promise<void>[] = [];
    for (let notch = 0; notch < notches; notch += 1) {
      sent.push(page.mouse.wheel(0, -100));
      await new Promise((resolve) => setTimeout(resolve, 40));
    }
    await Promise.all(sent);
  };
  await list.evaluate((element) => (element.scrollTop = element.scrollHeight));
  expect(await list.evaluate((element) => element.scrollTop)).toBeGreaterThan(box.height);
  await gesture(14);
  expect(await list.evaluate((element) => element.scrollTop)).toBe(0);
  expect(await field.inputValue()).toBe(setting);
  expect(await undo.isDisabled()).toBe(true);
  // rested, the same wheel turns the part
  await page.waitForTimeout(700);
  await gesture(3);
  await expect.poll(() => field.inputValue()).not.toBe(setting);
  await undo.click();
  expect(await field.inputValue()).toBe(setting);
  expect(await undo.isDisabled()).toBe(true);
});

test('Ctrl Z in the middle of a drag takes nothing back: neither the drag nor the step before it', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await page.getByRole('group', { name: 'Rear bushing', exact: true }).click({ position: { x: 150, y: 12 } });
  const card = page.getByRole('group', { name: 'Rear bushing, in hand' });
  await card.waitFor();
  const field = card.locator('input').first();
  await page.waitForTimeout(700);
  await card.getByRole('button').last().click();
  const first = await field.inputValue();
  const box = await card.locator('.dial').boundingBox();
  if (!box) throw new Error('the drawing is there');
  await page.mouse.move(box.x + box.width / 2, box.y + 12);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width - 12, box.y + box.height / 2, { steps: 5 });
  const dragged = await field.inputValue();
  expect(dragged).not.toBe(first);
  await page.keyboard.press('Control+z');
  expect(await field.inputValue()).toBe(dragged);
  await page.mouse.up();
  expect(await field.inputValue()).toBe(dragged);
  await page.keyboard.press('Control+z');
  expect(await field.inputValue()).toBe(first);
});
