import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { expect, onTestFinished, test } from 'vitest';
import { drawn } from './bench';
import { openWindow } from './chromium';
import { field, seriousFaults, setField, step } from './pointsPage';
import { choosePoint, collisions, labelsOf, placeOfMark } from './viewMarks';

/** Where a point stands in the picture [px of the window]; nothing is chosen after. */
const placeOfPoint = async (page: Page, name: string): Promise<readonly [number, number]> => {
  await choosePoint(page, name);
  const place = await placeOfMark(page, 'chosen');
  await choosePoint(page, 'none chosen');
  return place;
};

test(
  'what an adjuster moves is picked in the view, and its direction aimed there; the part follows',
  { timeout: 180_000 },
  async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
    await page.locator('tr[data-reading="camber"]').waitFor();
    await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
    await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: 'Adjusters' }).click();
    await page.getByRole('button', { name: 'Add adjuster', exact: true }).click();
    const ball = await placeOfPoint(page, 'Tie rod end');

    // Each kind has its points or its rod to pick; a rod is picked by one of its ends.
    for (const [kind, label, picked] of [
      ['Slide', 'Point *', 'tieRodEnd'],
      ['Eccentric bolt', 'Point *', 'tieRodEnd'],
      ['Offset bushing', 'Point *', 'tieRodEnd'],
      ['Clamp eccentric', 'Turns about *', 'tieRodEnd'],
      ['Turnbuckle', 'Rod *', 'tieRod'],
    ] as const) {
      await page.getByRole('button', { name: new RegExp(`^${kind}`) }).click();
      await field(page, label).fill('');
      await field(page, label).press('Enter');
      await page.getByRole('button', { name: `${label.slice(0, -2)}: pick in the view` }).click();
      expect(await page.locator('.asked').innerText()).toContain('in the view');
      await page.mouse.click(...ball);
      await expect.poll(() => field(page, label).inputValue(), { message: kind }).toBe(picked);
      expect(await page.locator('.asked').count()).toBe(0);
    }
    // a perch moves the seat of the spring, which is no point
    await page.getByRole('button', { name: /^Perch/ }).click();
    expect(await page.getByRole('button', { name: /: pick in the view$/ }).count()).toBe(0);

    // Each kind is aimed by its own directions: the ring follows the hand, a letter holds it, and what was aimed first stays.
    for (const [kind, label, letter, held] of [
      ['Eccentric bolt', 'Slot', 'y', '0, 1, 0'],
      ['Offset bushing', 'Axis', 'x', '1, 0, 0'],
      ['Offset bushing', 'Twelve o’clock', 'z', '0, 0, 1'],
    ] as const) {
      if (label !== 'Twelve o’clock') {
        await page.getByRole('button', { name: new RegExp(`^${kind}`) }).click();
        await setField(page, 'Point *', 'tieRodEnd');
      }
      await page.getByRole('button', { name: `${label}: aim in the view` }).click();
      expect(await page.locator('.asked').innerText()).toContain(`${label}: drag the ring`);
      const [x, y] = await placeOfMark(page, 'armend');
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x - 45, y + 50, { steps: 3 });
      await expect.poll(() => field(page, `${label} *`).inputValue(), { message: label }).toMatch(/\d\.\d+, /);
      await page.keyboard.press(letter);
      await expect.poll(() => field(page, `${label} *`).inputValue(), { message: label }).toBe(held);
      await page.mouse.up();
      await page.getByRole('button', { name: `${label}: aim in the view` }).click();
      expect(await page.locator('.asked').count()).toBe(0);
    }
    expect(await field(page, 'Axis *').inputValue()).toBe('1, 0, 0');
    // with its offset given the range of the hole is drawn beside twelve, before anything else of it is
    await setField(page, 'Offset *', '6');
    await expect.poll(() => labelsOf(page)).toEqual(expect.arrayContaining(['+6 mm', '−6 mm']));
    // a turnbuckle has a rod to pick, and nothing to aim
    await page.getByRole('button', { name: /^Turnbuckle/ }).click();
    expect(await page.getByRole('button', { name: /: aim in the view$/ }).count()).toBe(0);
    await expect.poll(() => labelsOf(page)).not.toContain('+6 mm');

    // A slide: the same, and its range along the aim.
    await page.getByRole('button', { name: /^Slide/ }).click();
    await setField(page, 'Point *', 'tieRodEnd');
    await page.getByRole('button', { name: 'Along: aim in the view' }).click();
    const ring = await placeOfMark(page, 'armend');
    await page.mouse.move(...ring);
    await page.mouse.down();
    await page.mouse.move(ring[0] - 40, ring[1] + 60, { steps: 4 });
    await expect.poll(() => field(page, 'Along *').inputValue()).toMatch(/^[−\d., ]+$/);
    const aimed = await field(page, 'Along *').inputValue();
    expect(aimed).not.toBe('0, 0, 1');
    await page.keyboard.press('z');
    await expect.poll(() => field(page, 'Along *').inputValue()).toBe('0, 0, 1');
    await page.mouse.up();
    await setField(page, 'Range *', '-5, 5');
    await setField(page, 'Step *', '0.5');
    await expect.poll(() => labelsOf(page)).toEqual(expect.arrayContaining(['+5 mm', '−5 mm', 'X', 'Y', 'Z']));
    await setField(page, 'Name in the file *', 'endShims');
    await page.getByRole('slider', { name: /^Try it/ }).fill('4');
    expect(await page.getByRole('region', { name: 'Try it' }).innerText()).toContain('Bump steer');
    await page.getByRole('button', { name: 'Make it' }).click();
    await expect.poll(() => labelsOf(page)).not.toContain('+5 mm');
    await page.getByText('End shims', { exact: true }).click();

    // In the car a drag of the ring is one undo step, and one that is given up is none.
    const part = page.locator('details.part[open]');
    await part.getByRole('button', { name: 'Along: aim in the view' }).click();
    const [x, y] = await placeOfMark(page, 'armend');
    const drag = async (): Promise<void> => {
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x - 50, y + 20, { steps: 4 });
    };
    await drag();
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await part.getByLabel('Along *', { exact: true }).inputValue()).toBe('0, 0, 1');
    expect(await page.getByRole('button', { name: /^Undo: Add adjuster endShims/ }).count()).toBe(1);
    await drag();
    await page.mouse.up();
    expect(await part.getByLabel('Along *', { exact: true }).inputValue()).not.toBe('0, 0, 1');
    await page.getByRole('button', { name: /^Undo: Change along/ }).click();
    expect(await part.getByLabel('Along *', { exact: true }).inputValue()).toBe('0, 0, 1');
    expect(complaints).toEqual([]);
  },
);

