import { expect, test } from 'vitest';
import { motionField, openBench, type } from './bench';
import { openWindow } from './chromium';

test('undo belongs to the text while it is typed, to the car once it is taken; a refusal is in sight', async () => {
  const { page } = await openBench();
  const plate = page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
  await type(plate, '-5');
  await plate.press('End');
  await plate.pressSequentially('5');
  await page.keyboard.press('Control+z');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 1');
  await plate.press('Escape');
  await page.keyboard.press('Control+z');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Baseline');

  const height = page.getByRole('spinbutton', { name: /^Ride height/ });
  await type(height, '-500');
  const reason = await page.getByRole('alert').boundingBox();
  expect(reason && reason.y >= 0 && reason.y + reason.height <= 720).toBe(true);
  await type(height, '5 kg');
  expect(await page.getByRole('alert').innerText()).toMatch(/kg is no unit here: mm or in/);
});

test('640 × 360: nothing runs off, one panel at a time, the motion strip stays', async () => {
  const { page } = await openBench('car-23', { viewport: { width: 640, height: 360 } });
  const panels = page.getByRole('group', { name: 'Panel' });
  for (const [label, panel] of [
    ['Readings', 'Readings'],
    ['All adjusters', 'Adjusters'],
  ] as const) {
    await panels.getByRole('button', { name: label }).click();
    expect(await page.getByRole('region', { name: panel, exact: true }).isVisible()).toBe(true);
  }
  expect(await page.getByRole('region', { name: 'Readings', exact: true }).isVisible()).toBe(false);
  await type(motionField(page, 'Bump'), '10');
  const off = await page.evaluate(() =>
    [...document.querySelectorAll('header *')]
      .filter((element) => element.getBoundingClientRect().right > window.innerWidth + 1)
      .map(({ outerHTML }) => outerHTML.slice(0, 80)),
  );
  expect(off).toEqual([]);

  // the tools of the view are all in sight, and the wheels' figures stand clear of them; after a look at fit-up too
  await page.getByRole('link', { name: 'Fit-up' }).click();
  await page.locator('link[rel="stylesheet"][href*="FitUpPage"]').waitFor({ state: 'attached' });
  await page.getByRole('link', { name: 'Bench' }).click();
  await panels.getByRole('button', { name: 'View' }).click();
  for (const name of ['Corner', 'Wheel', 'Axis', 'Left', 'Car'])
    await page
      .getByRole('group', { name: /^(View|Shown)$/ })
      .getByRole('button', { name, exact: true })
      .click({ trial: true });
  const [figures, tools] = [await page.locator('.picker').boundingBox(), await page.locator('.scopetools').boundingBox()];
  expect(figures && tools && figures.x + figures.width <= tools.x).toBe(true);
});

test('from 920 px the header is one row in which nothing touches, and every wheel is picked beside two columns too', async () => {
  const { page } = await openBench('car-23', { graphics: 'none' });
  /** Neighbours of the header that touch, and what has left its row. */
  const crowded = () =>
    page.evaluate(() => {
      const boxes = [...(document.querySelector('header')?.children ?? [])]
        .map((element) => ({ words: element.textContent, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0);
      const [first] = boxes;
      return boxes.flatMap(({ words, box }, index) => {
        const before = boxes[index - 1]?.box;
        const middle = (one: DOMRect): number => one.y + one.height / 2;
        return [
          ...(before && box.left < before.right + 2 ? [`${words} touches`] : []),
          ...(first && Math.abs(middle(box) - middle(first.box)) > 6 ? [`${words} is in another row`] : []),
          ...(box.right > window.innerWidth ? [`${words} runs off`] : []),
        ];
      });
    });
  const pressed = (name: RegExp) => page.getByRole('button', { name }).getAttribute('aria-pressed');
  for (const [width, height] of [
    [920, 640],
    [960, 640],
    [1000, 700],
    [1139, 700],
    [1280, 720],
  ] as const) {
    await page.setViewportSize({ width, height });
    expect(await crowded(), `at ${width}`).toEqual([]);
    for (const corner of ['Rear right', 'Front left']) {
      await page.getByRole('button', { name: new RegExp(`^${corner}: camber`) }).click();
      expect(await pressed(new RegExp(`^${corner}: camber`)), `${corner} at ${width}`).toBe('true');
    }
  }
  // the shown units are whole, however many of them were changed
  await page.getByRole('button', { name: /^Units:/ }).click();
  for (const name of ['inches', 'degrees, minutes', 'across the rim', 'lb, lb/in'])
    await page.getByRole('button', { name, exact: true }).click();
  await page.keyboard.press('Escape');
  for (const width of [920, 960, 1000, 1079]) {
    await page.setViewportSize({ width, height: 640 });
    const cut = await page
      .locator('.unitline .shortwords')
      .evaluate((words) => [words.scrollWidth - words.clientWidth, words.textContent?.endsWith(' · lb') === true]);
    expect(cut, `units at ${width}`).toEqual([0, true]);
    expect(await crowded(), `at ${width}`).toEqual([]);
  }
  // In a low window those of the axle on the bench are left.
  await page.setViewportSize({ width: 1010, height: 560 });
  await page.getByRole('button', { name: /^Front right: camber/ }).click();
  expect(await page.getByRole('button', { name: /^Rear right: camber/ }).count()).toBe(0);
});

test('numbers of the table stand clear of one another, however long they are', async () => {
  const { page } = await openWindow({ graphics: 'none', reducedMotion: 'reduce' });
  const far = page.locator('tr[data-reading="sideViewSwingArmLength"] td').first();
  await far.waitFor();
  await page.evaluate(() => document.fonts.ready);
  // the case that is looked at: four numbers of a swing arm some metres long, left and right unlike
  expect(await far.innerText()).toMatch(/^−\d,\d{3}\.\d$/);
  expect(await page.locator('.readingtable.own').count()).toBe(1);
  const near = () =>
    page.evaluate(() =>
      [...document.querySelectorAll('tr[data-reading]')].flatMap((row) => {
        const texts = [...row.children].flatMap((cell) => {
          const range = document.createRange();
          range.selectNodeContents(cell);
          return cell.textContent ? [range.getBoundingClientRect()] : [];
        });
        return texts.slice(1).some((box, index) => index > 0 && box.left - (texts[index]?.right ?? 0) < 4)
          ? [row.textContent]
          : [];
      }),
    );
  const choose = async (label: string, word: string) => {
    await page.getByRole('button', { name: /^Units:/ }).click();
    await page.getByRole('group', { name: label, exact: true }).getByRole('button', { name: word, exact: true }).click();
    await page.keyboard.press('Escape');
  };
  for (const unit of ['mm', 'inches']) {
    await choose('Lengths', unit);
    for (const [width, height] of [
      [1280, 720],
      [1600, 1000],
    ] as const) {
      await page.setViewportSize({ width, height });
      expect(await near(), `${unit} at ${width}`).toEqual([]);
    }
  }
});
