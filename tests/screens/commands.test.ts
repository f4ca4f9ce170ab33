import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellsOf, openBench } from './bench';

const axeOn = async (page: Page, place: string): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).include(place).analyze();
  return violations.map(({ id, nodes }) => `${place} ${id}: ${nodes[0]?.html.slice(0, 120)}`);
};

const focusName = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '');

test('the command list: typed, chosen, done, by keyboard alone', async () => {
  const { page, complaints } = await openBench('car-23', { colorScheme: 'light', graphics: 'none' });
  await page.keyboard.press('Control+k');
  const list = page.getByRole('dialog', { name: 'Command list' });
  await list.waitFor();
  await page.keyboard.type('camber bolt');
  await expect.poll(() => list.getByRole('option').first().innerText()).toMatch(/Go to Camber bolt, rear/);
  await page.keyboard.press('Enter');
  expect(await list.count()).toBe(0);
  expect(
    await page
      .getByRole('group', { name: 'Axle', exact: true })
      .getByRole('button', { name: 'Rear' })
      .getAttribute('aria-pressed'),
  ).toBe('true');
  await expect.poll(() => focusName(page)).toMatch(/^Camber bolt/);

  await page.getByRole('button', { name: 'Commands' }).click();
  await page.keyboard.type('no such thing');
  expect(await list.innerText()).toContain('Nothing is called');
  await page.keyboard.press('Escape');
  expect(await list.count()).toBe(0);

  // what only its own panel can do is done by pressing there
  for (const [typed, dialog] of [
    ['setups…', 'Setups'],
    ['choose readings', 'Readings shown'],
  ] as const) {
    await page.keyboard.press('Control+k');
    await page.keyboard.type(typed);
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: dialog }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name: dialog }).waitFor({ state: 'hidden' });
  }

  // from any page, to any page and tab; what is on the bench alone goes there first
  const run = async (typed: string): Promise<void> => {
    await page.keyboard.press('Control+k');
    await page.keyboard.type(typed);
    await page.keyboard.press('Enter');
  };
  await run('tilt of joints');
  const tab = page.getByRole('group', { name: 'Fit-up', exact: true }).getByRole('button', { name: 'Joints' });
  await expect.poll(() => tab.getAttribute('aria-pressed')).toBe('true');
  await run('Car: name, units');
  await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: 'Car', pressed: true }).waitFor();
  await run('choose readings');
  await page.getByRole('dialog', { name: 'Readings shown' }).waitFor();
  await page.keyboard.press('Escape');
  await page.setViewportSize({ width: 700, height: 500 });
  await run('go to camber to the body');
  await expect.poll(() => focusName(page)).toMatch(/^Camber to the body/);
  expect(complaints).toEqual([]);
});

test.each(['light', 'dark'] as const)(
  'every dialog and menu of the Bench on the %s theme: axe, Tab order, Escape',
  async (colorScheme) => {
    const { page, complaints } = await openBench('car-23', { colorScheme, graphics: 'none' });
    const found: string[] = [];

    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor();
    found.push(...(await axeOn(page, '.commandlist')));
    await page.keyboard.press('Escape');

    for (const [button, place, first] of [
      ['Setups…', 'dialog.setups', 'Undo'],
      ['Choose…', 'dialog.choosereadings', 'All, in their first order'],
    ] as const) {
      const opener = page.getByRole('button', { name: button });
      await opener.press('Enter');
      await page.locator(place).waitFor();
      found.push(...(await axeOn(page, place)));
      // Tab stays inside, from the bar downwards
      const stops: string[] = [];
      for (let stop = 0; stop < 6; stop += 1) {
        expect(await page.evaluate((inside) => document.querySelector(inside)?.contains(document.activeElement), place)).toBe(
          true,
        );
        stops.push(await focusName(page));
        await page.keyboard.press('Tab');
      }
      const wanted = [first, 'Close'].filter((name) => name !== 'Undo');
      expect(stops.filter((name) => wanted.includes(name))).toEqual(wanted);
      await page.keyboard.press('Escape');
      await page.locator(place).waitFor({ state: 'hidden' });
      expect(await focusName(page)).toContain(button);
    }

    for (const [button, role] of [
      [/^Units:/, 'group'],
      [/^Played:/, 'menu'],
      [/^Camber: save and more/, 'menu'],
    ] as const) {
      const opener = page.getByRole('button', { name: button });
      await opener.press('Enter');
      await page.locator(`.popover[role="${role}"]:popover-open`).waitFor();
      found.push(...(await axeOn(page, '.popover:popover-open')));
      if (role === 'menu') {
        expect(await page.evaluate(() => document.activeElement?.getAttribute('role'))).toMatch(/^menuitem/);
        const at = await focusName(page);
        await page.keyboard.press('ArrowDown');
        expect(await focusName(page)).not.toBe(at);
        await page.keyboard.press('ArrowUp');
        expect(await focusName(page)).toBe(at);
      }
      await page.keyboard.press('Escape');
      expect(await page.locator('.popover:popover-open').count()).toBe(0);
      expect(await focusName(page)).toMatch(button);
    }
    expect(found).toEqual([]);
    expect(complaints).toEqual([]);
  },
);

