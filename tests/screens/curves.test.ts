import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellsOf, motionField, openBench, SEEN, shareChanged, type } from './bench';
import { openWindow } from './chromium';

const cursorOf = (page: Page, name: string) => page.getByRole('slider', { name: new RegExp(`^${name} over`) });

/** Saves one kind of file from a plot's menu. */
const saved = async (page: Page, plot: string, item: string): Promise<Buffer> => {
  await page.getByRole('button', { name: `${plot}: save and more` }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('menuitem', { name: item }).click()]);
  return readFileSync(await download.path());
};

test('the cursor and the motion are one; what is compared stands behind; curves go to CSV, PNG and SVG', async () => {
  const { page, complaints } = await openBench('car-23', { acceptDownloads: true });
  const camber = cursorOf(page, 'Camber');
  await camber.waitFor();

  // keys and mouse on the plot move the car, and the motion rule moves the cursor
  await camber.focus();
  await camber.press('PageUp');
  await camber.press('ArrowRight');
  expect(await motionField(page, 'Bump').inputValue()).toBe('6');
  const [left] = await cellsOf(page, 'camber');
  expect(await camber.getAttribute('aria-valuetext')).toContain(`left ${left}`);
  await type(motionField(page, 'Bump'), '-20');
  expect(await camber.getAttribute('aria-valuenow')).toBe('-20');
  const box = await camber.boundingBox();
  if (!box) throw new Error('the plot is there');
  await page.mouse.move(box.x + box.width * 0.5, box.y + box.height * 0.5);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.7, box.y + box.height * 0.5, { steps: 4 });
  await page.mouse.up();
  expect(Number((await motionField(page, 'Bump').inputValue()).replace('−', '-'))).toBeGreaterThan(0);

  // a double click shows the whole, and the car stays where it was before its first click
  await type(motionField(page, 'Bump'), '-20');
  const ends = () => camber.evaluate((plot) => [plot.ariaValueMin, plot.ariaValueMax, plot.textContent]);
  const all = await ends();
  await camber.press('+');
  await expect.poll(ends).not.toEqual(all);
  await page.mouse.dblclick(box.x + box.width * 0.7, box.y + box.height * 0.5);
  expect(await motionField(page, 'Bump').inputValue()).toBe('−20');
  await expect.poll(ends).toEqual(all);

  // a second setup behind, with its own numbers in the file
  await page.getByLabel('Setup compared with').selectOption('own:Trial');
  const csv = (await saved(page, 'Camber', 'Table as CSV')).toString('utf8').split('\r\n');
  expect(csv[0]).toBe(
    'bump [mm],"Camber [°], left, Baseline","Camber [°], right, Baseline","Camber [°], left, Trial","Camber [°], right, Trial",reason',
  );
  expect(csv).toHaveLength(63);
  const middle = csv[31]?.split(',').map(Number) ?? [];
  expect(middle[1]).not.toBe(middle[3]);

  // the compared values in the head of a plot say whose they are; where there is no room, its tip does
  const head = page.locator('.plotbox', { has: camber }).locator('.cursorvalues');
  expect(await head.getAttribute('title')).toMatch(/; Trial: left \S+, right \S+$/);
  await page.setViewportSize({ width: 1600, height: 1000 });
  const compared = (await camber.getAttribute('aria-valuetext'))?.match(/Trial: left (\S+), right (\S+)$/) ?? [];
  const wanted = compared[1] === compared[2] ? [`LR ${compared[1]}`] : [`L ${compared[1]}`, `R ${compared[2]}`];
  expect(await head.locator('.ghost').allInnerTexts()).toEqual(wanted);
  await page.setViewportSize({ width: 1280, height: 720 });

  // pictures that stand for themselves
  const svg = (await saved(page, 'Camber', 'Picture as SVG')).toString('utf8');
  expect(svg).toMatch(/^<svg[^>]*xmlns/);
  expect(svg).toContain('Camber (°) over');
  // all that is written over the plot is inside the picture
  const beyond = await page.evaluate((source) => {
    const place = document.createElement('div');
    place.innerHTML = source;
    document.body.append(place);
    const drawing = place.querySelector('svg');
    const edge = drawing?.getBoundingClientRect().right ?? 0;
    const beyond = [...(drawing?.querySelectorAll(':scope > text') ?? [])].filter(
      (text) => text.getBoundingClientRect().right > edge,
    );
    place.remove();
    return beyond.map(({ textContent }) => textContent);
  }, svg);
  expect(beyond).toEqual([]);
  expect(svg).not.toContain('var(--');
  const png = await saved(page, 'Camber', 'Picture as PNG');
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  expect(png.readUInt32BE(16)).toBeGreaterThan(400);

  // zoom by keys, the whole again; another motion, another reading
  await camber.focus();
  const lines = () => page.locator('.plotbox').nth(1).locator('.plotsvg text').allTextContents();
  const whole = await lines();
  await camber.press('+');
  await camber.press('+');
  expect(await lines()).not.toEqual(whole);
  await camber.press('0');
  expect(await lines()).toEqual(whole);
  await page.getByRole('group', { name: 'Curves over' }).getByRole('button', { name: 'Roll' }).click();
  await page.getByLabel('Reading of curve 1').selectOption('track');
  await cursorOf(page, 'Track').press('ArrowRight');
  expect(await motionField(page, 'Roll').inputValue()).toBe('0.1');
  const { violations } = await new AxeBuilder({ page }).include('.curves').include('.picker').analyze();
  expect(violations.filter(({ impact }) => impact === 'serious' || impact === 'critical').map(({ id }) => id)).toEqual([]);
  expect(complaints).toEqual([]);
});

