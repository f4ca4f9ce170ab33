import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { cellsOf, motionField, openBench, pictureOf, SEEN, shareChanged, type, UNSEEN } from './bench';
import { openWindow } from './chromium';

type Step = (page: Page) => Promise<void>;

/** Several things tried in one window, which is put back between them: a window costs more than what is tried in it. */
const inTurn = async (page: Page, steps: Readonly<Record<string, Step>>): Promise<void> => {
  for (const [name, step] of Object.entries(steps)) {
    try {
      await step(page);
      await putBack(page);
    } catch (cause) {
      throw new Error(`${name}: ${cause instanceof Error ? cause.message : String(cause)}`, { cause });
    }
  }
};

/** Everything undone, standing, the front axle on the bench. */
const putBack = async (page: Page): Promise<void> => {
  const undo = page.getByRole('button', { name: /^Undo:/ });
  while ((await undo.count()) > 0) await undo.click();
  await page.getByRole('button', { name: /^Zero/ }).click();
  await page.getByRole('group', { name: 'Axle', exact: true }).getByRole('button', { name: 'Front' }).click();
  await page.getByLabel('Setup on the bench').selectOption('Baseline');
};

test('opens on a sample with its picture, its numbers and the cautions; views are named, turned, and drawn only when asked', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  expect(await page.locator('h1').innerText()).not.toBe('No car open');
  expect(await page.locator('.cautions').innerText()).toMatch(
    /Rigid links, no compliance.*wheel-centre height.*service data.*rules.*engineer/s,
  );
  const corner = await pictureOf(page);
  expect(await page.locator('.overlay .tag').allTextContents()).toEqual(
    expect.arrayContaining([expect.stringContaining('steering axis')]),
  );
  expect(await page.getByRole('navigation').getByRole('link').allInnerTexts()).toEqual([
    'Bench',
    'Points',
    'Studies',
    'Fit-up',
    'Sheet',
  ]);

  // what comes late, such as a font, may ask for one more picture; then it has to be quiet
  const drawn = () => page.evaluate(() => document.querySelector('canvas')?.dataset['drawn']);
  let before = await drawn();
  const isQuiet = async (): Promise<boolean> => {
    await page.waitForTimeout(800);
    const last = before;
    before = await drawn();
    return before === last;
  };
  await expect.poll(isQuiet, { timeout: 6000, interval: 1 }).toBe(true);
  expect(await isQuiet()).toBe(true);

  for (const name of ['Front', 'Side', 'Top', 'Corner']) {
    await page.getByRole('group', { name: 'View', exact: true }).getByRole('button', { name }).click();
    const share = await shareChanged(page, corner, await pictureOf(page));
    if (name === 'Corner') expect(share).toBeLessThan(UNSEEN);
    else expect(share, name).toBeGreaterThan(SEEN);
  }
  await page.getByRole('group', { name: /^View of the front axle/ }).focus();
  await page.keyboard.press('ArrowLeft');
  expect(await shareChanged(page, corner, await pictureOf(page))).toBeGreaterThan(SEEN);
  expect(complaints).toEqual([]);
});

