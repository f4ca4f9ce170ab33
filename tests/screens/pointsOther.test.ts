import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { parseCar } from '../../geometry/index';
import { openWindow } from './chromium';
import { field, seriousFaults, setField, step } from './pointsPage';
import { choose } from './viewMarks';

/** Left side, X forward, Y left, Z up [mm], by the names of somebody else. */
const OTHER = {
  'LCA front bush': ['armFront', 22, 351, 205],
  'LCA rear bush': ['armRear', -301, 362, 209],
  'LCA outer ball': ['ballJoint', 5, 716, 188],
  'Top mount': ['strutTop', -41, 571, 812],
  'Strut lower bolt': ['strutFoot', -3, 628, 392],
  'Rack ball': ['rackEnd', -133, 331, 250],
  'Track rod end': ['tieRodEnd', -119, 690, 240],
  'Hub face': ['wheelCentre', 0, 764, 302],
} as const;

/** In inches, X back and Y right, from an origin 20 in behind the axle and 5 in over the ground; the right top is elsewhere. */
const listOf = (): string => {
  const rows = ['Point,X back (in),Y right (in),Z up (in)', 'Floor mark A,1,2,3', 'Floor mark B,4,5,6'];
  for (const side of ['L', 'R'] as const)
    for (const [name, [point, x, y, z]] of Object.entries(OTHER)) {
      const off = side === 'R' && point === 'strutTop' ? 2.54 : 0;
      rows.push([`${side} ${name}`, -x / 25.4 - 20, ((side === 'R' ? 1 : -1) * y) / 25.4, (z + off) / 25.4 - 5].join(','));
    }
  return rows.join('\n');
};

