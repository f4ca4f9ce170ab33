import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { drawn, openBench, pictureOf, SEEN, shareChanged } from './bench';
import { choose, choosePoint, collisions, inShowList, labelsOf, placeOfMark, show } from './viewMarks';

/** Small, yet with all panels beside the view: less to draw. */
const SMALL = { viewport: { width: 1010, height: 560 } };

/** X, Y, Z of the chosen point now [mm], as its card has them. */
const chosenNow = async (page: Page): Promise<readonly number[]> => {
  const words = await page.locator('.pointcard .now').innerText();
  return [...words.matchAll(/[XYZ] (−?[\d,.]+)/g)].map(([, number]) =>
    Number((number ?? '').replace('−', '-').replaceAll(',', '')),
  );
};

describe('aimed views', () => {
  test('show lengths true: right and up are the car’s axes, at one scale', async () => {
    const { page } = await openBench('car-23', SMALL);
    const seen = async (name: string) => {
      await choosePoint(page, name);
      const at = await placeOfMark(page, 'chosen');
      return { at, place: await chosenNow(page) };
    };
    // to the right and up the screen: which axis of the car, and which way along it
    const views = [
      { view: 'Front', right: [1, 1], up: [2, 1] },
      { view: 'Side', right: [0, -1], up: [2, 1] },
      { view: 'Top', right: [1, -1], up: [0, 1] },
    ] as const;
    for (const { view, right, up } of views) {
      await choose(page, 'View', view);
      const [ball, end, top] = [await seen('Ball joint'), await seen('Tie rod end'), await seen('Strut top')];
      const scales: number[] = [];
      for (const other of [end, top]) {
        const moved = other.place.map((value, axis) => value - (ball.place[axis] ?? NaN));
        const [x, y] = [other.at[0] - ball.at[0], ball.at[1] - other.at[1]];
        const [wide, high] = [(moved[right[0]] ?? NaN) * right[1], (moved[up[0]] ?? NaN) * up[1]];
        const scale = (x * wide + y * high) / (wide * wide + high * high);
        scales.push(scale);
        // half a pixel of rounding; looking down, the eye leans by half a degree
        expect(Math.abs(x - scale * wide), `${view} across`).toBeLessThan(2.5);
        expect(Math.abs(y - scale * high), `${view} up`).toBeLessThan(2.5);
      }
      expect(scales[0]).toBeGreaterThan(0.05);
      expect((scales[0] ?? NaN) / (scales[1] ?? NaN)).toBeCloseTo(1, 1);
    }
  });

  test('from the wheel its outline is round; along the steering axis that is a point', async () => {
    const { page } = await openBench('car-23', SMALL);
    const boxOf = (name: string) =>
      page.evaluate((className) => {
        const box = document.querySelector(`.overlay path.${className}[d*="M"]`)?.getBoundingClientRect();
        return [box?.width ?? NaN, box?.height ?? NaN] as const;
      }, name);
    const longest = async (): Promise<number> => Math.max(...(await boxOf('axis')));
    await choose(page, 'View', 'Wheel');
    await drawn(page);
    const [wide, high] = await boxOf('outline');
    expect(wide).toBeGreaterThan(60);
    expect(wide / high).toBeCloseTo(1, 1);
    expect(await longest()).toBeGreaterThan(60);
    await choose(page, 'View', 'Axis');
    await drawn(page);
    expect(await longest()).toBeLessThan(3);
  });
});

describe('on the way to another view', () => {
  /** The places of the chosen point on the screen, frame by frame, from pressing a view until all is still. */
  const wayTo = (page: Page, view: string): Promise<number> =>
    page.evaluate(async (name) => {
      const at = (): string =>
        [...document.querySelectorAll('.overlay path.chosen')].map((path) => path.getAttribute('transform')).join();
      const seen = new Set([at()]);
      const group = document.querySelector('.viewchoice');
      const button = [...(group?.querySelectorAll('button') ?? [])].find(({ innerText }) => innerText === name);
      button?.click();
      for (const start = performance.now(); performance.now() - start < 600;) {
        await new Promise((resolve) => requestAnimationFrame(resolve));
        seen.add(at());
      }
      return seen.size;
    }, view);

  test('the eye travels, and with reduced motion it is there at once', async () => {
    const { page } = await openBench('car-23', SMALL);
    await choosePoint(page, 'Strut top');
    await placeOfMark(page, 'chosen');
    // where it was and where it is
    expect(await wayTo(page, 'Side')).toBe(2);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    // A machine that is busy may draw no frame on the way: it has three ways to show one.
    const places: number[] = [];
    for (const view of ['Front', 'Top', 'Side']) places.push(await wayTo(page, view));
    expect(Math.max(...places)).toBeGreaterThan(2);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    expect(await wayTo(page, 'Corner')).toBe(2);
  });
});

