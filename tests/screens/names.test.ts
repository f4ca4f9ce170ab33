import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../electron/temporaryFolder';
import { type } from './bench';
import { openWindow } from './chromium';
import { heading, plate, reference } from './filesPage';

const CAR = 'Check car of the second team, chassis 14, number 77, two spares';
const SETUP = 'Wet, long straight, softer rear bar and half a turn of rake';
const AGAINST = 'Baseline of the second test day at the old airfield circuit';

const longNames = async (): Promise<string> =>
  (await reference('car-23'))
    .replace('"Check car 23"', `"${CAR}"`)
    .replace('"Baseline"', `"${AGAINST}"`)
    .replace('"Trial"', `"${SETUP}"`);

test('long names in the header of a car that was saved give way to nothing that is pressed, and end before their arrow', async () => {
  const folder = await temporaryFolder({ 'mine.jounce.json': await longNames() });
  const file = `${folder}/mine.jounce.json`;
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none', served: { handed: [file] } });
  await heading(page, CAR);
  await page.getByLabel('Setup on the bench').selectOption(SETUP);
  await type(plate(page), '-5');
  await page.getByLabel('Setup on the bench').selectOption(SETUP);
  await page.keyboard.press('Control+s');
  await page
    .getByRole('status')
    .filter({ hasText: /^saved/ })
    .waitFor();
  expect(await readFile(file, 'utf8')).toContain(CAR);
  for (const [label, name] of [
    ['Setup on the bench', SETUP],
    ['Setup compared with', AGAINST],
  ] as const) {
    const choice = page.getByLabel(label);
    expect(await choice.getAttribute('title'), label).toBe(name);
    expect(await choice.evaluate((select) => getComputedStyle(select).textOverflow), label).toBe('ellipsis');
  }
  expect(await page.locator('h1.car .ellipsis').getAttribute('title')).toMatch(new RegExp(`^${CAR}`));
  /** What of the header is out of the window or over its neighbour, and words that are neither whole nor end in an ellipsis. */
  const wrong = () =>
    page.evaluate(() => {
      const header = document.querySelector('header');
      const seen = [...(header?.querySelectorAll('button, select, h1, .savedword, .unitline .ellipsis') ?? [])]
        .map((element) => ({ element, box: element.getBoundingClientRect() }))
        .filter(({ element, box }) => box.width > 1 && element.checkVisibility());
      const nameOf = (element: Element): string => element.ariaLabel ?? element.textContent;
      const out = seen.filter(({ box }) => box.right > window.innerWidth || box.left < 0).map(({ element }) => nameOf(element));
      const controls = seen.filter(({ element }) => element.matches('button, select, h1, .savedword'));
      const over = controls.flatMap(({ element, box }, index) =>
        controls
          .slice(index + 1)
          .filter(
            ({ box: other }) =>
              box.right > other.left + 0.5 &&
              other.right > box.left + 0.5 &&
              box.bottom > other.top + 0.5 &&
              other.bottom > box.top + 0.5,
          )
          .map((other) => `${nameOf(element)} over ${nameOf(other.element)}`),
      );
      const cut = [...(header?.querySelectorAll('.unitline .ellipsis, .savedword') ?? [])]
        .filter((element) => element.getBoundingClientRect().width > 1 && element.scrollWidth > element.clientWidth + 1)
        .map(nameOf);
      return { out, over, cut };
    });
  for (const width of [1600, 1280, 1199, 1100, 1010, 920, 800, 640, 360]) {
    await page.setViewportSize({ width, height: 720 });
    expect(await wrong(), `at ${width}`).toEqual({ out: [], over: [], cut: [] });
    // some words of each name are left
    const name = await page.locator('h1.car .ellipsis').boundingBox();
    expect(name?.width, `name of the car at ${width}`).toBeGreaterThan(60);
    const setup = await page.getByLabel('Setup on the bench').boundingBox();
    expect(setup?.width, `setup at ${width}`).toBeGreaterThan(80);
  }
});

test('the step that undo takes back is told as far as it says something: not by one letter, and before the car’s name is cut', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await type(page.getByRole('spinbutton', { name: /^Top plate, across/ }).first(), '-5');
  const step = page.locator('header .stepname');
  const shown = () =>
    step.evaluate((words) => {
      const [own, button] = [words.getBoundingClientRect(), words.parentElement?.getBoundingClientRect()];
      return button && own.top < button.bottom ? own.width : 0;
    });
  const isCut = () => page.locator('h1.car .ellipsis').evaluate((name) => name.scrollWidth > name.clientWidth + 1);
  for (let width = 1280; width >= 1080; width -= 20) {
    await page.setViewportSize({ width, height: 720 });
    const wide = await shown();
    expect(wide === 0 || wide >= 60, `${wide} px of it at ${width}`).toBe(true);
    if (wide > 60) expect(await isCut(), `the car’s name at ${width}`).toBe(false);
  }
});

test('the picture for print says whose it is, in which setup, position and units', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce', viewport: { width: 1010, height: 560 } });
  await page.locator('canvas').waitFor();
  await type(page.getByRole('group', { name: 'Motion' }).getByRole('spinbutton', { name: /^Bump/ }), '25');
  await page.evaluate(() => {
    const write = CanvasRenderingContext2D.prototype.fillText;
    CanvasRenderingContext2D.prototype.fillText = function (text, ...place) {
      document.body.dataset['written'] = text;
      write.call(this, text, ...place);
    };
  });
  await page.getByRole('button', { name: /^Show/ }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Picture, PNG for print' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^Saltmarsh hatch Trial 3 front picture\.png$/);
  // the last words that were written are those along its foot
  expect(await page.locator('body').getAttribute('data-written')).toBe(
    'Saltmarsh hatch, Trial 3, front axle. At bump +25.0 mm. mm · degrees',
  );
});

test('why a setup cannot be deleted stands inside the dialog, however long the names in it are', async () => {
  const car = await readFile(path.resolve(import.meta.dirname, '../../samples/saltmarsh-hatch.jounce.json'), 'utf8');
  const long = car
    .replace('"More front camber, steady toe"', '"More front camber with a steady toe over the whole of travel"')
    .replace('"Rear camber inside the track rule"', '"Rear_camber_inside_the_track_rule_for_the_long_circuit_too"');
  const folder = await temporaryFolder({ 'mine.jounce.json': long });
  const served = { handed: [`${folder}/mine.jounce.json`] };
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none', served });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await page.getByRole('button', { name: 'Setups…' }).click();
  await page.locator('dialog.setups [role="option"]').first().click();
  const why = page.locator('.setups .actions .quiet');
  expect(await why.innerText()).toContain('for_the_long_circuit_too');
  const past = await why.evaluate(
    (words) => words.getBoundingClientRect().right - (words.closest('.detail')?.getBoundingClientRect().right ?? NaN),
  );
  expect(past).toBeLessThanOrEqual(0);
});

test('a list of points is kept under the name that the header shows', async () => {
  const { page } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.locator('tr[data-reading="camber"]').waitFor();
  const setup = await page.getByLabel('Setup on the bench').inputValue();
  await page.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
  await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: 'Car', exact: true }).click();
  await type(page.getByRole('textbox', { name: /^Name/ }).first(), 'Wet car');
  await heading(page, 'Wet car');
  await page.getByRole('group', { name: 'What is edited' }).getByRole('button', { name: 'Points', exact: true }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'CSV', exact: true }).first().click(),
  ]);
  expect(download.suggestedFilename()).toBe(`Wet car ${setup} front points.csv`);
});
