import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { drawn, openBench, pictureOf, SEEN, shareChanged, type } from './bench';
import { carPath, jounce } from '../electron/command/jounce';
import { temporaryFolder } from '../electron/temporaryFolder';
import { openWindow } from './chromium';
import { choose, choosePoint, collisions, labelsOf, placeOfMark, show } from './viewMarks';

describe('what is shown', () => {
  test('corners, axle and whole car, every view, every overlay, on both axles', async () => {
    const { page, complaints } = await openBench();
    await page.getByLabel('Setup on the bench').selectOption('Trial');
    for (const axle of ['Front', 'Rear'] as const) {
      await choose(page, 'Axle', axle);
      await choose(page, 'Shown', 'Left');
      await choose(page, 'View', 'Corner');
      let before = await pictureOf(page);
      for (const scope of ['Right', 'Axle', 'Car']) {
        await choose(page, 'Shown', scope);
        const now = await pictureOf(page);
        expect(await shareChanged(page, before, now), `${axle} ${scope}`).toBeGreaterThan(SEEN);
        before = now;
      }
      expect((await labelsOf(page)).filter((text) => /^(front|rear) roll centre/.test(text))).toHaveLength(2);
      if (axle === 'Front') await show(page, /^Instant centres/, /^Names/, /^Wheel over/);
      for (const scope of ['Axle', 'Left']) {
        await choose(page, 'Shown', scope);
        const along = axle === 'Rear' || scope === 'Axle' ? 'Behind' : 'Front';
        for (const view of [along, 'Side', 'Top', 'Wheel', 'Axis', 'Corner']) {
          await choose(page, 'View', view);
          await drawn(page);
          expect(await collisions(page), `${axle} ${scope} ${view}`).toEqual([]);
        }
      }
      expect((await labelsOf(page)).some((text) => / mm further$/.test(text))).toBe(true);
      expect(await page.locator('.overlay .envelope').count()).toBeGreaterThan(2);
    }
    expect(complaints).toEqual([]);
  });

  test('in roll the axle view names both sides, the roll and the roll centre as the readings have them', async () => {
    const { page } = await openBench();
    await choose(page, 'Shown', 'Axle');
    await choose(page, 'View', 'Behind');
    await type(page.getByRole('spinbutton', { name: /^Roll/ }), '1.5');
    await drawn(page);
    expect(await collisions(page)).toEqual([]);
    const labels = await labelsOf(page);
    expect(labels).toContain('roll 1.50°, left side up');
    for (const side of ['Left, droop', 'Right, bump']) expect(labels.some((text) => text.startsWith(side))).toBe(true);
    const reading = await page.locator('tr[data-reading="rollCentreHeight"] td').first().innerText();
    const words = labels.find((text) => text.startsWith('roll centre'));
    const height = Number(words?.match(/roll centre ([\d.]+)/)?.[1]) * (words?.includes('below') ? -1 : 1);
    expect(height).toBeCloseTo(Number(reading.replace('−', '-')), 1);
  });
});

/** The head of the table and the picture's own word for the roll, in every frame about to be painted. */
const rollInFrames = (page: Page, count: number): Promise<readonly (readonly [string, string])[]> =>
  page.evaluate(async (frames) => {
    const seen: (readonly [string, string])[] = [];
    const probe = document.createElement('div');
    document.body.append(probe);
    const textOf = (selector: string, start: RegExp): string =>
      [...document.querySelectorAll(selector)].map(({ textContent }) => textContent ?? '').find((text) => start.test(text)) ?? '';
    // Sizes are told after every callback of the frame and before it is painted.
    await new Promise<void>((resolve) =>
      new ResizeObserver(() => {
        seen.push([textOf('.readingtable .at', /./), textOf('.overlay .tag', /^roll .*°/)]);
        if (seen.length > frames) return resolve();
        requestAnimationFrame(() => (probe.style.height = `${seen.length % 2}px`));
      }).observe(probe),
    );
    probe.remove();
    return seen;
  }, count);