test(
  'the pictures beside the table stay square to the car, and point and row are found by one another',
  { timeout: 120_000 },
  async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
    await page.locator('tr[data-reading="camber"]').waitFor();
    await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
    const view = page.getByRole('group', { name: /^Two pictures of the front axle/ });
    await view.waitFor();
    const box = await view.boundingBox();
    if (!box) throw new Error('the pictures are in sight');
    const row = page.locator('tr.chosen');
    const grid = (): Promise<readonly string[]> =>
      page
        .locator('.overlay .gridline')
        .evaluateAll((lines) => lines.map((line) => line.getAttribute('d') ?? '').filter((d) => d !== ''));
    const isSquare = async (): Promise<boolean> =>
      (await grid()).every((d) => {
        const [x1, y1, x2, y2] = d.split(/[ML ]/).filter(Boolean).map(Number);
        return x1 === x2 || y1 === y2;
      });
    await expect.poll(() => labelsOf(page)).toEqual(expect.arrayContaining(['rackEnd', '400', '−100']));
    const before = await grid();
    expect(await isSquare()).toBe(true);

    // choosing a row marks the point; a click on a point marks its row, in sight
    await page.setViewportSize({ width: 1280, height: 480 });
    await page.getByRole('button', { name: /^armFront/ }).click();
    await placeOfMark(page, 'chosen');
    const places = await page
      .locator('.overlay .joint')
      .evaluateAll((marks) =>
        marks.filter((mark) => mark.getAttribute('d')).map((mark) => mark.getBoundingClientRect().toJSON()),
      );
    const hub = places[9] as DOMRect; // the tenth of the file: wheelCentre, in the first picture
    await page.mouse.click(hub.x + hub.width / 2, hub.y + hub.height / 2);
    await expect.poll(() => row.locator('b').innerText()).toBe('wheelCentre');
    await expect
      .poll(() =>
        row.evaluate(
          (one) => one.getBoundingClientRect().bottom <= (one.closest('.scroll')?.getBoundingClientRect().bottom ?? 0) + 1,
        ),
      )
      .toBe(true);

    // the chosen point is dragged in the picture's plane, and nothing of X is in it; Escape gives it up
    const cells = () =>
      row.locator('input').evaluateAll((all) => all.map((one) => Number((one as HTMLInputElement).value.replace('−', '-'))));
    const [x0 = 0, y0 = 0, z0 = 0] = await cells();
    const drag = async (): Promise<void> => {
      const [x, y] = await placeOfMark(page, 'chosen');
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + 12, y - 6, { steps: 3 });
    };
    await drag();
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await cells()).toEqual([x0, y0, z0]);
    await drag();
    await page.mouse.up();
    const [x1 = 0, y1 = 0, z1 = 0] = await cells();
    expect(Math.abs(x1 - x0)).toBeLessThan(0.6); // by the camber that the wheel stands with
    expect(y1 - y0).toBeGreaterThan(5);
    expect(z1 - z0).toBeGreaterThan(2);
    const undo = page.getByRole('button', { name: /^Undo: Move wheel centre/ });
    await undo.click();
    expect(await cells()).toEqual([x0, y0, z0]);

    // a point that is not chosen goes with the hand too, and is chosen by it
    const [hubX, hubY] = await placeOfMark(page, 'chosen');
    await page.getByRole('button', { name: /^armFront/ }).click();
    await expect.poll(() => row.locator('b').innerText()).toBe('armFront');
    await page.mouse.move(hubX, hubY);
    await page.mouse.down();
    await page.mouse.move(hubX + 12, hubY - 6, { steps: 3 });
    await page.mouse.up();
    await expect.poll(() => row.locator('b').innerText()).toBe('wheelCentre');
    expect((await cells())[1]).toBeGreaterThan(y0 + 5);
    await undo.click();
    expect(await cells()).toEqual([x0, y0, z0]);

    // a drag of the picture, arrows and the wheel move it and never turn it; 0 and Fit bring all of it back
    await page.setViewportSize({ width: 1280, height: 720 });
    await page.getByRole('button', { name: 'Fit' }).click();
    await expect.poll(grid).toEqual(before);
    const [x, y] = [box.x + 60, box.y + box.height - 60];
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 90, y - 120, { steps: 4 });
    await page.mouse.up();
    await page.mouse.wheel(0, -200);
    await expect.poll(grid).not.toEqual(before);
    expect(await isSquare()).toBe(true);
    await view.focus();
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('+');
    await drawn(page);
    expect(await isSquare()).toBe(true);
    await page.keyboard.press('0');
    await expect.poll(grid).toEqual(before);
    expect(await collisions(page)).toEqual([]);
    expect(complaints).toEqual([]);
  },
);

