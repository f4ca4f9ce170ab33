import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { readPdf } from '../geometry/sheet/pdfReader';
import { openWindow } from './chromium';
import { pressOn, tabTo, typeInto } from './keyboard';

test(
  'what do I turn for camber −3.2° with steady toe and the roll centre above 40 mm: asked, answered and printed by keyboard alone',
  { timeout: 240_000 },
  async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce', acceptDownloads: true });
    await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor();
    await page.keyboard.insertText('reach');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'I want', level: 2 }).waitFor();
    // a list that is shut goes to its first entry with Home
    await pressOn(page, page.getByLabel('Kept question'), 'Home');
    expect(await page.getByLabel('Kept question').locator('option:checked').innerText()).toBe('a new one');
    await typeInto(page, page.getByLabel('Camber to be, degrees'), '-3.2', 'Tab');
    const add = page.getByRole('button', { name: 'Add a reading' });
    await pressOn(page, add);
    const toe = page.getByRole('listitem', { name: /Wanted: Toe/ });
    expect(await toe.getByRole('button', { name: /is wanted/ }).innerText()).toBe('change, bump −30…+30');
    await typeInto(page, toe.getByLabel('Toe within plus or minus, degrees'), '0.03', 'Tab');
    await pressOn(page, add);
    const height = page.getByRole('listitem', { name: /Wanted: Roll centre height/ });
    await typeInto(page, height.getByLabel('Roll centre height above, mm'), '40', 'Tab');
    await pressOn(page, page.getByRole('button', { name: 'Choose parts that may be turned' }));
    const chooser = page.getByRole('group', { name: 'Parts that may be turned' });
    for (const name of [/^Top plate, across/, /^Clamp bolt/, /^Tie-rod end shims/])
      await pressOn(page, chooser.getByLabel(name), 'Space');
    await pressOn(page, chooser.getByRole('button', { name: 'Done' }));
    await pressOn(page, page.getByRole('button', { name: /Find settings/ }));
    await page.locator('.verdict:not(.stale)').waitFor({ timeout: 60_000 });
    expect(await page.locator('.verdict').innerText()).toContain('Reached.');
    expect(await page.locator('.reachtable tbody tr').first().locator('.miss').allInnerTexts()).toEqual(['met', 'met', 'met']);
    const best = page.getByRole('radio').first();
    const words = (await best.getAttribute('aria-label')) ?? '';
    const inboard = /Top plate, across ([\d.]+ mm inboard)/.exec(words)?.[1] ?? 'no answer';

    await pressOn(page, page.getByRole('button', { name: 'To the sheet' }));
    await page.locator('.paper').first().waitFor();
    // what is printed is what is seen: the print is asked for by its key, the file by its button
    await page.evaluate(() => Object.assign(window, { print: () => document.body.setAttribute('data-printed', '') }));
    await page.keyboard.press('Control+p');
    await page.locator('body[data-printed]').waitFor({ state: 'attached' });
    const pdf = page.getByRole('button', { name: /PDF/ });
    await tabTo(page, pdf);
    const [kept] = await Promise.all([page.waitForEvent('download'), page.keyboard.press('Enter')]);
    const paper = readPdf(await readFile(await kept.path()));
    const text = JSON.stringify(paper);
    expect(text).toContain(inboard);
    expect(text).toContain('Trial 4');
    expect(complaints).toEqual([]);
  },
);
