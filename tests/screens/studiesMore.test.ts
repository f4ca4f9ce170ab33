import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWindow } from './chromium';

const study = async (page: Page, name: string): Promise<void> => {
  await page.getByRole('link', { name: 'Studies' }).click();
  await page
    .getByRole('navigation', { name: 'Studies' })
    .getByRole('button', { name: new RegExp(`^${name}`) })
    .click();
};

/** What axe finds in the study that keeps somebody out. */
const seriousFaults = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).include('.study').analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
};

const downloaded = async (page: Page, press: () => Promise<void>): Promise<readonly string[]> => {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  const chunks: Buffer[] = [];
  for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8').trimEnd().split('\r\n');
};

test('influence, map, compare, sweep and gauges: asked, read by keyboard, kept, taken to the bench and undone', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none', acceptDownloads: true });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  const faults = async (): Promise<readonly string[]> => {
    const found = [...(await seriousFaults(page))];
    for (const theme of ['Dark', 'Light']) {
      await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: theme }).click();
      if (theme === 'Dark') found.push(...(await seriousFaults(page)));
    }
    return found;
  };

  // one step of a part; its row takes it in hand
  await study(page, 'Influence');
  const clamp = page.getByRole('radio', { name: /^Clamp bolt/ });
  await clamp.check();
  expect(await page.locator('.matrix tr.chosen th').innerText()).toContain('1 mark, top in');
  expect(await page.locator('.matrix tr.chosen .matrixcell').first().innerText()).toMatch(/^−0\.\d{3}$/);
  await page.getByRole('button', { name: /^columns: 10 readings/ }).click();
  await page.getByRole('checkbox', { name: 'Anti-dive' }).first().check();
  await page.keyboard.press('Escape');
  await page.getByRole('columnheader', { name: /Anti-dive/ }).waitFor();
  expect(await faults()).toEqual([]);

  // kept in the file, and there again after something else was asked
  await page.getByLabel('Name of the question').fill('Anti-dive too');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  await page.getByLabel('Kept question').selectOption({ label: 'a new one' });
  await page.getByRole('columnheader', { name: /Anti-dive/ }).waitFor({ state: 'detached' });
  await page.getByLabel('Kept question').selectOption({ label: 'Anti-dive too' });
  await page.getByRole('columnheader', { name: /Anti-dive/ }).waitFor();
  await page.getByLabel('Wheels').selectOption('left');
  await page.getByText('changed since it was kept').waitFor();
  // a look at another question loses nothing that was changed in this one, and one press gives it up
  await page.getByLabel('Kept question').selectOption({ label: 'a new one' });
  await page.getByText('changed since it was kept').waitFor({ state: 'detached' });
  await page.getByLabel('Kept question').selectOption({ label: 'Anti-dive too' });
  expect(await page.getByLabel('Wheels').inputValue()).toBe('left');
  await page.getByRole('button', { name: 'Back to what was kept' }).click();
  expect(await page.getByLabel('Wheels').inputValue()).toBe('both');
  await page.getByLabel('Wheels').selectOption('left');
  await page.getByLabel('Wheels').selectOption('both');
  await page.getByText('changed since it was kept').waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Turn it on the bench' }).click();
  await page
    .getByRole('spinbutton', { name: /^Clamp bolt/ })
    .first()
    .waitFor();

  // the map: a value is marked, a step walked to by keys and taken; one step of undo
  await study(page, 'Map');
  const map = page.getByRole('application', { name: /^Camber, ° over top plate, across and clamp bolt/ });
  await map.waitFor();
  await page.getByLabel('Marked value, degrees').fill('-2,5');
  await page.getByLabel('Marked value, degrees').press('Enter');
  await expect.poll(() => page.locator('.stepfits').count(), { timeout: 20_000 }).toBeGreaterThan(3);
  expect(await page.locator('.maplegend').innerText()).toContain('camber −2.50° ± 0.10°');
  await map.focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  const status = page.locator('.mapplace [role="status"]');
  expect(await status.innerText()).toMatch(/^Top plate, across −5\.0 mm, Clamp bolt \+15\.0°: Camber −1\.\d\d°, .*; allowed$/);
  expect(await faults()).toEqual([]);
  await page.getByRole('button', { name: /save and more$/ }).click();
  const table = await downloaded(page, () => page.getByRole('menuitem', { name: 'Table as CSV' }).click());
  expect(table).toHaveLength(1 + 120 * 120);
  await map.focus();
  await page.keyboard.press('Enter');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 4');
  await page.keyboard.press('Control+z');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 3');

  // the map that was drawn is there when one comes back, and is not drawn anew
  await study(page, 'Influence');
  await study(page, 'Map');
  await map.waitFor({ timeout: 2_000 });
  expect(await page.getByRole('button', { name: /^Draw/ }).isEnabled()).toBe(true);

  // compare: three setups at once
  await study(page, 'Compare');
  await page.getByRole('button', { name: '+ setup' }).click();
  await page.getByRole('columnheader', { name: 'Wet' }).first().waitFor();
  expect(await page.getByRole('region', { name: 'Table of settings' }).innerText()).toContain('6 mm inboard');
  expect(await page.locator('.comparecurve .curve.more').count()).toBeGreaterThan(3);
  // a third beside the one on the bench: nothing is pushed out of sight
  await page.getByRole('button', { name: '+ setup' }).click();
  await page.getByRole('columnheader', { name: /^Sprint ± left/ }).waitFor();
  const hidden = await page
    .locator('.comparetables .answertable')
    .evaluateAll((tables) => tables.map((table) => table.scrollWidth - table.clientWidth));
  expect(hidden).toEqual([0, 0]);
  expect(await faults()).toEqual([]);
  await page.getByRole('button', { name: 'Wet to the sheet' }).click();
  await page.getByRole('region', { name: 'Set-up sheet of Wet, as it prints' }).waitFor();
  await page.getByLabel('Setup on the bench').selectOption('Trial 3');

  // a recorded list: faults with their lines, then rows with a reason where the car cannot be
  await study(page, 'Sweep');
  await page.getByLabel('Motion').selectOption('list');
  const open = page.getByLabel('List of positions');
  const list = (text: string) => ({ name: 'lap.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });
  await open.setInputFiles(list('travelLeft,travelRight,rack\n1,x,3\n'));
  await expect
    .poll(() => page.getByRole('alert').innerText())
    .toContain('line 2:3: found "x", expected a number for travelRight');
  await open.setInputFiles(list('travelLeft,travelRight,rack\n10,-5,3\n-900,0,0\n0,0,0\n'));
  await page.locator('.unreached').waitFor();
  expect(await page.locator('.sweeptable tbody tr').count()).toBe(3);
  expect(await page.locator('.sweeptable tbody tr').first().locator('.place').allInnerTexts()).toEqual(['+10.0', '−5.0', '+3.0']);
  // why it is not kept goes with the list
  await page.getByLabel('Name of the question').fill('Lap');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  const refused = page.getByText(/A recorded list stays in its own file/);
  await refused.waitFor();
  await page.getByLabel('Motion').selectOption('bump');
  await refused.waitFor({ state: 'detached' });
  await page.getByLabel('Motion').selectOption('list');
  const sweep = await downloaded(page, () => page.getByRole('button', { name: 'CSV of all readings' }).click());
  expect(sweep[0]).toMatch(/^input \[1\],left\.camber \[deg\]/);
  expect(sweep).toHaveLength(4);
  expect(await faults()).toEqual([]);

  // gauges: what is typed wrong is said; a floor that is not level
  await study(page, 'Gauges');
  await page.getByLabel('Distance of the dials, mm').fill('wide');
  expect(await page.getByRole('alert').innerText()).toContain('“wide” is not a number');
  await page.getByLabel('Distance of the dials, mm').fill('10 in');
  await page.getByLabel('Dials read').selectOption('thou');
  expect(await page.locator('.gaugetable thead').innerText()).toContain('0.001 in');
  expect(await faults()).toEqual([]);
  await page.getByLabel('Instrument', { exact: true }).selectOption('floor');
  await page.getByLabel('Pad, front left, mm').fill('6');
  await page.getByLabel('Camber, front left, degrees').fill('-1.8');
  expect(await page.getByRole('row', { name: /^front left/ }).innerText()).toContain('−1.58');

  // narrow: the list becomes a menu, and nothing is wider than the window
  await page.setViewportSize({ width: 640, height: 720 });
  for (const name of ['sweep', 'compare', 'influence', 'map', 'gauges']) {
    await page.getByLabel('Study', { exact: true }).selectOption(name);
    expect(await page.evaluate(() => document.documentElement.scrollWidth), name).toBeLessThanOrEqual(640);
  }
  expect(complaints).toEqual([]);
}, 240_000);
