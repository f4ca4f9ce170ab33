import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { openWindow } from './chromium';
import { seriousFaults } from './pointsPage';

/** What the workers of the page did, and when the person last pressed something [ms of the page]. */
interface Watched {
  pressed: number;
  started: number;
  stopped: number[];
}
declare global {
  interface Window {
    watched: Watched;
  }
}

/** Threads that were stopped, and the press before it, are noted by the page itself. */
const watchWorkers = (): void => {
  window.watched = { pressed: 0, started: 0, stopped: [] };
  const press = (): void => void (window.watched.pressed = performance.now());
  window.addEventListener('click', press, true);
  window.addEventListener('keydown', press, true);
  const { terminate } = Worker.prototype;
  Worker.prototype.terminate = function (this: Worker) {
    terminate.call(this);
    window.watched.stopped.push(performance.now());
  };
};

const openStudy = async (page: Page, name: RegExp): Promise<void> => {
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('link', { name: 'Studies' }).click();
  await page.getByRole('navigation', { name: 'Studies' }).getByRole('button', { name }).click();
};
const verdict = (page: Page) => page.locator('.verdict:not(.stale)');
const find = (page: Page) => page.getByRole('button', { name: /Find settings/ });

test('a question asked from its blanks is answered, taken to the bench and given back; then marked when the car is another', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await openStudy(page, /^Reach/);
  for (const name of ['I want', 'I may turn']) await page.getByRole('heading', { name, level: 2 }).waitFor();
  await page.getByLabel('Kept question').selectOption({ label: 'a new one' });
  // what is missing is said at its field, and nothing is lost
  const camber = page.getByLabel('Camber to be, degrees');
  await camber.fill('a lot');
  await camber.press('Enter');
  await expect.poll(() => page.getByRole('alert').allInnerTexts()).toContain('Camber: “a lot” is not a number.');
  expect(await page.getByRole('alert').allInnerTexts()).toContain('Nothing may be turned: choose parts.');
  expect(await camber.inputValue()).toBe('a lot');
  await camber.fill('-3.2');
  await page.getByLabel('Starting from the setup').selectOption('Baseline');
  // no more than 0.03° toe change from −30 to +30
  await page.getByRole('button', { name: 'Add a reading' }).click();
  const toe = page.getByRole('listitem', { name: /Wanted: Toe/ });
  expect(await toe.getByRole('button', { name: /is wanted/ }).innerText()).toBe('change, bump −30…+30');
  await toe.getByLabel('Toe within plus or minus, degrees').fill('0.03');
  // and the roll centre above 40 mm
  await page.getByRole('button', { name: 'Add a reading' }).click();
  const height = page.getByRole('listitem', { name: /Wanted: Roll centre height/ });
  await height.getByLabel('Roll centre height above, mm').fill('40');
  await height.getByLabel('Roll centre height, tolerance, mm').fill('1');
  await page.getByRole('button', { name: 'Choose parts that may be turned' }).click();
  const chooser = page.getByRole('group', { name: 'Parts that may be turned' });
  expect(await chooser.getByLabel(/^Front arm bolt/).isDisabled()).toBe(true);
  for (const part of [/^Top plate, across/, /^Clamp bolt/, /^Tie-rod end shims/]) await chooser.getByLabel(part).check();
  await chooser.getByRole('button', { name: 'Done' }).click();
  expect(await page.getByText('6,825 combinations, all tried').isVisible()).toBe(true);
  await height.getByLabel('Roll centre height above, mm').press('Enter');
  await verdict(page).waitFor({ timeout: 60_000 });
  expect(await verdict(page).innerText()).toMatch(/Reached\.[^]*all 6,825 combinations tried/);
  const best = page.getByRole('radio').first();
  expect(await best.isChecked()).toBe(true);
  const words = (await best.getAttribute('aria-label')) ?? '';
  expect(words).toMatch(/^1: Top plate, across .* inboard · Clamp bolt \d marks, top in · Tie-rod end shims/);
  expect(await page.locator('.reachtable tbody tr').first().locator('.miss').allInnerTexts()).toEqual(['met', 'met', 'met']);
  // the arrow keys go from answer to answer
  await best.focus();
  await page.keyboard.press('ArrowDown');
  expect(await page.getByRole('radio').nth(1).isChecked()).toBe(true);
  await page.keyboard.press('ArrowUp');

  await page.getByRole('button', { name: 'Take to bench' }).click();
  await page.getByRole('main', { name: 'Bench' }).waitFor();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 4');
  expect(await page.getByLabel('Setup compared with').inputValue()).toBe('own:Baseline');
  const [left] = await page.locator('tr[data-reading="camber"] td').allInnerTexts();
  expect(Math.abs(Number(left?.replace('−', '-')) + 3.2)).toBeLessThanOrEqual(0.1);
  await page.getByRole('button', { name: /^Undo: Take Top plate/ }).click();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 3');

  // the page remembers the question and its answer; as a ghost it is compared with, and the car stays
  await page.getByRole('link', { name: 'Studies' }).click();
  expect(await camber.inputValue()).toBe('−3.2');
  await page.getByRole('button', { name: 'More to do with this row' }).click();
  await page.getByRole('menuitem', { name: 'Ghost on bench' }).click();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Baseline');
  expect(await page.getByLabel('Setup compared with').inputValue()).toMatch(/^answer:Top plate/);

  // another number in Baseline: the answer is not current
  await page.getByRole('link', { name: 'Studies' }).click();
  await page.getByRole('button', { name: 'More to do with this row' }).click();
  await page.getByRole('menuitem', { name: 'Change Baseline to this, on the bench' }).click();
  await page.getByRole('link', { name: 'Studies' }).click();
  await page.getByText('Not current.').waitFor();
  expect(await page.getByRole('button', { name: 'Take to bench' }).isDisabled()).toBe(true);
  await page.getByRole('button', { name: 'Run again' }).click();
  await page.getByText('Nothing to do: Baseline gives everything that is wanted as it stands.').waitFor({ timeout: 60_000 });
  expect(await page.getByText('Not current.').count()).toBe(0);

  // kept in the car file, in one step
  await page.getByLabel('Name of the question').fill('Rules and toe');
  await page.getByRole('button', { name: 'Keep', exact: true }).click();
  expect(await page.getByLabel('Kept question').locator('option').allInnerTexts()).toContain('Rules and toe');
  await page.getByRole('button', { name: 'Undo: Keep question Rules and toe' }).click();
  expect(await page.getByLabel('Kept question').locator('option').allInnerTexts()).not.toContain('Rules and toe');
  expect(complaints).toEqual([]);
});