test('the picture follows: a bump, the rear axle, and a position that cannot be reached, where it stays', async () => {
  const { page } = await openBench();
  const [still, standing] = [await pictureOf(page), await cellsOf(page, 'camber')];
  await page.getByRole('slider', { name: /^Bump/ }).press('PageUp');
  await page.getByRole('slider', { name: /^Bump/ }).press('PageUp');
  expect(await motionField(page, 'Bump').inputValue()).toBe('10');
  expect(await cellsOf(page, 'camber')).not.toEqual(standing);
  expect(await shareChanged(page, still, await pictureOf(page))).toBeGreaterThan(SEEN);
  await page.getByRole('button', { name: /^Zero/ }).click();
  expect(await cellsOf(page, 'camber')).toEqual(standing);
  expect(await shareChanged(page, still, await pictureOf(page))).toBeLessThan(UNSEEN);

  await page.getByRole('group', { name: 'Axle', exact: true }).getByRole('button', { name: 'Rear' }).click();
  expect(await page.getByRole('group', { name: 'Camber bolt, in hand' }).count()).toBe(1);
  expect(await page.getByRole('group', { name: 'Motion' }).innerText()).toContain('this axle is not steered');
  expect(await cellsOf(page, 'casterBySwing')).toEqual([expect.stringContaining('not steered')]);
  expect(await page.locator('.cautions').innerText()).toContain('sideways spring is not modelled');
  expect(await shareChanged(page, still, await pictureOf(page))).toBeGreaterThan(SEEN);

  await page.setInputFiles('input[type=file]', {
    name: 'far.jounce.json',
    mimeType: 'application/json',
    buffer: Buffer.from(await withTravel(page, 400)),
  });
  await expect.poll(() => page.getByRole('slider', { name: /^Bump/ }).getAttribute('max')).toBe('400');
  // curves over so much travel are drawn at once, with what shoots off outside the frame
  const plots = page.locator('.plotbox');
  for (let place = 0; place < (await plots.count()); place += 1)
    expect(await plots.nth(place).locator('path.curve').count(), `plot ${place}`).toBeGreaterThan(0);
  await type(motionField(page, 'Bump'), '60');
  const [good, numbers] = [await pictureOf(page), await cellsOf(page, 'camber')];
  await type(motionField(page, 'Bump'), '390');
  const banner = page.getByRole('region', { name: 'Readings' }).getByRole('alert');
  expect(await banner.innerText()).toMatch(/cannot reach at bump \+390\.0 mm.*[\d.]+ mm are missing.*stay at the last position/s);
  expect(await motionField(page, 'Bump').inputValue()).toBe('390');
  expect(await cellsOf(page, 'camber')).toEqual(numbers);
  expect(await page.locator('.readingtable thead .at').innerText()).toBe('last that could be reached: bump +60.0 mm');
  // no part has moved; the card over the picture says that its figures are the last reached
  expect(await page.locator('.picker .caption').innerText()).toContain('last reached');
  expect(await shareChanged(page, good, await pictureOf(page))).toBeLessThan(SEEN);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: /^Zero/ }).click();
  expect(await banner.count()).toBe(0);
});

/** The reference car with so much travel that not all of it can be reached. */
const withTravel = async (page: Page, travel: number): Promise<string> => {
  const text = await page.evaluate(
    async () => ((await (await fetch('/api/samples/car-23')).json()) as { value: { text: string } }).value.text,
  );
  const car = JSON.parse(text) as { front: Record<string, unknown> };
  delete car.front['damper'];
  return JSON.stringify({ ...car, front: { ...car.front, travel: [-travel, travel] } });
};

const sliderFollowsTheMouse: Step = async (page) => {
  const box = await page.getByRole('slider', { name: /^Steer/ }).boundingBox();
  if (!box) throw new Error('the steer rule is there');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width * 0.75, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  expect(Number(await motionField(page, 'Steer').inputValue())).toBeGreaterThan(15);
  expect(Number((await cellsOf(page, 'steerAngle'))[0]?.replace('−', '-'))).not.toBeCloseTo(0, 1);
};

const rollHasTwoColumns: Step = async (page) => {
  await page.getByLabel('Setup on the bench').selectOption('Trial');
  await type(motionField(page, 'Roll'), '1.5');
  const [left, right, ...changes] = await cellsOf(page, 'camber');
  expect(left).not.toBe(right);
  expect(changes).toHaveLength(2);
};

const refusedNumberStays: Step = async (page) => {
  const bump = motionField(page, 'Bump');
  await type(bump, 'ten');
  expect(await bump.inputValue()).toBe('ten');
  expect(await page.getByRole('alert').innerText()).toContain('Not a number');
  await type(bump, '999');
  expect(await page.getByRole('alert').innerText()).toContain('Out of range');
  await bump.press('Escape');
  expect(await bump.inputValue()).toBe('0');

  // the reason never covers the steps of the part that it is about
  await type(page.getByRole('spinbutton', { name: /^Plate across, left and right/ }), '99');
  const [note, steps] = await Promise.all([page.getByRole('alert').boundingBox(), page.locator('.held .steps').boundingBox()]);
  if (!note || !steps) throw new Error('both are there');
  const apart = note.y >= steps.y + steps.height || note.y + note.height <= steps.y || note.x >= steps.x + steps.width;
  expect(apart).toBe(true);
  await page.keyboard.press('Escape');
};

const editShowsItsDifference: Step = async (page) => {
  const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
  await type(plate, '-5');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 1');
  const changed = await cellsOf(page, 'camber');
  expect(changed[2]).toMatch(/^−0\.\d\d$/);
  expect(await page.locator('.held .say').innerText()).toBe('5 mm inboard');
  await page.keyboard.press('Control+z');
  expect(await plate.inputValue()).toBe('0');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Baseline');
  expect((await cellsOf(page, 'camber'))[2]).toBe('–');
  await page.keyboard.press('Control+Shift+Z');
  expect(await cellsOf(page, 'camber')).toEqual(changed);

  await type(plate, '10');
  expect(await page.locator('.held .effects').innerText()).toBe('End of the range.');
};

