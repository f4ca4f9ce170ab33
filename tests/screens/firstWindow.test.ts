import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { cellsOf, motionField, openBench, pictureOf, SEEN, shareChanged, type, UNSEEN } from './bench';
import { openWindow } from './chromium';

test('opens on a sample with its picture, its numbers and the cautions', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  expect(await page.locator('h1').innerText()).not.toBe('No car open');
  expect(await page.locator('.cautions').innerText()).toMatch(
    /Rigid links, no compliance.*wheel-centre height.*service data.*rules.*engineer/s,
  );
  await pictureOf(page);
  expect(await page.locator('.overlay .tag').allTextContents()).toEqual(
    expect.arrayContaining([expect.stringContaining('steering axis')]),
  );
  expect(await page.getByRole('navigation').getByRole('link').allInnerTexts()).toEqual(['Bench', 'Points']);
  expect(complaints).toEqual([]);
});

test('the car moves by itself at the first start, until the first touch', async () => {
  const { page } = await openWindow();
  await page.locator('tr[data-reading="camber"]').waitFor();
  const bump = motionField(page, 'Bump');
  await expect.poll(() => bump.inputValue(), { timeout: 15_000 }).not.toBe('0');
  await page.keyboard.press('Shift');
  await page.waitForTimeout(300);
  const stopped = await bump.inputValue();
  await page.waitForTimeout(700);
  expect(await bump.inputValue()).toBe(stopped);
});

describe('motion', () => {
  test('a bump changes readings and picture; Home puts both back', async () => {
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
  });

  test('the slider follows the mouse', async () => {
    const { page } = await openBench();
    const box = await page.getByRole('slider', { name: /^Steer/ }).boundingBox();
    if (!box) throw new Error('the steer rule is there');
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width * 0.75, box.y + box.height / 2, { steps: 4 });
    await page.mouse.up();
    expect(Number(await motionField(page, 'Steer').inputValue())).toBeGreaterThan(15);
    expect(Number((await cellsOf(page, 'steerAngle'))[0]?.replace('−', '-'))).not.toBeCloseTo(0, 1);
  });

  test('roll gives each side its own numbers and column of differences', async () => {
    const { page } = await openBench();
    await page.getByLabel('Setup on the bench').selectOption('Trial');
    await type(motionField(page, 'Roll'), '1.5');
    const [left, right, ...changes] = await cellsOf(page, 'camber');
    expect(left).not.toBe(right);
    expect(changes).toHaveLength(2);
  });

  test('a number that is none, or out of range, stays in its field with the reason', async () => {
    const { page } = await openBench();
    const bump = motionField(page, 'Bump');
    await type(bump, 'ten');
    expect(await bump.inputValue()).toBe('ten');
    expect(await page.getByRole('alert').innerText()).toContain('Not a number');
    await type(bump, '999');
    expect(await page.getByRole('alert').innerText()).toContain('Out of range');
    await bump.press('Escape');
    expect(await bump.inputValue()).toBe('0');
  });
});

describe('adjusters', () => {
  test('an edit shows its difference; undo and redo by keys', async () => {
    const { page } = await openBench();
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
  });

  test('step buttons and arrows go by marks, sides come apart and together', async () => {
    const { page } = await openBench();
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
  });

  test('the part itself is turned by dragging it: one undo step', async () => {
    const { page } = await openBench();
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
  });

  test('set toe turns its adjuster, whose field then only tells', async () => {
    const { page } = await openBench();
    await type(page.getByRole('spinbutton', { name: /^Set toe/ }), '0.1');
    expect((await cellsOf(page, 'toe')).slice(0, 2)).toEqual(['0.100', '0.100']);
    const rod = page.getByRole('spinbutton', { name: /^Tie rod, left/ });
    expect(await rod.getAttribute('aria-readonly')).toBe('true');
    expect(Number((await rod.inputValue()).replace('−', '-'))).not.toBe(0);
  });
});

test('the rear axle: its own adjusters, no steer, readings that say why they are missing', async () => {
  const { page } = await openBench();
  const front = await pictureOf(page);
  await page.getByRole('group', { name: 'Axle' }).getByRole('button', { name: 'Rear' }).click();
  expect(await page.getByRole('group', { name: 'Camber bolt, in hand' }).count()).toBe(1);
  expect(await page.getByRole('group', { name: 'Motion' }).innerText()).toContain('this axle is not steered');
  expect(await cellsOf(page, 'casterBySwing')).toEqual([expect.stringContaining('not steered')]);
  expect(await page.locator('.cautions').innerText()).toContain('sideways spring is not modelled');
  expect(await shareChanged(page, front, await pictureOf(page))).toBeGreaterThan(SEEN);
});