test('a long search says how far it is, and is called off within a tenth of a second, by its button and by Escape', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await page.addInitScript(watchWorkers);
  await page.reload();
  await openStudy(page, /^Reach/);
  await page.getByRole('button', { name: 'Choose parts that may be turned' }).click();
  const chooser = page.getByRole('group', { name: 'Parts that may be turned' });
  await chooser.getByLabel(/^Top plate, along/).check();
  await chooser.getByRole('button', { name: 'Done' }).click();
  for (const way of ['button', 'key'] as const) {
    await find(page).click();
    const cancel = page.getByRole('button', { name: /^Cancel/ });
    await cancel.waitFor({ timeout: 30_000 });
    const progress = page.locator('.runprogress');
    // into how many pieces the question is cut is the engine's affair
    const said = /Trying every combination\s+[\d,]+ of ([\d,]+)/;
    await expect.poll(() => progress.innerText(), { timeout: 60_000 }).toMatch(said);
    const [, pieces = ''] = said.exec(await progress.innerText()) ?? [];
    expect(Number(pieces.replace(',', ''))).toBeGreaterThan(100);
    expect(await page.getByRole('progressbar').getAttribute('max')).toBe(pieces.replace(',', ''));
    await page.evaluate(() => void (window.watched.stopped = []));
    if (way === 'button') await cancel.click();
    else await page.keyboard.press('Escape');
    await cancel.waitFor({ state: 'detached' });
    const { pressed, stopped } = await page.evaluate(() => window.watched);
    expect(stopped.length).toBeGreaterThan(0);
    const took = Math.max(...stopped) - pressed;
    console.log(`called off by ${way}: ${took.toFixed(1)} ms from the press to the last thread stopped`);
    expect(took).toBeGreaterThanOrEqual(0);
    expect(took).toBeLessThan(100);
  }
  // left in the middle of it: called off, which is said when one comes back
  await find(page).click();
  await page.getByRole('button', { name: /^Cancel/ }).waitFor({ timeout: 30_000 });
  const called = page.getByText('Called off when this page was left.');
  expect(await called.count()).toBe(0);
  await openStudy(page, /^Ways/);
  await openStudy(page, /^Reach/);
  await called.waitFor();

  // every part of the axle: words and numbers stand clear of one another, and most of the answer is in sight; the rule is said
  await page.getByLabel('Kept question').selectOption({ label: 'a new one' });
  const camber = page.getByLabel('Camber to be, degrees');
  await camber.fill('-4.2');
  await page.getByText('No answer goes there: front camber −4.00 … 0.00° (sample rules 5.2).').waitFor();
  await camber.fill('-3.2');
  await page.getByText(/No answer goes there/).waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'all of the front' }).click();
  await page.getByLabel('Starting from the setup').selectOption('Baseline');
  await page.getByLabel('What becomes of toe').selectOption({ label: 'toe left to follow' });
  await page.getByLabel('How many answers').fill('60');
  await find(page).click();
  await page.locator('.reachtable').waitFor({ timeout: 60_000 });
  const rows = page.locator('.reachtable tbody tr');
  expect(await rows.count()).toBe(50);
  await page.getByRole('button', { name: '10 more' }).click();
  expect(await rows.count()).toBe(60);
  const gaps = await rows.evaluateAll((lines) =>
    lines.map((line) => {
      const side = (part: string, of: 'left' | 'right') => line.querySelector(part)?.getBoundingClientRect()[of] ?? NaN;
      return side('.wantednumber', 'left') - side('.waywords', 'right');
    }),
  );
  expect(Math.min(...gaps)).toBeGreaterThan(0);
  const table = await page.getByRole('region', { name: 'Table of settings' }).boundingBox();
  expect(table?.height).toBeGreaterThan(280);
  expect(complaints).toEqual([]);
});