const stepsAndSides: Step = async (page) => {
  await page.getByRole('group', { name: 'Arm bolt', exact: true }).click();
  await page.getByRole('button', { name: 'Arm bolt: 1 mark more' }).click();
  const both = page.getByRole('spinbutton', { name: /^Arm bolt, left and right/ });
  expect(await both.inputValue()).toBe('15');
  await both.press('ArrowUp');
  expect(await both.inputValue()).toBe('30');
  await both.press('Home');
  expect(await both.inputValue()).toBe('0');
  await page.getByRole('group', { name: 'Arm bolt: sides' }).getByRole('button', { name: 'apart' }).click();
  await type(page.getByRole('spinbutton', { name: /^Arm bolt, right/ }), '-45');
  expect(await page.getByRole('spinbutton', { name: /^Arm bolt, left/ }).inputValue()).toBe('0');
  await page.getByRole('group', { name: 'Arm bolt: sides' }).getByRole('button', { name: 'L = R' }).click();
  expect(await both.inputValue()).toBe('0');
};

const partIsDragged: Step = async (page) => {
  await page.getByRole('group', { name: 'Rear bush', exact: true }).click();
  const box = await page.locator('.held .dial').boundingBox();
  if (!box) throw new Error('the dial is there');
  const [x, y, reach] = [box.x + box.width / 2, box.y + box.height / 2, box.width * 0.4];
  await page.mouse.move(x, y - reach);
  await page.mouse.down();
  for (const angle of [20, 40, 60, 90]) {
    const turn = (angle * Math.PI) / 180;
    await page.mouse.move(x + reach * Math.sin(turn), y - reach * Math.cos(turn));
  }
  await page.mouse.up();
  expect(await page.getByRole('spinbutton', { name: /^Rear bush, left and right/ }).inputValue()).toBe('90');
  expect(await page.locator('.held .say').innerText()).toBe('hole at 3 o’clock');
  await page.keyboard.press('Control+z');
  expect(await page.getByRole('spinbutton', { name: /^Rear bush, left and right/ }).inputValue()).toBe('none');
};

const toeAndHeightAreHeld: Step = async (page) => {
  const toe = page.getByRole('spinbutton', { name: /^Set toe/ });
  await toe.click();
  const card = page.getByRole('group', { name: 'Set toe, in hand' });
  const [view, column] = await Promise.all([card.boundingBox(), page.locator('.cards').boundingBox()]);
  if (!view || !column) throw new Error('both are there');
  expect(view.y).toBeGreaterThanOrEqual(column.y - 1);
  expect(view.y + view.height).toBeLessThanOrEqual(column.y + column.height + 1);
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Set toe/);
  await type(toe, '0.1');
  expect((await cellsOf(page, 'toe')).slice(0, 2)).toEqual(['0.100', '0.100']);
  expect(await card.locator('.effects').innerText()).toMatch(/^Next step: .*toe \+0\.010°/);
  await card.getByRole('button', { name: /more$/ }).click();
  expect(await toe.inputValue()).toBe('0.11');
  const rod = page.getByRole('spinbutton', { name: /^Tie rod, left/ });
  expect(await rod.getAttribute('aria-readonly')).toBe('true');
  expect(Number((await rod.inputValue()).replace('−', '-'))).not.toBe(0);

  await page.getByRole('spinbutton', { name: /^Ride height/ }).click();
  const height = page.getByRole('group', { name: 'Ride height, in hand' });
  expect(await height.locator('.effects').innerText()).toMatch(/^Next step: .*roll centre height/);
  const dial = await height.locator('.dial').boundingBox();
  if (!dial) throw new Error('the dial is there');
  await page.mouse.move(dial.x + dial.width / 2, dial.y + dial.height / 2);
  await page.mouse.down();
  await page.mouse.move(dial.x + dial.width / 2, dial.y + dial.height / 2 - 20, { steps: 3 });
  await page.mouse.up();
  expect(Number(await page.getByRole('spinbutton', { name: /^Ride height/ }).inputValue())).toBeGreaterThan(2);
};