test(
  'a car from the list of somebody else: axes, unit and sides as its head says, names by hand; saved and opened again',
  { timeout: 180_000 },
  async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
    await page.locator('tr[data-reading="camber"]').waitFor();
    // a browser that has no handles on files
    await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
    await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
    await page.getByRole('button', { name: 'New car' }).click();
    const newCar = page.getByRole('region', { name: 'New car' });
    await newCar.getByLabel('Name', { exact: true }).fill('Rill roadster');
    await choose(page, 'Unit of the file', 'inches');
    await newCar.getByRole('region', { name: 'Rear axle' }).getByRole('button', { name: 'No such axle' }).click();
    await newCar.getByRole('radio', { name: /list of coordinates/ }).check();
    await newCar.getByRole('button', { name: 'Next: coordinates' }).click();
    const panel = page.getByRole('region', { name: 'Coordinates in' });
    const csv = { name: 'roadster.csv', mimeType: 'text/csv', buffer: Buffer.from(listOf()) };
    await panel.getByLabel('List of points').setInputFiles(csv);
    await expect.poll(() => page.locator('.previewtable tbody tr').count()).toBe(18);
    expect(await page.getByLabel('Unit of the list').inputValue()).toBe('in');
    expect(await page.getByLabel('X is').inputValue()).toBe('back');
    expect(await page.getByLabel('Y is').inputValue()).toBe('right');
    expect(await page.getByLabel('Measured on').inputValue()).toBe('both');
    expect(await panel.getByRole('alert').innerText()).toContain('18 rows have names of their own');
    for (const theme of ['Dark', 'Light'] as const) {
      await choose(page, 'Theme', theme);
      expect(await seriousFaults(page), theme).toEqual([]);
    }

    // named on the left, the right follows; what is no point is left out at once
    for (const [name, [point]] of Object.entries(OTHER))
      await page.getByLabel(`L ${name} is`, { exact: true }).selectOption(point);
    expect(await page.getByLabel('R Hub face is', { exact: true }).inputValue()).toBe('wheelCentre');
    await panel.getByRole('button', { name: 'Leave all 2 out' }).click();
    await page.getByLabel('Add to X', { exact: true }).fill('20');
    await page.getByLabel('Add to Z', { exact: true }).fill('127 mm');
    const row = (name: string) =>
      page.locator('.previewtable tbody tr').filter({ has: page.getByLabel(`${name} is`, { exact: true }) });
    expect(await row('L LCA front bush').innerText()).toMatch(/0\.8661[\s\S]*13\.8189[\s\S]*8\.0709/);
    // every column is in sight
    const preview = page.getByRole('group', { name: 'Preview' });
    expect(await preview.evaluate((box) => box.scrollWidth - box.clientWidth)).toBeLessThanOrEqual(0);
    // a point that nobody has measured holds no list
    await panel.getByRole('checkbox', { name: 'armFront' }).check();
    expect(await panel.innerText()).toContain('armFront: still typical on this car');
    await panel.getByRole('checkbox', { name: 'armFront' }).uncheck();

    // the panel is of its step, and comes back as it was left
    await step(page, 'Wheel and body').click();
    expect(await panel.count()).toBe(0);
    await page.getByRole('button', { name: 'Coordinates in' }).click();
    await panel.getByRole('button', { name: 'Take 16 points' }).click();
    await panel.getByRole('status').waitFor();
    await panel.getByRole('button', { name: 'Close' }).click();
    expect(await step(page, 'Points').innerText()).toContain('2 of 10 still typical');
    await choose(page, 'Side', 'Right');
    expect(await page.locator('.rightcell').allInnerTexts()).toEqual(
      expect.arrayContaining([expect.stringMatching(/^same\s*mirror$/), expect.stringMatching(/^Z\s\+0\.1000\s*mirror$/)]),
    );
    expect(await seriousFaults(page)).toEqual([]);

    // two adjusters: a plate in mm on a car in inches, and a hole off the centre; what is missing is gone to
    await step(page, 'Adjusters').click();
    await page.getByRole('button', { name: 'Add adjuster', exact: true }).click();
    await setField(page, 'Name in the file *', 'plate');
    await page.getByRole('button', { name: /^Slide/ }).click();
    await setField(page, 'Point *', 'strutTop');
    await setField(page, 'Along *', '0, -1, 0');
    await setField(page, 'Step *', '1 mm');
    await page.getByRole('button', { name: 'Make it' }).click();
    expect(await field(page, 'Range *').evaluate((input) => input === document.activeElement)).toBe(true);
    await setField(page, 'Range *', '-8 mm, 8 mm');
    await page.getByRole('button', { name: 'Make it' }).click();
    await page.getByRole('button', { name: 'Add adjuster', exact: true }).click();
    await setField(page, 'Name in the file *', 'rearBush');
    await page.getByRole('button', { name: /^Offset bushing/ }).click();
    await setField(page, 'Point *', 'armRear');
    await setField(page, 'Axis *', '1, 0, 0');
    await setField(page, 'Twelve o’clock *', '0, 0, 1');
    await setField(page, 'Offset *', '6 mm');
    await field(page, 'Seat').selectOption('arm');
    await page.getByRole('slider', { name: /^Try it/ }).fill('90');
    expect(await page.getByRole('region', { name: 'Try it' }).innerText()).toContain('Caster');
    // a field that is gone to stays clear of the part that is tried
    await field(page, 'Between positions *').focus();
    const hidden = async (): Promise<boolean> => {
      const [own, over] = [await field(page, 'Between positions *').boundingBox(), await page.locator('.trydraft').boundingBox()];
      return own !== null && over !== null && own.y + own.height > over.y && own.y < over.y + over.height;
    };
    expect(await hidden()).toBe(false);
    await page.getByRole('button', { name: 'Make it' }).click();
    await page.getByText('Rear bush', { exact: true }).click();
    const name = page.locator('details.part[open]').getByLabel('Name in the file *');
    await name.fill('rearBushing');
    await name.press('Enter');
    await page.getByRole('button', { name: /^Undo: Rename rearBush/ }).waitFor();

    // out and in again
    const [saved] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Control+s')]);
    const text = await readFile(await saved.path(), 'utf8');
    const read = parseCar(text);
    if (!read.ok) throw new Error('the file is sound');
    expect(Object.keys(read.value.document.front?.adjusters ?? {})).toEqual(['plate', 'rearBushing']);
    expect(Object.keys(read.value.document.front?.right?.points ?? {})).toHaveLength(8);
    page.on('filechooser', (chooser) => {
      void chooser.setFiles({ name: 'rill-roadster.jounce.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    });
    await page.evaluate(() => document.readyState);
    await page.keyboard.press('Control+o');
    await page.getByRole('button', { name: 'Nothing to undo' }).waitFor();
    await choose(page, 'What is edited', 'Points');
    expect(await page.getByLabel('wheelCentre, Y left, left, in').inputValue()).toBe('30.0787');
    await page.getByRole('navigation').getByRole('link', { name: 'Bench' }).click();
    await page
      .getByRole('group', { name: /^Rear bushing/ })
      .first()
      .waitFor();
    expect(complaints).toEqual([]);
  },
);
