import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWindow } from './chromium';
import { choose } from './viewMarks';

const hasKeys = (button: Locator): Promise<boolean> => button.evaluate((own) => own === document.activeElement);
const byCommand = async (page: Page, typed: string): Promise<void> => {
  await page.keyboard.press('Control+k');
  await page.getByRole('dialog', { name: 'Command list' }).waitFor();
  await page.keyboard.type(typed);
  await page.keyboard.press('Enter');
};

test('what stands in the fields of keep-out and what is shown are one, or it is said and nothing can be saved', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await byCommand(page, 'template');
  const tabs = page.getByRole('group', { name: 'Fit-up' });
  const tab = tabs.getByRole('button', { name: 'Keep-out' });
  await expect.poll(() => hasKeys(tab)).toBe(true);
  expect(await page.locator('.fitupcanvas').getAttribute('aria-label')).not.toContain('..');

  await page.getByLabel('everything that moves').uncheck();
  await page.getByRole('checkbox', { name: 'Caliper front' }).check();
  await page.getByLabel('Wheels').selectOption('left');
  const grown = page.getByRole('spinbutton', { name: /^Grown by/ });
  const outside = page.getByRole('spinbutton', { name: /^Surface outside/ });
  const take = async (field: Locator, text: string) => {
    await field.fill(text);
    await field.press('Enter');
  };
  await take(grown, '5');
  await take(outside, '8');
  const run = page.getByRole('button', { name: 'Work it out' });
  await run.click();
  const template = page.getByRole('region', { name: 'Template' });
  await template.waitFor({ timeout: 120_000 });
  expect(await hasKeys(run)).toBe(true);
  const saves = ['Save as STL', 'Save PDF', 'Save DXF'].map((name) => page.getByRole('button', { name, exact: true }));
  const areOff = () => Promise.all(saves.map((button) => button.isDisabled()));
  await expect.poll(areOff).toEqual([false, false, false]);

  for (const [field, wrong, told] of [
    [grown, '4800', 'Grown by is not taken'],
    [outside, 'x', 'Surface outside by at most is not taken'],
  ] as const) {
    await take(field, wrong);
    await page.getByText(told).waitFor();
    expect(await areOff()).toEqual([true, true, true]);
    await run.click();
    expect(await hasKeys(field)).toBe(true);
    expect(await field.inputValue()).toBe(wrong);
    await field.press('Escape');
    await expect.poll(areOff).toEqual([false, false, false]);
  }
  const plane = page.getByRole('spinbutton', { name: /^Plane at x/ });
  await take(plane, '99999');
  await page.getByText('Plane at x, ahead of the origin is not taken').waitFor();
  expect(await areOff()).toEqual([false, true, true]);
  await plane.press('Escape');

  // another wheel is another question; the first one again is not
  const old = page.getByText('What stands below is of before the last change.');
  const heading = page.locator('.fituptitle');
  await page.getByLabel('Wheels').selectOption('right');
  await old.waitFor();
  expect(await heading.innerText()).toContain('front left, blue');
  await page.getByLabel('Wheels').selectOption('left');
  await take(grown, '6');
  await take(grown, '5');
  await old.waitFor({ state: 'detached' });
  expect(await areOff()).toEqual([false, false, false]);

  for (const [button, name] of [
    [saves[0], /^Saltmarsh hatch keep-out caliperFront front left\.stl$/],
    [saves[1], /^Saltmarsh hatch template caliperFront front left x -?[\d.]+\.pdf$/],
    [saves[2], /^Saltmarsh hatch template caliperFront front left x -?[\d.]+\.dxf$/],
  ] as const) {
    const comes = page.waitForEvent('download');
    await button?.click();
    expect((await comes).suggestedFilename()).toMatch(name);
    expect(button && (await hasKeys(button))).toBe(true);
  }
  // in inches the section is read in inches too
  await page.getByRole('button', { name: /^Units:/ }).click();
  await choose(page, 'Lengths', 'inches');
  await page.keyboard.press('Escape');
  await page.getByRole('img', { name: /^Section on the left side, [\d.]+ × [\d.]+ in, / }).waitFor();
  await template.getByRole('group', { name: 'Plane' }).getByRole('button', { name: 'Any' }).click();
  for (const axis of ['x', 'y', 'z']) await take(page.getByRole('spinbutton', { name: `Seen from ${axis}` }), '0');
  await template.getByText('0, 0, 0, which is no direction').waitFor();

  await byCommand(page, 'load case');
  await page.getByRole('region', { name: 'Table of link loads' }).waitFor({ timeout: 60_000 });
  await take(page.getByRole('spinbutton', { name: /^Travel from/ }), '9999');
  await page.getByText('Travel from where the car stands is not taken').waitFor();
  expect(await page.getByRole('button', { name: 'Save loads as CSV' }).count()).toBe(0);
  expect(complaints).toEqual([]);
}, 240_000);