test('a position that cannot be reached says why and by how much; picture and numbers stay', async () => {
  const { page } = await openBench();
  await page.setInputFiles('input[type=file]', {
    name: 'far.jounce.json',
    mimeType: 'application/json',
    buffer: Buffer.from(await withTravel(page, 400)),
  });
  await expect.poll(() => page.getByRole('slider', { name: /^Bump/ }).getAttribute('max')).toBe('400');
  await type(motionField(page, 'Bump'), '60');
  const [good, numbers] = [await pictureOf(page), await cellsOf(page, 'camber')];
  await type(motionField(page, 'Bump'), '390');
  const banner = page.getByRole('region', { name: 'Readings' }).getByRole('alert');
  expect(await banner.innerText()).toMatch(/cannot reach at bump \+390\.0 mm.*[\d.]+ mm are missing.*stay at the last position/s);
  expect(await motionField(page, 'Bump').inputValue()).toBe('390');
  expect(await cellsOf(page, 'camber')).toEqual(numbers);
  expect(await shareChanged(page, good, await pictureOf(page))).toBeLessThan(UNSEEN);
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

test('a file with faults is refused with their places; what is open stays', async () => {
  const { page } = await openBench();
  await page.setInputFiles('input[type=file]', {
    name: 'broken.jounce.json',
    mimeType: 'application/json',
    buffer: Buffer.from('{ "format": "jounce-car", "version": 1 }'),
  });
  const dialog = page.getByRole('dialog');
  expect(await dialog.innerText()).toMatch(/Not opened: \d+ faults? in broken\.jounce\.json.*name/s);
  await page.keyboard.press('Escape');
  expect(await page.locator('h1').innerText()).toBe('Check car 23');
});

describe('look and access', () => {
  test('light, dark, and as the system has it', async () => {
    const { page } = await openBench('car-23', { colorScheme: 'dark' });
    const theme = () => page.evaluate(() => document.documentElement.dataset['theme']);
    expect(await theme()).toBe('dark');
    const dark = await pictureOf(page);
    await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: 'Light' }).click();
    expect(await theme()).toBe('light');
    expect(await shareChanged(page, dark, await pictureOf(page))).toBeGreaterThan(SEEN);
  });

  test.each(['light', 'dark'] as const)('axe finds nothing on the %s theme, and no text is under 12 px', async (colorScheme) => {
    const { page } = await openBench('car-23', { colorScheme });
    await pictureOf(page);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`)).toEqual([]);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll('body *')]
        .filter((element) => [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
        .filter((element) => Number.parseFloat(getComputedStyle(element).fontSize) < 12)
        .map((element) => element.outerHTML.slice(0, 100)),
    );
    expect(small).toEqual([]);
  });

  test('everything by keyboard, with the focus in sight', async () => {
    const { page } = await openBench();
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
      'Bump: wheel travel',
    ])
      expect(
        seen.some((one) => one.startsWith(name)),
        `${name} of ${seen.join('; ')}`,
      ).toBe(true);
    await page.keyboard.press('ArrowRight');
    expect(await motionField(page, 'Steer').inputValue()).toBe('1');
  });

  test('fits 1280 × 720: the page itself never scrolls', async () => {
    const { page } = await openBench();
    const overflow = await page.evaluate(() => {
      const { scrollWidth, scrollHeight, clientWidth, clientHeight } = document.documentElement;
      return [scrollWidth - clientWidth, scrollHeight - clientHeight];
    });
    expect(overflow).toEqual([0, 0]);
  });
});

describe('the view', () => {
  test('has named views, turns with the mouse and with keys', async () => {
    const { page } = await openBench();
    const corner = await pictureOf(page);
    const pictures = [corner];
    for (const name of ['Front', 'Side', 'Top', 'Corner']) {
      await page.getByRole('group', { name: 'View', exact: true }).getByRole('button', { name }).click();
      pictures.push(await pictureOf(page));
    }
    const [, ...others] = pictures;
    for (const [index, other] of others.entries()) {
      const share = await shareChanged(page, corner, other);
      if (index === 3) expect(share).toBeLessThan(UNSEEN);
      else expect(share).toBeGreaterThan(SEEN);
    }
    await page.getByRole('group', { name: /^View of the front axle/ }).focus();
    await page.keyboard.press('ArrowLeft');
    expect(await shareChanged(page, corner, await pictureOf(page))).toBeGreaterThan(SEEN);
  });

  test('draws only when something changed', async () => {
    const { page } = await openBench();
    await pictureOf(page);
    const drawn = () => page.evaluate(() => document.querySelector('canvas')?.dataset['drawn']);
    // what comes late, such as a font, may ask for one more picture; then it has to be quiet
    let before = await drawn();
    const isQuiet = async (): Promise<boolean> => {
      await page.waitForTimeout(800);
      const last = before;
      before = await drawn();
      return before === last;
    };
    await expect.poll(isQuiet, { timeout: 6000, interval: 1 }).toBe(true);
    expect(await isQuiet()).toBe(true);
  });

  test('without WebGL says so, and everything else works', async () => {
    const { page, complaints } = await openBench('car-23', { graphics: 'none' });
    expect(await page.locator('.nopicture').innerText()).toMatch(/No picture.*WebGL/s);
    const standing = await cellsOf(page, 'camber');
    await type(motionField(page, 'Bump'), '20');
    expect(await cellsOf(page, 'camber')).not.toEqual(standing);
    await type(page.getByRole('spinbutton', { name: /^Plate across, left and right/ }), '-5');
    expect((await cellsOf(page, 'camber'))[2]).not.toBe('0.00');
    expect(complaints).toEqual([]);
  });
});
