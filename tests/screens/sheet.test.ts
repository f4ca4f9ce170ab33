import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../electron/building/products.mjs';
import { jounce } from '../electron/command/jounce';
import { temporaryFolder } from '../electron/temporaryFolder';
import { readPdf } from '../geometry/sheet/pdfReader';
import { openWindow } from './chromium';

/** Machine without WebGL: the sheet needs no picture. */
const openSheet = async () => {
  const opened = await openWindow({ graphics: 'none', reducedMotion: 'reduce', acceptDownloads: true });
  await opened.page.getByRole('link', { name: 'Sheet' }).click();
  await opened.page.locator('.paper').first().waitFor();
  return opened;
};

const part = (page: Page, name: string | RegExp) => page.getByRole('checkbox', { name });
const textsOn = (page: Page): Promise<readonly string[]> => page.locator('.paper text').allTextContents();
const settled = (page: Page, words: string | RegExp) => page.getByRole('status').filter({ hasText: words }).waitFor();

/** A file among the downloads after a button was pressed. */
const saved = async (page: Page, button: string): Promise<{ readonly name: string; readonly bytes: Buffer }> => {
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
};

/** Pages of a PDF that the browser printed. */
const printedPages = (pdf: Buffer): number => (pdf.toString('latin1').match(/\/Type \/Page\b/g) ?? []).length;