test('ways: Enter asks, every way says what else it changes; nobody is kept out in either theme, and narrow windows scroll', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
  await openStudy(page, /^Ways/);
  await page.getByLabel('Starting from the setup').selectOption('Baseline');
  await page.getByLabel('Tolerance, degrees').fill('0');
  await page.getByLabel('Tolerance, degrees').press('Enter');
  const said = await page.getByRole('alert').allInnerTexts();
  expect(said).toEqual(['Bring it to what: a number is missing.', 'How near counts as reached: it has to be over 0.']);
  await page.getByLabel('Tolerance, degrees').fill('0.1');
  await page.getByLabel('To, degrees').fill('-1.5');
  await page.getByLabel('pairs too').uncheck();
  await page.getByLabel('To, degrees').press('Enter');
  const table = page.getByRole('region', { name: 'Table of ways' });
  await table.waitFor({ timeout: 60_000 });
  const reaching = table.locator('tr', { has: page.locator('.chip.within') });
  expect(await reaching.first().innerText()).toMatch(/Clamp bolt|Top plate/);
  expect(await reaching.first().locator('.effect').count()).toBe(6);
  expect(await page.locator('.lastrun').innerText()).toMatch(/Last run\s+\d+ ways, \d+ reach/);
  for (const theme of ['Light', 'Dark']) {
    await page.getByRole('group', { name: 'Theme' }).getByRole('button', { name: theme }).click();
    expect(await seriousFaults(page)).toEqual([]);
    await page.getByRole('button', { name: /^Reach/ }).click();
    expect(await seriousFaults(page)).toEqual([]);
    await page.getByRole('button', { name: /^Ways/ }).click();
  }
  // at 200 % the list of studies is a menu, and the page scrolls inside itself only
  await page.setViewportSize({ width: 640, height: 360 });
  await page.getByLabel('Study', { exact: true }).selectOption('reach');
  await find(page).scrollIntoViewIfNeeded();
  expect(await find(page).isVisible()).toBe(true);
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(overflow).toBe(0);
  expect(complaints).toEqual([]);
});