/** Controls of the Bench by their names, and the command that does the same; null: none, with the reason behind. */
const REACHED: readonly (readonly [RegExp, RegExp | null, string?])[] = [
  [/^(Bench|Points|Studies|Fit-up|Sheet)$/, /^Go to (Bench|Points|Studies|Fit-up|Sheet)$/],
  [/^Commands$/, null, 'it is the list itself'],
  [/^File$/, /^Open a car file$/],
  [/^(Front|Rear)$/, /^Show the (front|rear) axle$|^Look from the front/],
  [/^Setup on the bench$/, /^Put .* on the bench$/],
  [/^Setup compared with$/, /^Compare with /],
  [/^Setups…$/, /^Setups…$/],
  [/^Nothing to (undo|redo)$/, null, 'there is no step; undo and redo are there once there is one'],
  [/^Units:/, /^Units: /],
  [/^(Light|Dark|System)$/, /^Colours: /],
  [/^(L = R|apart)$/, null, 'it belongs to the card in hand, and is reached by going to that'],
  [/(less|more)$/, null, 'it belongs to the card in hand, and is reached by going to that'],
  [/, left and right, /, /^Go to .*, front$/],
  [/^Set toe/, /^Set toe, front$/],
  [/^Ride height/, /^Set ride height, front$/],
  [/^(Left|Right|Axle|Car)$/, /^Show in the view: /],
  [/^(Corner|Side|Top|Wheel|Axis)$/, /^Look /],
  [/^Show \d+$/, /^Show or hide: /],
  [/^(Front|Rear) (left|right): camber/, null, 'axle and side are commands of their own'],
  [/^(Bump|Roll|Steer)$/, /^Curves over (bump|roll|steer)$/],
  [/^\+ curve$/, /^One more curve$/],
  [/^Reading of curve/, /^Curve of camber$/],
  [/: save and more$/, /^Save or take away the curve of /],
  [/ over bump: cursor$/, /^Curve of /],
  [/^(Readings|Lengths)$/, /^Show (readings|lengths) in the right-hand column$/],
  [/^Choose…$/, /^Choose readings…$/],
  [/^Copy readings$/, /^Copy readings$/],
  [/^Save readings as CSV$/, /^Save readings as CSV$/],
  [/^Play bump$/, /^Play or stop$/],
  [/^Played: /, /^Play (roll|steer|bump)/],
  [/^Bump: wheel travel/, /^Set bump$/],
  [/^Roll, degrees/, /^Set roll$/],
  [/^Steer: rack travel/, /^Set steer$/],
  [/^Steer as$/, /^Steer as /],
  [/^Zero/, /^Ride height, straight ahead$/],
];