test('another file and the car as saved are compared with; the corner is picked on the plan', async () => {
  const { page, complaints } = await openBench('car-21');
  await page.getByLabel('Car file to compare with').setInputFiles('tests/golden/cars/car-23.jounce.json');
  await expect.poll(() => page.getByLabel('Setup compared with').inputValue()).toBe('file:Baseline');
  await expect.poll(async () => (await cellsOf(page, 'camber'))[2]).not.toBe('–');
  const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
  if ((await plate.count()) > 0) {
    await type(plate, '-5');
    await page.getByLabel('Setup compared with').selectOption('saved:Baseline');
    expect((await cellsOf(page, 'camber'))[2]).toMatch(/^[−+]?\d/);
  }
  await page.getByRole('button', { name: /^Rear right: camber/ }).click();
  expect(await page.getByRole('button', { name: /^Rear right: camber/ }).getAttribute('aria-pressed')).toBe('true');
  expect(
    await page
      .getByRole('group', { name: 'Axle', exact: true })
      .getByRole('button', { name: 'Rear' })
      .getAttribute('aria-pressed'),
  ).toBe('true');
  expect(complaints).toEqual([]);
});

test('a reading explains itself with this car’s numbers, groups fold, and readings are put away', async () => {
  const { page, complaints } = await openBench('car-23');
  await page
    .getByRole('button', { name: /^Camber °/ })
    .first()
    .click();
  const note = page.getByRole('note', { name: 'About Camber' });
  await note.waitFor();
  const [shown] = await cellsOf(page, 'camber');
  expect(await note.innerText()).toMatch(new RegExp(`asin\\(−\\(.*\\)\\) = ${shown}°`, 's'));
  // of the other wheel too, and in the units chosen
  await page.getByRole('button', { name: /^Half track mm/ }).click();
  await page.getByRole('group', { name: 'Half track: numbers of' }).getByRole('button', { name: 'Right' }).click();
  await page.getByRole('button', { name: /^Units:/ }).click();
  await page.getByRole('group', { name: 'Lengths', exact: true }).getByRole('button', { name: 'inches' }).click();
  await page.keyboard.press('Escape');
  const [, right] = await cellsOf(page, 'halfTrack');
  const told = await page.getByRole('note', { name: 'About Half track' }).innerText();
  expect(told).toMatch(new RegExp(`= ${right} in\\n`));
  expect(told).toMatch(/\(\S+; −\S+; \S+\) − /);
  await page.getByRole('button', { name: 'Steering axis' }).click();
  expect(await page.locator('tr[data-reading="caster"]').count()).toBe(0);
  await page.getByRole('button', { name: 'Choose…' }).click();
  await page.getByRole('dialog').waitFor();
  const { violations } = await new AxeBuilder({ page }).include('dialog').analyze();
  expect(violations.map(({ id }) => id)).toEqual([]);
  await page.getByRole('checkbox', { name: 'Toe', exact: true }).uncheck();
  await page.getByRole('button', { name: 'Camber to the body: up' }).click();
  // a group is moved by keys, and stays in hand to be moved on
  await page.getByRole('button', { name: 'Group Axle: up' }).press('Enter');
  await page.keyboard.press('Enter');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('Group Axle: up');
  // and by the pointer: what is dropped moves, Escape gives a drag up and leaves the dialog open
  const grip = (name: string) =>
    page
      .locator('.choosereadings [data-list]', { has: page.getByRole('button', { name: `${name}: down` }) })
      .last()
      .locator('.grip')
      .first();
  const centreOf = async (name: string): Promise<readonly [number, number]> => {
    const box = await grip(name).boundingBox();
    if (!box) throw new Error(`${name} has a grip`);
    return [box.x + box.width / 2, box.y + box.height / 2];
  };
  const dragOnto = async (name: string, onto: string): Promise<void> => {
    const [[x, y], [toX, toY]] = [await centreOf(name), await centreOf(onto)];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(toX, toY - 4, { steps: 4 });
    expect(
      await page
        .locator('[data-drop="before"]')
        .getByRole('button', { name: `${onto}: up` })
        .count(),
    ).toBe(1);
  };
  const order = () =>
    page
      .locator('.choosereadings')
      .getByRole('button', { name: /: up$/ })
      .evaluateAll((all) => all.map((one) => one.ariaLabel ?? ''));
  const before = await order();
  await dragOnto('Half track', 'Steer angle');
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await order()).toEqual(before);
  await dragOnto('Half track', 'Steer angle');
  await page.mouse.up();
  const after = await order();
  expect(after.indexOf('Half track: up')).toBe(after.indexOf('Steer angle: up') - 1);
  await dragOnto('Group Steering axis', 'Group Wheel');
  await page.mouse.up();
  expect((await order())[0]).toBe('Group Steering axis: up');
  const wide = await page.locator('.choosereadings .groups').evaluate((list) => list.scrollWidth - list.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await page.getByRole('button', { name: 'Close' }).click();
  const groups = await page.locator('.groupname').allInnerTexts();
  expect(groups.indexOf('Axle')).toBeLessThan(groups.findIndex((name) => name.startsWith('Movement')));
  expect(await page.locator('tr[data-reading="toe"]').count()).toBe(0);
  const ids = await page.locator('tr[data-reading]').evaluateAll((rows) => rows.map((row) => row.getAttribute('data-reading')));
  expect(ids.indexOf('camberToBody')).toBeLessThan(ids.indexOf('camber'));
  expect(complaints).toEqual([]);
});