test('while the car plays, table and picture are of one position in every painted frame', async () => {
  const { page } = await openBench('car-23', { reducedMotion: 'no-preference', viewport: { width: 1010, height: 560 } });
  await choose(page, 'Shown', 'Axle');
  await choose(page, 'View', 'Behind');
  await page.keyboard.press('Home');
  await drawn(page);
  await page.getByRole('button', { name: /^Played/ }).click();
  await page.getByRole('menuitemradio', { name: 'Roll', exact: true }).click();
  await page.getByRole('button', { name: 'Play roll' }).click();
  const frames = (await rollInFrames(page, 12)).filter(([, word]) => word !== '');
  const rollOf = (text: string): string => /roll [+−]?([\d.]+)°/.exec(text)?.[1] ?? text;
  expect(frames.filter(([head, word]) => rollOf(head) !== rollOf(word))).toEqual([]);
  expect(new Set(frames.map(([head]) => head)).size).toBeGreaterThan(3);
});

describe('a point in the view', () => {
  /** The screen place of a joint, where hovering names it. */
  const find = async (page: Page, name: string): Promise<readonly [number, number]> => {
    await choosePoint(page, name);
    const [x, y] = await placeOfMark(page, 'chosen');
    await page.getByRole('button', { name: `Let go of ${name}` }).click();
    await page.mouse.move(x, y);
    await page.locator('.viewport.overjoint').waitFor();
    await drawn(page);
    expect(await labelsOf(page)).toContain(name);
    return [x, y];
  };

  test('is asked about, dragged, undone in one step, given up with Escape, and put by numbers', async () => {
    const { page, complaints } = await openBench();
    await choose(page, 'View', 'Front');
    const [x, y] = await find(page, 'Strut foot');
    await page.mouse.click(x, y);
    const card = page.getByRole('group', { name: 'Chosen point: Strut foot, left' });
    await card.waitFor();
    const undo = page.getByRole('button', { name: /to undo|^Undo/ });
    const standing = await card.innerText();
    // Not asked yet: a drag turns the eye and moves nothing.
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 30, { steps: 3 });
    await page.mouse.up();
    expect(await card.innerText()).toBe(standing);
    await choose(page, 'View', 'Side');
    await choose(page, 'View', 'Front');
    await card.getByRole('button', { name: 'Move the point' }).click();
    await drawn(page);
    const height = card.getByRole('spinbutton', { name: /Z, up/ });
    const before = Number(await height.inputValue());
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x, y - 14, { steps: 3 });
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(Number(await height.inputValue())).toBe(before);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 5, y - 10, { steps: 3 });
    await page.keyboard.press('z');
    await page.mouse.move(x + 9, y - 14, { steps: 3 });
    await page.mouse.up();
    const after = Number(await height.inputValue());
    expect(after).toBeGreaterThan(before + 5);
    const across = Number((await card.getByRole('spinbutton', { name: /Y, left/ }).inputValue()).replace(',', ''));
    await page.keyboard.press('Control+z');
    expect(Number(await height.inputValue())).toBe(before);
    expect(Number((await card.getByRole('spinbutton', { name: /Y, left/ }).inputValue()).replace(',', ''))).toBeCloseTo(
      across,
      2,
    );
    // from above it is dragged in the plane that is seen: its height, which points at the eye, is no arm and does not change
    await choose(page, 'View', 'Top');
    const [px, py] = await placeOfMark(page, 'chosen');
    expect(await labelsOf(page)).not.toContain('Z');
    const along = card.getByRole('spinbutton', { name: /X, forward/ });
    const lengthwise = await along.inputValue();
    await page.mouse.move(px, py);
    await page.mouse.down();
    await page.mouse.move(px - 15, py + 10, { steps: 3 });
    await page.mouse.up();
    expect(await along.inputValue()).not.toBe(lengthwise);
    expect(Number(await height.inputValue())).toBe(before);
    await page.keyboard.press('Control+z');
    await type(height, String(before + 3));
    expect(await card.innerText()).not.toBe(standing);
    expect(await undo.count()).toBeGreaterThan(0);
    expect(complaints).toEqual([]);
  });

  test('its way over travel is kept as CSV, at both locks too, as the command line has it', async () => {
    const { page } = await openBench();
    await choose(page, 'View', 'Front');
    await choosePoint(page, 'Tie rod end');
    const card = page.getByRole('group', { name: 'Chosen point: Tie rod end, left' });
    const [kept] = await Promise.all([
      page.waitForEvent('download'),
      card.getByRole('button', { name: /^Save the path of Tie rod end/ }).click(),
    ]);
    expect(kept.suggestedFilename()).toBe('Check car 23 Baseline front left tie rod end path.csv');
    const [head, ...lines] = (await readFile(await kept.path(), 'utf8')).trimEnd().split('\r\n');
    expect(head).toMatch(/^axle,side,name,travelLeft \[mm\],.*x \[mm\]/);
    const rows = lines.map((line) => line.split(','));
    expect(new Set(rows.map((row) => row[5])).size).toBe(3);
    const folder = await temporaryFolder();
    const list = path.join(folder, 'list.csv');
    const places = rows.map((row) => `${row[3]},${row[4]},${row[5]}`);
    await writeFile(list, ['travelLeft,travelRight,rack', ...places].join('\n'));
    const asked = ['points', '--car', carPath(23), '--path', 'tieRodEnd', '--side', 'left', '--list', list, '--csv', '-'];
    expect((await jounce(asked)).stdout.trimEnd().split('\r\n')).toEqual([head, ...lines]);
  });

  test('that an adjuster moves turns it', async () => {
    const { page } = await openBench();
    await choose(page, 'View', 'Front');
    const [x, y] = await find(page, 'Strut top');
    await page.mouse.click(x, y);
    await page
      .getByRole('group', { name: 'Chosen point: Strut top, left' })
      .getByRole('button', { name: 'Plate across' })
      .click();
    await drawn(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x - 4, y, { steps: 4 });
    await page.mouse.up();
    const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
    expect(Number((await plate.inputValue()).replace('−', '-'))).not.toBe(0);
    await page.keyboard.press('Control+z');
    expect(await plate.inputValue()).toBe('0');
  });
});

