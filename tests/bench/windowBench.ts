import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { findChromium } from '../../electron/browser/findChromium';
import { buildWindow } from '../../electron/building/products.mjs';
import { serveWindow } from '../../electron/serve/serveWindow';
import type { BenchRow } from './bench';

const ROUNDS = 5;
const FLAGS = ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist'];
const MICROS = 1000;

const READINGS = 'window: readings painted, cold';
const PICTURE = 'window: first picture, cold';
const AGAIN = 'window: first picture, reload';
const DRAG = 'window: longest task of a drag';
export const WINDOW_ROWS: readonly string[] = [READINGS, PICTURE, AGAIN, DRAG];

/** The browser's own start goes on after it lets itself be driven. */
const SETTLED_AFTER = 3000;

/** Time since the navigation began at which something is there and painted [ms]. */
const paintedAt = (page: Page, isThere: () => boolean): Promise<number> =>
  page
    .waitForFunction(isThere, undefined, { polling: 'raf' })
    .then(() => page.evaluate(() => new Promise<number>((done) => requestAnimationFrame(() => done(performance.now())))));

const hasReadings = (): boolean => document.querySelector('tr[data-reading="camber"] td') !== null;
const hasPicture = (): boolean => Number(document.querySelector('canvas')?.dataset['drawn'] ?? 0) > 0;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

/** Found again in the trace, it tells which thread is the page's own. */
const MARK = 'a drag is measured';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly ts: number;
  readonly pid: number;
  readonly tid: number;
  /** time on the processor [µs] */
  readonly tdur?: number;
}

/** The longest task of the page's own thread while a bushing is turned by its drawing, after the first frame [µs of thread time]. */
const longestTaskOfDrag = async (browser: Browser, page: Page): Promise<number> => {
  await page.waitForTimeout(SETTLED_AFTER);
  const dial = await page.locator('.held .dial').boundingBox();
  if (!dial) throw new Error('a part is in hand');
  const settings = new Set<string>();
  const [x, y, reach] = [dial.x + dial.width / 2, dial.y + dial.height / 2, dial.width * 0.35];
  const moveTo = (step: number) => page.mouse.move(x + reach * Math.sin(step / 6), y - reach * Math.cos(step / 6));
  await moveTo(0);
  await page.mouse.down();
  for (let step = 0; step < 4; step += 1) await moveTo(step);
  await browser.startTracing(page, { categories: ['toplevel', 'devtools.timeline', 'blink.user_timing'] });
  await page.evaluate((mark) => void performance.mark(mark), MARK);
  for (let step = 4; step < 40; step += 1) {
    await moveTo(step);
    await page.waitForTimeout(50);
    settings.add(await page.locator('.held input').first().inputValue());
  }
  const trace = JSON.parse((await browser.stopTracing()).toString()) as { readonly traceEvents: readonly TraceEvent[] };
  await page.mouse.up();
  if (settings.size < 2) throw new Error('the hand did not turn the part: nothing was measured');
  const own = trace.traceEvents.find(({ name }) => name === MARK);
  const tasks = trace.traceEvents.filter(({ name, pid, tid }) => pid === own?.pid && tid === own.tid && name.endsWith('RunTask'));
  return tasks.length === 0 ? NaN : Math.max(...tasks.map(({ tdur = 0 }) => tdur));
};

/** One start with nothing kept from an earlier one, and a reload of it. */
const oneRound = async (browser: Browser, address: string) => {
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 }, reducedMotion: 'reduce' });
  const page = await context.newPage();
  await page.goto(address, { waitUntil: 'commit' });
  const readings = await paintedAt(page, hasReadings);
  const picture = await paintedAt(page, hasPicture);
  // a window that stands open: right after its first picture it is still keeping what it compiled for the next time
  await page.waitForTimeout(SETTLED_AFTER);
  await page.reload({ waitUntil: 'commit' });
  const again = await paintedAt(page, hasPicture);
  const drag = await longestTaskOfDrag(browser, page);
  await context.close();
  return { readings, picture, again, drag };
};

/**
 * The window's start in Chromium with software graphics, from navigation: median of five. No rows where there is no Chromium.
 */
export const windowRows = async (): Promise<readonly BenchRow[]> => {
  const executablePath = findChromium();
  if (executablePath === null) return [];
  const windowFolder = await mkdtemp(path.join(tmpdir(), 'jounce-bench-'));
  const rounds: Awaited<ReturnType<typeof oneRound>>[] = [];
  try {
    await buildWindow(windowFolder);
    for (let round = 0; round < ROUNDS; round += 1) {
      // of its own: what the round before left unsaved would be offered, and lie over the window
      const stateFolder = path.join(windowFolder, `state-${round}`);
      const server = await serveWindow({ windowFolder, samplesFolder: path.resolve('samples'), stateFolder });
      const browser = await chromium.launch({ executablePath, args: FLAGS });
      await new Promise((resolve) => setTimeout(resolve, SETTLED_AFTER));
      rounds.push(await oneRound(browser, server.openAddress));
      await browser.close();
      await server.close();
    }
  } finally {
    await rm(windowFolder, { recursive: true, force: true });
  }
  return [
    { name: READINGS, medianMicros: MICROS * median(rounds.map(({ readings }) => readings)) },
    { name: PICTURE, medianMicros: MICROS * median(rounds.map(({ picture }) => picture)) },
    { name: AGAIN, medianMicros: MICROS * median(rounds.map(({ again }) => again)) },
    { name: DRAG, medianMicros: median(rounds.map(({ drag }) => drag)) },
  ];
};
