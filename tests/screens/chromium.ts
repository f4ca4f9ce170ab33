import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';
import { afterAll, inject, onTestFinished } from 'vitest';
import { findChromium } from '../../electron/browser/findChromium';
import { serveWindow, type ServeOptions } from '../../electron/serve/serveWindow';
import './buildWindow';

/** WebGL without a graphics card, and no traffic of the browser's own. */
const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const SOFTWARE_GRAPHICS = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist'];

export interface WindowOptions extends BrowserContextOptions {
  /** `software` draws on the processor; `none` is a machine without WebGL. */
  readonly graphics?: 'software' | 'none';
  /** What is served; the window built for this run and the samples of this repository where left out. */
  readonly served?: Partial<ServeOptions>;
}

export interface OpenedWindow {
  readonly page: Page;
  readonly browser: Browser;
  /** What the page logged as an error, threw or was refused by the content policy; empty in a window that is well. */
  readonly complaints: readonly string[];
}

const launched = new Map<'software' | 'none', Promise<Browser>>();
afterAll(async () => {
  for (const browser of launched.values()) await (await browser).close();
  launched.clear();
});

/** The browser of a test file: every test opens windows of its own in it, with nothing shared between them. */
export const launchChromium = (graphics: WindowOptions['graphics'] = 'software'): Promise<Browser> => {
  const running = launched.get(graphics);
  if (running) return running;
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('No Chromium: set JOUNCE_CHROMIUM or put chromium on the PATH.');
  const args = [...FLAGS, ...(graphics === 'none' ? ['--disable-3d-apis'] : SOFTWARE_GRAPHICS)];
  const browser = chromium.launch({ executablePath, args });
  launched.set(graphics, browser);
  return browser;
};

/** A browser of a test's own, which can be ended as a crash would end it. */
export const launchDoomedChromium = async (): Promise<{ readonly browser: Browser; readonly kill: () => Promise<void> }> => {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('No Chromium: set JOUNCE_CHROMIUM or put chromium on the PATH.');
  const server = await chromium.launchServer({ executablePath, args: [...FLAGS, ...SOFTWARE_GRAPHICS] });
  onTestFinished(() => server.kill());
  return { browser: await chromium.connect(server.wsEndpoint()), kill: () => server.kill() };
};

/** Opens the window as `npm start` serves it: the real server, the one-time address, the strict content policy. */
export const openWindow = async ({ graphics, served, ...context }: WindowOptions = {}): Promise<OpenedWindow> => {
  const stateFolder = await mkdtemp(path.join(tmpdir(), 'jounce-state-'));
  onTestFinished(() => rm(stateFolder, { recursive: true, force: true, maxRetries: 5 }));
  const server = await serveWindow({
    windowFolder: inject('windowFolder'),
    samplesFolder: path.resolve(import.meta.dirname, '../../samples'),
    stateFolder,
    ...served,
  });
  onTestFinished(server.close);
  const browser = await launchChromium(graphics);
  const shared = await browser.newContext({ viewport: { width: 1280, height: 720 }, ...context });
  onTestFinished(() => shared.close());
  const page = await shared.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => message.type() === 'error' && complaints.push(message.text()));
  await page.goto(server.openAddress);
  return { page, browser, complaints };
};
