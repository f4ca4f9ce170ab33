import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';
import { findChromium } from '../../electron/browser/findChromium';
import { ROOT, buildWindow } from '../../electron/building/products.mjs';
import { serveWindow } from '../../electron/serve/serveWindow';

/** What the window opens with. */
const SHOWN = 'Saltmarsh hatch';
const PICTURE = 'samples/pictures/saltmarsh-hatch.jpg';
const SIZE = { width: 1280, height: 720 };
/** Letters without a halo, in half the bytes of a picture without loss. */
const QUALITY = 85;
/** Fonts and the last frame are there by then. */
const SETTLED_MS = 1500;
/** WebGL on the processor: any machine draws the same. */
const FLAGS = [
  '--no-sandbox',
  '--disable-quic',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

/**
 * Takes the picture of the README: the window on a sample as it is today. To be done again when the window's look or the
 * sample has changed.
 * @returns the file's place, from the root
 */
export async function takePicture(): Promise<string> {
  const executablePath = findChromium();
  if (executablePath === null) throw new Error('No Chromium: set JOUNCE_CHROMIUM or put chromium on the PATH.');
  const windowFolder = await mkdtemp(path.join(tmpdir(), 'jounce-picture-'));
  try {
    await buildWindow(windowFolder);
    const stateFolder = path.join(windowFolder, 'state');
    const server = await serveWindow({ windowFolder, samplesFolder: path.join(ROOT, 'samples'), stateFolder });
    const browser = await chromium.launch({ executablePath, args: FLAGS });
    try {
      const page = await browser.newPage({ viewport: SIZE, colorScheme: 'light', reducedMotion: 'reduce' });
      await page.goto(server.openAddress);
      await page.getByRole('heading', { name: SHOWN }).waitFor();
      await page.waitForFunction(() => Number(document.querySelector('canvas')?.dataset['drawn'] ?? 0) > 0);
      await page.waitForTimeout(SETTLED_MS);
      await page.screenshot({ path: path.join(ROOT, PICTURE), type: 'jpeg', quality: QUALITY });
    } finally {
      await browser.close();
      server.close();
    }
  } finally {
    await rm(windowFolder, { recursive: true, force: true });
  }
  return PICTURE;
}