describe('the sheet', () => {
  test('shows what is printed: options change it, and are kept', async () => {
    const { page, complaints } = await openSheet();
    const options = page.locator('.sheetcolumn');
    await options.getByRole('combobox', { name: 'Setup' }).selectOption('Sprint');
    await settled(page, '2 pages A4');
    expect(await textsOn(page)).toContain('To change, from Trial 3');
    expect(await textsOn(page)).toContain('hole at 3 o’clock');
    const drawn = await page.locator('.paper path').count();

    await part(page, 'Drawings of the parts').uncheck();
    await expect.poll(() => page.locator('.paper path').count()).toBeLessThan(drawn / 2);
    await part(page, 'Change from Trial 3').uncheck();
    await expect.poll(() => textsOn(page)).not.toContain('To change, from Trial 3');
    await options.getByRole('button', { name: 'Rear' }).click();
    await expect.poll(() => textsOn(page)).not.toContain('Settings, front');
    await options.getByRole('button', { name: 'Letter' }).click();
    await settled(page, /pages? Letter$/);
    await options.getByRole('button', { name: 'the file' }).click();
    await part(page, 'What it makes').uncheck();
    await expect.poll(() => textsOn(page)).not.toContain('What it makes');

    await page.reload();
    await page.locator('.paper').first().waitFor();
    await settled(page, /pages? Letter$/);
    expect(await part(page, 'Drawings of the parts').isChecked()).toBe(false);
    expect(await part(page, 'Boxes for what was read').isChecked()).toBe(true);
    expect(complaints).toEqual([]);
  });

  test('follows the bench: setup, units and undo are those of the header', async () => {
    const { page } = await openSheet();
    await page.getByRole('combobox', { name: 'Setup on the bench' }).selectOption('Wet');
    await expect.poll(() => textsOn(page)).toContain('60.0 N/mm');
    expect(await page.getByRole('region', { name: 'Set-up sheet of Wet' }).count()).toBe(1);
    await page.locator('.sheetcolumn').getByRole('combobox', { name: 'On the car now' }).selectOption('nobody says');
    await expect.poll(async () => (await textsOn(page)).some((text) => text.startsWith('To change'))).toBe(false);
    expect(await part(page, 'What to change').isDisabled()).toBe(true);
  });

  test('every text of a page lies inside it, in the typeface that it was measured with', async () => {
    const { page } = await openSheet();
    const misfits = await page.evaluate(() =>
      [...document.querySelectorAll('.paper')].flatMap((paper) => {
        const box = paper.getBoundingClientRect();
        return [...paper.querySelectorAll('text')]
          .filter((text) => {
            const { left, right, top, bottom } = text.getBoundingClientRect();
            return left < box.left + 30 || right > box.right - 30 || top < box.top + 20 || bottom > box.bottom - 20;
          })
          .map((text) => text.textContent);
      }),
    );
    expect(misfits).toEqual([]);
    expect(
      await page.evaluate(() => document.fonts.check("12px 'Jounce Sheet'") && document.fonts.check("600 12px 'Jounce Sheet'")),
    ).toBe(true);
  });

  test('prints its pages and nothing else, also by Ctrl P', async () => {
    const { page } = await openSheet();
    for (const [paper, setup] of [
      ['A4', 'Sprint'],
      ['Letter', 'Trial 3'],
    ] as const) {
      await page.locator('.sheetcolumn').getByRole('button', { name: paper }).click();
      await page.locator('.sheetcolumn').getByRole('combobox', { name: 'Setup' }).selectOption(setup);
      await settled(page, `pages ${paper}`);
      const pages = await page.locator('.paper').count();
      expect(printedPages(await page.pdf({ preferCSSPageSize: true }))).toBe(pages);
    }
    await page.emulateMedia({ media: 'print' });
    const seen = await page.evaluate(() =>
      [...document.querySelectorAll('body *')]
        .filter((element) => element.checkVisibility() && element.childElementCount === 0 && element.closest('.paper') === null)
        .filter((element) => (element.textContent ?? '').trim() !== '' && element.getBoundingClientRect().width > 1)
        .map((element) => element.textContent),
    );
    expect(seen).toEqual([]);
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => {
      window.print = () => document.body.setAttribute('data-printed', String(Number(document.body.dataset['printed'] ?? 0) + 1));
    });
    await page.keyboard.press('Control+p');
    await page.getByRole('button', { name: 'Print' }).click();
    expect(await page.evaluate(() => document.body.dataset['printed'])).toBe('2');
  });

  test('saves the PDF and the HTML that the command line writes', async () => {
    const { page } = await openSheet();
    await page.locator('.sheetcolumn').getByRole('combobox', { name: 'Setup' }).selectOption('Sprint');
    await settled(page, '2 pages A4');
    const folder = await temporaryFolder();
    const day = await page.evaluate(() => new Date().toLocaleDateString('sv-SE'));
    const car = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
    for (const [button, ending] of [
      ['Save as PDF', 'pdf'],
      ['Save as HTML', 'html'],
    ] as const) {
      const { name, bytes } = await saved(page, button);
      expect(name).toBe(`Set-up sheet – Saltmarsh hatch – Sprint.${ending}`);
      const file = path.join(folder, `sheet.${ending}`);
      expect((await jounce(['sheet', car, file, '--setup', 'Sprint', '--date', day])).status).toBe(0);
      const written = await readFile(file);
      if (ending === 'pdf') {
        expect(readPdf(bytes).pages).toEqual(readPdf(written).pages);
        expect(Buffer.compare(bytes, written)).toBe(0);
      } else expect(bytes.toString().match(/<text [^>]*>[^<]*/g)).toEqual(written.toString().match(/<text [^>]*>[^<]*/g));
      expect(bytes.length).toBe(written.length);
    }
  });

  test('is read by those who do not see it, in both themes, and by keys alone', async () => {
    const { page } = await openSheet();
    const read = page.locator('.sheetdesk');
    expect(await read.getByRole('table').count()).toBeGreaterThan(2);
    expect(await read.getByRole('row', { name: /^Rear bushing.*hole at 11 o’clock.*hole at 1 o’clock/ }).count()).toBe(1);
    for (const theme of ['Light', 'Dark']) {
      await page.getByRole('button', { name: theme }).click();
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${theme}, ${id}: ${nodes[0]?.html}`)).toEqual([]);
      expect(
        await page
          .locator('.paper')
          .first()
          .evaluate((paper) => getComputedStyle(paper).backgroundColor),
      ).toBe('rgb(255, 255, 255)');
    }
    await page.locator('.sheetcolumn').getByRole('combobox', { name: 'Setup' }).focus();
    const reached: string[] = [];
    for (let presses = 0; presses < 20; presses += 1) {
      await page.keyboard.press('Tab');
      reached.push(
        await page.evaluate(
          () => document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? '',
        ),
      );
    }
    for (const name of ['Letter', 'Save as PDF', 'Save as HTML', 'Set-up sheet of Trial 3, as it prints'])
      expect(reached).toContain(name);
  });

  test('has room in a small window', async () => {
    const { page } = await openSheet();
    await page.setViewportSize({ width: 640, height: 360 });
    await page.getByText('what is on it').click();
    await part(page, 'What it makes').uncheck();
    await expect.poll(() => textsOn(page)).not.toContain('What it makes');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(640);
    expect(await page.getByRole('button', { name: 'Print' }).isVisible()).toBe(true);
  });
});