describe('pictures to keep', () => {
  test('a PNG at print size with the words on it; drawings true to scale', async () => {
    const { page, complaints } = await openBench();
    await drawn(page);
    await page.getByRole('button', { name: /^Show \d/ }).click();
    const saved = async (name: string | RegExp): Promise<Buffer> => {
      const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()]);
      return readFile(await download.path());
    };
    const picture = await saved(/^Picture, PNG/);
    expect(picture.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(picture.readUInt32BE(16)).toBe(3000);
    expect(picture.length).toBeGreaterThan(100_000);
    expect((await saved('Drawing from behind, SVG')).toString('utf8')).toContain('track 1,5');
    expect((await saved('Drawing side, SVG')).toString('utf8')).toContain('trail along the car');
    expect(complaints).toEqual([]);
  });
});

describe('what the graphics driver holds', () => {
  const CARS = ['Chalkboard', 'Marram coupe', 'Saltmarsh hatch'] as const;

  /** Presses things one after the other as a hand would, each once what the one before it did is drawn. */
  const press = (page: Page, steps: readonly { readonly role: 'menuitem' | 'button'; readonly words: string }[]) =>
    page.evaluate(async (wanted) => {
      const canvas = document.querySelector('canvas');
      const frames = (): number => Number(canvas?.dataset['drawn'] ?? 0);
      const until = async (isSo: () => boolean): Promise<void> => {
        for (let wait = 0; !isSo(); wait += 1) {
          if (wait > 500) throw new Error('nothing came of it');
          await new Promise((resolve) => setTimeout(resolve, 10));
        }
      };
      for (const { role, words } of wanted) {
        const find = (): HTMLElement | undefined =>
          [...document.querySelectorAll<HTMLElement>(role === 'button' ? '.app button' : '[role="menuitem"]')].find(
            ({ innerText }) => innerText.trim() === words,
          );
        await until(() => find() !== undefined);
        const button = find();
        const before = frames();
        const isChosen = role === 'button' && button?.getAttribute('aria-pressed') === 'true';
        button?.click();
        if (words === 'File') continue;
        if (role === 'menuitem') await until(() => document.querySelector('h1')?.innerText === words);
        if (!isChosen) await until(() => frames() > before);
      }
    }, steps);
  const opening = (name: string) => [{ role: 'button', words: 'File' } as const, { role: 'menuitem', words: name } as const];
  const pressing = (words: string) => ({ role: 'button', words }) as const;

  const held = async (page: Page): Promise<readonly string[]> => {
    await drawn(page);
    return page.evaluate(() => {
      const { geometries = '', textures = '', programs = '' } = document.querySelector('canvas')?.dataset ?? {};
      return [geometries, textures, programs];
    });
  };

  test('is the same after fifty cars as after the first', async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce', viewport: { width: 1010, height: 480 } });
    await page.locator('tr[data-reading="camber"]').waitFor();
    await page.locator('canvas').waitFor();
    await drawn(page);
    const steps = (index: number) => [
      ...opening(CARS[index % CARS.length] ?? ''),
      ...(index % 5 === 0 ? [pressing('Rear')] : []),
      ...(index % 7 === 0 ? [pressing(index % 2 === 0 ? 'Car' : 'Left')] : []),
    ];
    // One corner first: what was once shown of a car stays with the driver until the car goes.
    const settle = [pressing('Front'), pressing('Left'), ...opening('Chalkboard'), ...opening('Saltmarsh hatch')];
    const round = (count: number) => Array.from({ length: count }, (_, index) => steps(index)).flat();
    // Once all round, so that what is shared by all cars is there.
    await press(page, [...round(8), ...settle]);
    const before = await held(page);
    const frames = () => page.evaluate(() => Number(document.querySelector('canvas')?.dataset['drawn']));
    const drawnBefore = await frames();
    await press(page, [...round(50), ...settle]);
    expect(await held(page)).toEqual(before);
    expect(await frames()).toBeGreaterThanOrEqual(drawnBefore + 50);
    expect(Number(before[0])).toBeGreaterThan(10);
    // The count is one that would tell: more of the car is more of it.
    await press(page, [pressing('Car')]);
    expect(Number((await held(page))[0])).toBeGreaterThan(Number(before[0]));
    expect(complaints).toEqual([]);
  });

  test('a context that is lost is said, and drawn again when it comes back', async () => {
    const { page } = await openBench();
    const before = await pictureOf(page);
    await page.evaluate(() => {
      const lose = document.querySelector('canvas')?.getContext('webgl2')?.getExtension('WEBGL_lose_context');
      lose?.loseContext();
      Object.assign(window, { giveBack: () => lose?.restoreContext() });
    });
    await page.getByText('the graphics driver let go of it').waitFor();
    await page.evaluate(() => (window as unknown as { giveBack: () => void }).giveBack());
    await page.getByText('the graphics driver let go of it').waitFor({ state: 'detached' });
    expect(await shareChanged(page, before, await pictureOf(page))).toBeLessThan(0.02);
  });
});