/**
 * What people see who lack one kind of cone: linear RGB to linear RGB at full severity.
 * G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, A Physiologically-based Model for Simulation of Color Vision Deficiency,
 * IEEE Transactions on Visualization and Computer Graphics 15 (6), 2009, table 1.
 */
const LACKING = {
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const;

/** Shows the whole window as it is seen so. A filter works on linear RGB. */
const seeAs = (page: Page, matrix: readonly number[]): Promise<void> =>
  page.evaluate((rows) => {
    const make = (name: string) => document.createElementNS('http://www.w3.org/2000/svg', name);
    document.querySelector('#seen-as')?.remove();
    const [svg, filter, colours] = [make('svg'), make('filter'), make('feColorMatrix')];
    svg.id = 'seen-as';
    svg.setAttribute('width', '0');
    svg.setAttribute('height', '0');
    filter.id = 'lacking';
    const three = [0, 3, 6].map((at) => [...rows.slice(at, at + 3), 0, 0].join(' '));
    colours.setAttribute('values', [...three, '0 0 0 1 0'].join(' '));
    filter.append(colours);
    svg.append(filter);
    document.body.append(svg);
    document.body.style.filter = 'url(#lacking)';
  }, matrix);

test.each(['light', 'dark'] as const)(
  'with any kind of colour blindness left, right and the compared setup are seen, and told apart by dash and shape: %s theme',
  async (colorScheme) => {
    // the first sample: it has limits, and another setup to compare with
    const { page } = await openWindow({ colorScheme, graphics: 'none', reducedMotion: 'reduce' });
    await page.locator('tr[data-reading="camber"]').waitFor();
    await page.evaluate(() => document.fonts.ready);
    await type(motionField(page, 'Roll'), '1.5');
    const plot = page.locator('.plotbox').nth(1).locator('.plot');
    await plot.locator('path.curve.right').first().waitFor();

    // each line by its dashes and the shape of its marks, whatever its colour
    const looks = await plot.evaluate((place) =>
      Object.fromEntries(
        (['left', 'right', 'compared'] as const).map((kind) => {
          const line = place.querySelector(`.curve.${kind}:not(.compared)`) ?? place.querySelector(`.curve.${kind}`);
          const mark = place.querySelector(kind === 'compared' ? '.mark.compared' : `.mark.${kind}:not(.compared)`);
          return [kind, { dash: line ? getComputedStyle(line).strokeDasharray : '', mark: mark?.tagName ?? '' }];
        }),
      ),
    );
    const marks = Object.values(looks).map(({ mark }) => mark);
    expect(marks.every((mark) => mark !== '')).toBe(true);
    expect(new Set(marks).size).toBe(3);
    expect(new Set(Object.values(looks).map(({ dash }) => dash)).size).toBe(3);

    // and in the table by words, in the limits by the way a pointer looks
    expect(await page.locator('.readingtable thead').innerText()).toMatch(/Left\s+Right\s+± L\s+± R/);
    const pointers = await page
      .locator('.limitbar')
      .first()
      .evaluate((bar) => [...bar.querySelectorAll('.pointer')].map((one) => one.getAttribute('d')));
    expect(new Set(pointers).size).toBe(pointers.length);

    for (const [kind, matrix] of Object.entries(LACKING)) {
      await seeAs(page, matrix);
      const whole = await plot.screenshot();
      for (const lines of ['.left:not(.compared)', '.right:not(.compared)', '.compared']) {
        const hide = (hidden: boolean) =>
          plot.evaluate(
            (place, [selector, value]) =>
              place.querySelectorAll<SVGElement>(`.curve${selector}, .mark${selector}`).forEach((one) => {
                one.style.visibility = value ?? '';
              }),
            [lines, hidden ? 'hidden' : ''],
          );
        await hide(true);
        expect(await shareChanged(page, whole, await plot.screenshot()), `${kind}, ${lines}`).toBeGreaterThan(SEEN);
        await hide(false);
      }
    }
  },
);