test('every control of the Bench has a command, or a reason to have none', async () => {
  const { page } = await openBench('car-23');
  await page.locator('canvas').waitFor();
  await page.getByRole('button', { name: 'Front left: camber' }).waitFor();
  const names = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('.app :is(button, select, input, a, [role="slider"])')]
      .filter((control) => control.checkVisibility() && !control.closest('.readingtable'))
      .map((control) => control.getAttribute('aria-label') ?? control.innerText.trim().replace(/\s+/g, ' ')),
  );
  const table = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('tr[data-reading]')].map((row) => row.dataset['reading']?.split('.')[0] ?? ''),
  );
  await page.keyboard.press('Control+k');
  const list = page.getByRole('dialog', { name: 'Command list' });
  await list.waitFor();
  const labels = await list.locator('.commandlabel').allInnerTexts();

  expect(names.length).toBeGreaterThan(50);
  expect(names.filter((name) => !REACHED.some(([control]) => control.test(name)))).toEqual([]);
  expect(REACHED.filter(([, command]) => command && !labels.some((label) => command.test(label))).map(String)).toEqual([]);
  expect(REACHED.filter(([control]) => !names.some((name) => control.test(name))).map(String)).toEqual([]);
  // and every line of the table
  expect(new Set(table).size).toBeGreaterThan(60);
  expect(labels.filter((label) => label.startsWith('Go to ')).length).toBeGreaterThan(new Set(table).size);
});

test('in a narrow window, where one motion is shown at a time, each is gone to by its command', async () => {
  const { page } = await openBench('car-23', { graphics: 'none', viewport: { width: 640, height: 480 } });
  for (const [name, field] of [
    ['roll', /^Roll, degrees/],
    ['steer', /^Steer: rack travel/],
    ['bump', /^Bump: wheel travel/],
  ] as const) {
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor();
    await page.keyboard.type(`set ${name}`);
    await page.keyboard.press('Enter');
    await expect.poll(() => focusName(page), { message: name }).toMatch(field);
    const box = await page.locator('.motion input:focus').boundingBox();
    expect(box && box.x >= 0 && box.x + box.width <= 640 && box.y + box.height <= 480, name).toBe(true);
  }
});

test('by keyboard alone: camber to −3.0° in two ways, and what each does to the roll centre', async () => {
  const { page, complaints } = await openBench('car-23', { graphics: 'none' });
  const keys = page.keyboard;
  const number = (text: string | undefined): number => Number(text?.replace('−', '-').replaceAll(',', ''));
  const camber = async (): Promise<number> => number((await cellsOf(page, 'camber'))[0]);
  const command = async (typed: string): Promise<void> => {
    await keys.press('Control+k');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor();
    await keys.type(typed);
    await keys.press('Enter');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor({ state: 'hidden' });
  };
  /** Types settings into the field that has the focus, halving the way between two, until the table says −3.00. */
  const searchCamber = async (shallow: number, steep: number): Promise<void> => {
    let [less, more] = [shallow, steep];
    for (let turn = 0; turn < 14; turn += 1) {
      const middle = (less + more) / 2;
      await keys.press('Control+a');
      await keys.type(middle.toFixed(3));
      await keys.press('Enter');
      const now = await camber();
      if (now === -3) return;
      if (now > -3) less = middle;
      else more = middle;
    }
    throw new Error(`camber does not come to −3.00 but to ${await camber()}`);
  };
  const rollCentre = async (): Promise<number> => number((await cellsOf(page, 'rollCentreHeight'))[0]);

  const standing = await rollCentre();
  await command('go to plate across');
  await expect.poll(() => focusName(page)).toMatch(/^Plate across/);
  await searchCamber(0, -15);
  const byPlate = await rollCentre();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 1');

  await command('put baseline on the bench');
  expect(await camber()).toBeGreaterThan(-2.5);
  await command('go to clamp bolt');
  await expect.poll(() => focusName(page)).toMatch(/^Clamp bolt/);
  await searchCamber(0, 90);
  const byBolt = await rollCentre();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 2');

  // the plate moves the strut's top and with it the line that makes the roll centre; the bolt tilts the knuckle on the strut
  expect(byPlate - standing).toBeGreaterThan(2);
  expect(byBolt - standing).toBeLessThan(0);
  await command('compare with trial 1');
  const [, difference] = await cellsOf(page, 'rollCentreHeight');
  expect(number(difference)).toBeCloseTo(byBolt - byPlate, 1);
  // both stand at −3.00 as it is shown
  expect(Math.abs(number((await cellsOf(page, 'camber'))[2]))).toBeLessThan(0.011);
  expect(complaints).toEqual([]);
});