const faultyFileIsRefused: Step = async (page) => {
  await page.setInputFiles('input[type=file]', {
    name: 'broken.jounce.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{ "format": "jounce-car", "version": 1 }'),
  });
  const dialog = page.getByRole('dialog');
  expect(await dialog.innerText()).toMatch(/Not opened: \d+ faults? in broken\.jounce\.json.*name/s);
  await page.keyboard.press('Escape');
  expect(await page.locator('h1').innerText()).toBe('Check car 23');
};

const pageNeverScrolls: Step = async (page) => {
  const overflow = await page.evaluate(() => {
    const { scrollWidth, scrollHeight, clientWidth, clientHeight } = document.documentElement;
    return [scrollWidth - clientWidth, scrollHeight - clientHeight];
  });
  expect(overflow).toEqual([0, 0]);
};

const everythingByKeyboard: Step = async (page) => {
  const focused = () =>
    page.evaluate(() => {
      const element = document.activeElement;
      if (!(element instanceof HTMLElement)) return null;
      const ring = element.closest('.field') ?? element;
      return { name: element.getAttribute('aria-label') ?? element.innerText, outline: getComputedStyle(ring).outlineStyle };
    });
  const seen: string[] = [];
  await page.locator('h1').click();
  for (let stop = 0; stop < 480; stop += 1) {
    await page.keyboard.press('Tab');
    const now = await focused();
    if (!now || now.name === '') continue;
    expect(now.outline, now.name).not.toBe('none');
    seen.push(now.name);
    if (now.name.startsWith('Steer: rack travel, mm, slider')) break;
  }
  for (const name of [
    'Front',
    'Setup on the bench',
    'Setup compared with',
    'Dark',
    'Plate along, left and right, mm',
    'Set toe, each wheel',
    'Corner',
    'Table of readings',
    'Play bump',
    'Played: bump',
    'Bump: wheel travel',
  ])
    expect(
      seen.some((one) => one.startsWith(name)),
      `${name} of ${seen.join('; ')}`,
    ).toBe(true);
  await page.keyboard.press('ArrowRight');
  expect(await motionField(page, 'Steer').inputValue()).toBe('1');
};

test('what draws the picture cannot be fetched: it says so, and the numbers are there', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce' });
  await page.route(/Picture-[^/]*\.js$/, (route) => route.abort());
  await page.reload();
  expect(await page.locator('.nopicture').innerText()).toMatch(/could not be fetched.*reload/s);
  await page.locator('tr[data-reading="camber"] td').first().waitFor();
  await page.unroute(/Picture-[^/]*\.js$/);
  await page.reload();
  expect(await pictureOf(page)).not.toBeNull();
  expect(await page.locator('.nopicture').count()).toBe(0);
});

test('without WebGL it says so, and everything else works: motion, adjusters, files, by mouse and by keys', async () => {
  const { page, complaints } = await openBench('car-23', { graphics: 'none' });
  expect(await page.locator('.nopicture').innerText()).toMatch(/No picture.*WebGL/s);
  await inTurn(page, {
    'the slider follows the mouse': sliderFollowsTheMouse,
    'roll gives each side its own numbers and column of differences': rollHasTwoColumns,
    'a number that is none, or out of range, stays in its field with the reason': refusedNumberStays,
    'an edit shows its difference; undo and redo by keys': editShowsItsDifference,
    'step buttons and arrows go by marks, sides come apart and together': stepsAndSides,
    'the part itself is turned by dragging it: one undo step': partIsDragged,
    'toe and ride height are held, say their next step and turn their part': toeAndHeightAreHeld,
    'a file with faults is refused with their places; what is open stays': faultyFileIsRefused,
    'the page itself never scrolls at 1280 × 720': pageNeverScrolls,
  });
  expect(complaints).toEqual([]);
});

test('dark as the system has it, light by choice; axe finds nothing on either, no text is under 12 px, and all is reached by keys', async () => {
  const { page } = await openBench('car-23', { colorScheme: 'dark' });
  const theme = () => page.evaluate(() => document.documentElement.dataset['theme']);
  const judged = async (): Promise<void> => {
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`)).toEqual([]);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('body *')]
        .filter((element) => [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
        .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < 12)
        .map((element) => element.outerHTML.slice(0, 100)),
    );
    expect(small).toEqual([]);
  };
  expect(await theme()).toBe('dark');
  const dark = await pictureOf(page);
  await judged();
  await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: 'Light' }).click();
  expect(await theme()).toBe('light');
  expect(await shareChanged(page, dark, await pictureOf(page))).toBeGreaterThan(SEEN);
  await judged();
  await everythingByKeyboard(page);
});