describe('lengths', () => {
  test('stand beside the readings, with a tape in the view, and go out as CSV', async () => {
    const { page, complaints } = await openBench();
    await choose(page, 'Right-hand column', 'Lengths');
    await page.locator('tr[data-length]').first().waitFor();
    const cells = (key: string) => page.locator(`tr[data-length="${key}"] td`).allInnerTexts();
    expect((await cells('rod.tieRod'))[0]).toMatch(/^\d{3}\.\d\d$/);
    await page.getByLabel('Setup on the bench').selectOption('Trial');
    expect((await cells('armLeg.armRear'))[2]).toMatch(/^[+−]\d/);
    await page.getByLabel('Tape from').selectOption({ label: 'Ball joint, left' });
    await page.getByLabel('Tape to').selectOption({ label: 'Ball joint, right' });
    const length = await page.locator('tr[data-tape="Length"] td').first().innerText();
    await choose(page, 'Shown', 'Axle');
    await drawn(page);
    expect(
      (await labelsOf(page)).some(
        (text) => text.startsWith(length.replace(',', '').slice(0, 5)) || text.startsWith(length.slice(0, 5)),
      ),
    ).toBe(true);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save lengths as CSV' }).click(),
    ]);
    const text = await readFile(await download.path(), 'utf8');
    expect(text).toMatch(/^part,left \[mm\],right \[mm\]/);
    expect(text.split('\r\n').length).toBeGreaterThan(5);
    expect(complaints).toEqual([]);
  });
});