describe('the window changes its size', () => {
  test('a view that was turned keeps what it shows; one that was not is framed anew', async () => {
    const { page } = await openBench('car-23', SMALL);
    await choosePoint(page, 'Ball joint');
    const mid = async (): Promise<readonly number[]> => {
      const [x, y] = await placeOfMark(page, 'chosen');
      const box = await page.locator('.viewport').boundingBox();
      if (!box) throw new Error('the view is there');
      return [(x - box.x - box.width / 2) / box.height, (y - box.y) / box.height];
    };
    const resize = async (width: number, height: number): Promise<void> => {
      await page.setViewportSize({ width, height });
      await drawn(page);
    };
    // keys and a new size are followed a moment later
    const settled = async (): Promise<readonly number[]> => {
      for (let before = await mid(); ;) {
        await page.waitForTimeout(200);
        const now = await mid();
        if (now.join() === before.join()) return now;
        before = now;
      }
    };
    const standsAt = (place: readonly number[]): Promise<void> =>
      expect
        .poll(async () => Math.max(...(await mid()).map((value, axis) => Math.abs(value - (place[axis] ?? NaN)))))
        .toBeLessThan(0.005);
    // the list that was closed hands the focus back a moment later
    await settled();
    const before = await mid();
    for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowUp', '+', '+']) await page.locator('.viewport').press(key);
    const turned = await settled();
    expect(turned.join(), 'the keys turned the view').not.toBe(before.join());
    await resize(1400, 560);
    // A wider view: as high as before, so the point stands where it stood in its height, counted from the middle.
    await standsAt(turned);
    await resize(SMALL.viewport.width, SMALL.viewport.height);
    await standsAt(turned);
    // A named view lets go of it.
    await choose(page, 'View', 'Side');
    const framed = await settled();
    await resize(1400, 860);
    await resize(SMALL.viewport.width, SMALL.viewport.height);
    await standsAt(framed);
    const inSight = (await mid())[1] ?? NaN;
    expect(inSight > 0 && inSight < 1).toBe(true);
  });
});

test('how the car is looked at outlives the window', async () => {
  const { page, complaints } = await openBench('car-23', SMALL);
  await choose(page, 'Shown', 'Axle');
  await choose(page, 'View', 'Side');
  await inShowList(page, async () => {
    await page.getByRole('checkbox', { name: /^Compared setup/ }).click();
    await page.getByRole('checkbox', { name: /^Names of all points/ }).click();
    await page.getByRole('checkbox', { name: /^Parallel/ }).click();
  });
  await page.reload();
  await page.locator('canvas').waitFor();
  await choose(page, 'View', 'Side');
  expect(await page.getByRole('group', { name: 'Shown', exact: true }).getByRole('button', { pressed: true }).innerText()).toBe(
    'Axle',
  );
  await page.getByRole('button', { name: /^Show 3/ }).click();
  const isOn = (name: RegExp) => page.getByRole('checkbox', { name }).isChecked();
  expect(await isOn(/^Compared setup/)).toBe(false);
  expect(await isOn(/^Names of all points/)).toBe(true);
  expect(await isOn(/^Parallel/)).toBe(false);
  expect(await isOn(/^Steering axis/)).toBe(true);
  expect(complaints).toEqual([]);
});