test('no car could be opened: the page begins a new one', { timeout: 120_000 }, async () => {
  const samplesFolder = await mkdtemp(path.join(tmpdir(), 'jounce-none-'));
  onTestFinished(() => rm(samplesFolder, { recursive: true, force: true }));
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', served: { samplesFolder } });
  const refused = page.getByText('Open a car file of your own');
  await refused.first().waitFor();
  await page.keyboard.press('Escape');
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
  const newCar = page.getByRole('region', { name: 'New car' });
  expect(await newCar.getByRole('button', { name: 'Cancel' }).count()).toBe(0);
  expect(await seriousFaults(page)).toEqual([]);
  await newCar.getByRole('button', { name: 'Next: points' }).click();
  await page.getByRole('heading', { name: 'New car' }).waitFor();
  expect(await page.getByLabel('armFront, X fwd, left, mm').inputValue()).toBe('15.00');
  for (const theme of ['Dark', 'Light'] as const) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: theme }).click();
    for (const name of ['Points', 'Wheel and body', 'Spring, damper, bar', 'Adjusters', 'Limits', 'Layout']) {
      await step(page, name).click();
      expect(await seriousFaults(page), `${theme} ${name}`).toEqual([]);
    }
  }
  expect(complaints).toEqual([]);
});

test('a new car on empty points: what is missing is named, and it is a car when nothing is', { timeout: 120_000 }, async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  // from the file menu, in a window that has not shown the page yet
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('menuitem', { name: /^New car/ }).click();
  const newCar = page.getByRole('region', { name: 'New car' });
  await newCar.getByLabel('Name', { exact: true }).fill('Fen saloon');
  await newCar.getByRole('region', { name: 'Rear axle' }).getByRole('button', { name: 'No such axle' }).click();
  await newCar.getByRole('radio', { name: /^Empty points/ }).check();
  await newCar.getByRole('button', { name: 'Next: points' }).click();
  const given = page.getByRole('region', { name: 'Points of the new car' });
  const cell = (name: string) => given.getByLabel(name, { exact: true });
  expect(
    await given.locator('input').evaluateAll((all) => all.filter((one) => (one as HTMLInputElement).value !== '').length),
  ).toBe(0);
  await given.getByRole('button', { name: 'Open the car' }).click();
  // what is missing is listed once, in words of the page
  expect(await given.getByRole('alert').innerText()).toContain('11 things are missing');
  expect(await given.innerText()).not.toContain('found nothing');
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toBe('armFront, X fwd, front, mm');
  for (const theme of ['Dark', 'Light'] as const) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: theme }).click();
    expect(await seriousFaults(page), theme).toEqual([]);
  }
  const points = {
    armFront: [15, 360, 212],
    armRear: [-290, 370, 214],
    ballJoint: [8, 724, 195],
    strutTop: [-38, 577, 830],
    strutFoot: [-2, 634, 400],
    rackEnd: [-140, 340, 257],
    tieRodEnd: [-124, 697, 246],
    wheelCentre: [0, 776, 310],
  };
  const give = async (name: string, text: string): Promise<void> => {
    await cell(name).fill(text);
    await cell(name).press('Tab');
  };
  for (const [name, at] of Object.entries(points))
    for (const [index, axis] of ['X fwd', 'Y left', 'Z up'].entries())
      await give(`${name}, ${axis}, front, mm`, String(at[index]));
  // put aside for the car that is open, and gone on with
  await given.getByRole('button', { name: 'Later' }).click();
  await page.getByRole('button', { name: 'New car' }).click();
  expect(await newCar.innerText()).toContain('Fen saloon is unfinished: 8 of 8 points given');
  await newCar.getByRole('button', { name: 'Next: points' }).click();
  expect(await given.getByRole('status').innerText()).toContain('3 things missing');
  await give('camber, front, °', 'x');
  expect(await given.getByRole('alert').innerText()).toContain('Not a number');
  await give('camber, front, °', '-0.5');
  await give('toe, front, °', '0.1');
  await given.getByRole('button', { name: 'Open the car' }).click();
  expect(await given.getByRole('alert').innerText()).toContain('1 thing is missing');
  await give('loaded radius, front, mm', '310');
  await given.getByRole('button', { name: 'Open the car' }).click();
  await page.getByRole('heading', { level: 1, name: 'Fen saloon' }).waitFor();
  expect(await step(page, 'Points').innerText()).toContain('8 measured');
  expect(await page.getByRole('img', { name: 'not saved yet' }).count()).toBe(1);
  expect(await page.getByLabel('ballJoint, Y left, left, mm').inputValue()).toBe('724.00');
  expect(complaints).toEqual([]);
});
