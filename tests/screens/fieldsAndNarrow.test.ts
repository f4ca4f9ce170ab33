import { expect, test } from 'vitest';
import { motionField, openBench, type } from './bench';

test('undo belongs to the text while it is typed, to the car once it is taken; a refusal is in sight', async () => {
  const { page } = await openBench();
  const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
  await type(plate, '-5');
  await plate.press('End');
  await plate.pressSequentially('5');
  await page.keyboard.press('Control+z');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 1');
  await plate.press('Escape');
  await page.keyboard.press('Control+z');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Baseline');

  const height = page.getByRole('spinbutton', { name: /^Ride height/ });
  await type(height, '-500');
  const reason = await page.getByRole('alert').boundingBox();
  expect(reason && reason.y >= 0 && reason.y + reason.height <= 720).toBe(true);
  await type(height, '5 kg');
  expect(await page.getByRole('alert').innerText()).toMatch(/kg is no unit here: mm or in/);
});

test('640 × 360: nothing runs off, one panel at a time, the motion strip stays', async () => {
  const { page } = await openBench('car-23', { viewport: { width: 640, height: 360 } });
  const panels = page.getByRole('group', { name: 'Panel' });
  for (const [label, panel] of [
    ['Readings', 'Readings'],
    ['All adjusters', 'Adjusters'],
  ] as const) {
    await panels.getByRole('button', { name: label }).click();
    expect(await page.getByRole('region', { name: panel, exact: true }).isVisible()).toBe(true);
  }
  expect(await page.getByRole('region', { name: 'Readings', exact: true }).isVisible()).toBe(false);
  await type(motionField(page, 'Bump'), '10');
  const off = await page.evaluate(() =>
    [...document.querySelectorAll('header *')]
      .filter((element) => element.getBoundingClientRect().right > window.innerWidth + 1)
      .map(({ outerHTML }) => outerHTML.slice(0, 80)),
  );
  expect(off).toEqual([]);
});