describe('the theme', () => {
  const [COLUMNS, ROWS] = [8, 6];
  /** Mean colours of the parts of a picture, row by row. */
  const meansOf = (page: Page, picture: Buffer): Promise<readonly (readonly number[])[]> =>
    page.evaluate(
      async ({ source, columns, rows }) => {
        const image = new Image();
        image.src = `data:image/png;base64,${source}`;
        await image.decode();
        const canvas = new OffscreenCanvas(image.width, image.height);
        const pen = canvas.getContext('2d');
        if (!pen) throw new Error('can draw');
        pen.drawImage(image, 0, 0);
        const [wide, high] = [Math.floor(image.width / columns), Math.floor(image.height / rows)];
        return Array.from({ length: columns * rows }, (_, part) => {
          const { data } = pen.getImageData((part % columns) * wide, Math.floor(part / columns) * high, wide, high);
          return [0, 1, 2].map((channel) => {
            let sum = 0;
            for (let at = channel; at < data.length; at += 4) sum += data[at] ?? 0;
            return sum / (data.length / 4);
          });
        });
      },
      { source: picture.toString('base64'), columns: COLUMNS, rows: ROWS },
    );

  test('that is chosen in a running window looks in every part as if the window had begun in it', async () => {
    const switched = await openBench('car-23', { colorScheme: 'dark' });
    const press = (name: string) => switched.page.getByRole('group', { name: 'Theme' }).getByRole('button', { name }).click();
    const dark = await meansOf(switched.page, await pictureOf(switched.page));
    await press('Light');
    const light = await meansOf(switched.page, await pictureOf(switched.page));
    await press('Dark');
    const darkAgain = await meansOf(switched.page, await pictureOf(switched.page));
    const { page } = await openBench('car-23', { colorScheme: 'light' });
    const fresh = await meansOf(page, await pictureOf(page));
    const near = (a: typeof dark, b: typeof dark): number =>
      Math.max(...a.flatMap((part, index) => part.map((value, channel) => Math.abs(value - (b[index]?.[channel] ?? NaN)))));
    expect(near(light, fresh)).toBeLessThan(2);
    expect(near(darkAgain, dark)).toBeLessThan(2);
    // Background above and ground below are of the one theme or the other, never of both.
    for (const part of [COLUMNS + 6, COLUMNS * 4 + 7, COLUMNS * (ROWS - 1)]) {
      const [l, d] = [light[part]?.[1] ?? NaN, dark[part]?.[1] ?? NaN];
      expect(l - d, `part ${part}`).toBeGreaterThan(60);
    }
  });
});

describe('a small window, or 200 % of a small screen', () => {
  /** What leaves the view, and pairs of tools that lie on one another. */
  const crowded = (page: Page): Promise<readonly string[]> =>
    page.evaluate(() => {
      const view = document.querySelector('.viewport')?.getBoundingClientRect();
      const tools = [...document.querySelectorAll<HTMLElement>('[data-over-view]')]
        .flatMap((tool) => (tool.matches('.showplace') ? [...tool.querySelectorAll<HTMLElement>('.button')] : [tool]))
        .map((tool) => ({ words: tool.innerText.replaceAll('\n', ' '), box: tool.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && box.height > 0);
      const meet = (a: DOMRect, b: DOMRect): boolean =>
        a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
      const leaves = (box: DOMRect): boolean =>
        !view || box.left < view.left || box.right > view.right || box.top < view.top || box.bottom > view.bottom;
      return [
        ...(tools.length < 3 ? ['the tools are not there'] : []),
        ...tools.filter(({ box }) => leaves(box)).map(({ words }) => `${words} leaves the view`),
        ...tools.flatMap((tool, index) =>
          tools
            .slice(index + 1)
            .filter((other) => meet(tool.box, other.box))
            .map((other) => `${tool.words} on ${other.words}`),
        ),
      ];
    });

  test('tools stand clear of one another and of the words, and stay in the view', async () => {
    const { page } = await openBench('car-23', { viewport: { width: 640, height: 360 } });
    for (const [width, height] of [
      [640, 360],
      [960, 540],
      [1010, 560],
      [1140, 640],
    ] as const) {
      await page.setViewportSize({ width, height });
      for (const scope of ['Axle', 'Car', 'Left']) {
        await choose(page, 'Shown', scope);
        await drawn(page);
        expect(await crowded(page), `${scope} in ${width} × ${height}`).toEqual([]);
        expect(await collisions(page), `${scope} in ${width} × ${height}`).toEqual([]);
      }
    }
  });

  test('every tool works in it', async () => {
    const { page } = await openBench('car-23', { viewport: { width: 640, height: 360 } });
    const before = await pictureOf(page);
    expect(await labelsOf(page)).toContain('steering axis');
    await show(page, /^Steering axis/);
    await drawn(page);
    expect(await labelsOf(page)).not.toContain('steering axis');
    await choose(page, 'View', 'Top');
    expect(await shareChanged(page, before, await pictureOf(page))).toBeGreaterThan(SEEN);
  });
});
