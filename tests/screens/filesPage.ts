import { AxeBuilder } from '@axe-core/playwright';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { FileChooser, Page } from 'playwright-core';

const ROOT = path.resolve(import.meta.dirname, '../..');
export const QUIET = { viewport: { width: 1280, height: 720 }, reducedMotion: 'reduce' } as const;

export const reference = (name: string): Promise<string> =>
  readFile(path.join(ROOT, `tests/golden/cars/${name}.jounce.json`), 'utf8');

export const plate = (page: Page) => page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
/** What stands in a field, with a plain minus. */
export const valueOf = async (page: Page): Promise<string> => (await plate(page).inputValue()).replace('−', '-');
export const unsaved = (page: Page) => page.getByRole('img', { name: 'changed since it was saved' });
export const heading = (page: Page, name: string) => page.getByRole('heading', { level: 1, name }).waitFor();
export const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
export const choose = async (page: Page, name: string | RegExp) => {
  await press(page, 'File');
  await page.getByRole('menuitem', { name }).click();
};

/** What axe has against the page as it is, or a part of it, in both themes: serious and critical alone. */
export const seriousOf = async (page: Page, part = 'html'): Promise<readonly string[]> => {
  const found: string[] = [];
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations } = await new AxeBuilder({ page }).include(part).analyze();
    const serious = violations.filter(({ impact }) => impact === 'serious' || impact === 'critical');
    found.push(...serious.map(({ id, nodes }) => `${colorScheme}: ${id} ${nodes[0]?.html ?? ''}`));
  }
  return found;
};

/**
 * The chooser that Ctrl O brings up. Playwright tells the browser to hand choosers over only while somebody listens, and does
 * not wait until it does: of 300 choosers asked for with a listener of their own four went to the browser instead, which cancels
 * them without a screen; of 300 with a listener that stood before, none. So it stands, a round trip before the key.
 */
export const fileChooser = async (page: Page): Promise<FileChooser> => {
  const stand = (): void => undefined;
  page.on('filechooser', stand);
  await page.evaluate(() => document.readyState);
  const choosing = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  return choosing.finally(() => page.off('filechooser', stand));
};

/** Drops a file of this machine on the window as the system does, so that the browser gives the window a handle on it. */
export const dropFile = async (page: Page, file: string): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  const data = { items: [], files: [file], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
    await session.send('Input.dispatchDragEvent', { type, x: 600, y: 400, data });
};
