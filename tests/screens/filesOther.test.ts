import { readdir } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../electron/temporaryFolder';
import { motionField, openSample, type } from './bench';
import { openWindow } from './chromium';
import { QUIET, choose, dropFile, fileChooser, heading, plate, press, reference, seriousOf, unsaved, valueOf } from './filesPage';

test('two windows of two programs are told of a file that the browser opened in both, and of no other', async () => {
  const [mine, other] = [await reference('car-23'), await reference('car-21')];
  const folder = await temporaryFolder({ 'mine.jounce.json': mine, 'other.jounce.json': other, 'away/mine.jounce.json': other });
  const served = { stateFolder: `${folder}/state` };
  const [one, two] = [(await openWindow({ ...QUIET, served })).page, (await openWindow({ ...QUIET, served })).page];
  const told = (page: Page) => page.getByRole('status').filter({ hasText: 'seems to be open in another window too' });
  await dropFile(one, `${folder}/mine.jounce.json`);
  await heading(one, 'Check car 23');
  await dropFile(two, `${folder}/mine.jounce.json`);
  await heading(two, 'Check car 23');
  expect(await told(two).innerText()).toMatch(/does not tell where a file is; .* same name, size and time/);
  await one.evaluate(() => window.dispatchEvent(new Event('focus')));
  await told(one).waitFor();
  await dropFile(two, `${folder}/other.jounce.json`);
  await heading(two, 'Check car 21');
  await told(two).waitFor({ state: 'detached' });
  await one.evaluate(() => window.dispatchEvent(new Event('focus')));
  await told(one).waitFor({ state: 'detached' });

  // what the browser opened is on the list and opens from there, and again after a reload, as far as the browser lets it
  await choose(two, /^mine opened by the browser/);
  await heading(two, 'Check car 23');
  await two.getByLabel('Setup on the bench').selectOption('Trial');
  await two.reload();
  const again = two.getByRole('status').filter({ hasText: '“mine.jounce.json” was open before the reload' });
  await two.getByRole('heading', { level: 1, name: 'Check car 23' }).or(again).first().waitFor();
  if (await again.count()) await again.getByRole('button', { name: 'Open it again…' }).click();
  await heading(two, 'Check car 23');

  // another file of the same name: the name alone would open one for the other, so that none is opened by it
  await dropFile(two, `${folder}/away/mine.jounce.json`);
  await heading(two, 'Check car 21');
  await press(two, 'File');
  expect(await two.getByRole('menuitem', { name: /^mine/ }).first().innerText()).toContain('choose it again');
});

test('another car asks before it replaces changes; a copy put aside comes back; dropped and recent files open', async () => {
  const folder = await temporaryFolder({ 'mine.jounce.json': await reference('car-23') });
  const file = `${folder}/mine.jounce.json`;
  const served = { stateFolder: `${folder}/state`, handed: [file] };
  const copies = async () => (await readdir(`${folder}/state/recovery`)).filter((name) => name.endsWith('.copy'));
  const { page } = await openWindow({ ...QUIET, served });
  await heading(page, 'Check car 23');
  await type(plate(page), '-5');
  await openSample(page, 'chalkboard');
  const question = page.getByRole('dialog', { name: 'Check car 23 has changes that were not saved' });
  await question.waitFor();
  expect(await seriousOf(page)).toEqual([]);
  await question.getByRole('button', { name: 'Stay' }).click();
  expect(await valueOf(page)).toBe('-5');
  await openSample(page, 'chalkboard');
  await question.getByRole('button', { name: 'Keep a copy and open' }).click();
  await page.getByRole('heading', { level: 1, name: /chalkboard/i }).waitFor();
  expect(await unsaved(page).count()).toBe(0);

  await choose(page, /^Check car 23 kept/);
  await page.getByRole('dialog', { name: 'A copy of Check car 23 was put aside' }).waitFor();
  expect(await seriousOf(page, 'dialog')).toEqual([]);
  await press(page, 'Open both, compare');
  await heading(page, 'Check car 23');
  expect(await valueOf(page)).toBe('-5');
  await unsaved(page).waitFor();
  await page.keyboard.press('Control+z');
  await unsaved(page).waitFor({ state: 'detached' });

  const text = (await reference('car-21')).replace('"Check car 21"', '"Dropped"');
  const drop = (content = text, name = 'dropped.jounce.json') =>
    page.evaluate(
      (file) => {
        const transfer = new DataTransfer();
        transfer.items.add(new File([file.content], file.name));
        window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
      },
      { content, name },
    );
  await drop();
  await heading(page, 'Dropped');
  // a list is no broken car: where it goes is said, with the way there
  await drop('Point,X,Y,Z\narmFront,1,2,3\narmRear,4,5,6\n', 'points.csv');
  const list = page.getByRole('dialog', { name: /points\.csv/ });
  expect(await list.innerText()).toMatch(/is a list, not a car.*on Points, by Coordinates in/s);
  await list.getByRole('button', { name: 'Go to Points' }).click();
  await page.getByRole('button', { name: /Coordinates in/ }).waitFor();
  await page.getByRole('link', { name: 'Bench' }).click();
  await choose(page, /^mine/);
  await heading(page, 'Check car 23');
  await press(page, 'File');
  expect(await page.getByRole('menuitem', { name: /^dropped/ }).innerText()).toContain('choose it again');
  expect(await seriousOf(page, '#file-menu')).toEqual([]);
  await page.keyboard.press('Escape');
  expect(await page.getByRole('menu').count()).toBe(0);
  await page.getByRole('button', { name: /^Units:/ }).click();
  await page.getByRole('group', { name: 'Units' }).waitFor();
  expect(await seriousOf(page, '.unitsmenu')).toEqual([]);

  // a ride stands still while a dialog asks; what is not to be kept goes with its copy
  await page.keyboard.press('Escape');
  await type(plate(page), '-4');
  await expect.poll(copies, { timeout: 10_000 }).toHaveLength(1);
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  await page.getByRole('button', { name: /^Play / }).click();
  const travel = () => motionField(page, 'Bump').inputValue();
  const before = await travel();
  await expect.poll(travel).not.toBe(before);
  await drop();
  await question.waitFor();
  const stood = await travel();
  await page.waitForTimeout(600);
  expect(await travel()).toBe(stood);
  await question.getByRole('button', { name: 'Open, do not keep' }).click();
  await heading(page, 'Dropped');
  expect([await unsaved(page).count(), await page.getByRole('button', { name: 'Stop', exact: true }).count()]).toEqual([0, 0]);
  await expect.poll(copies, { timeout: 10_000 }).toEqual([]);
});

test('a browser without handles downloads; faults are listed beside the text, by keyboard; leaving is asked about', async () => {
  const { page } = await openWindow({ ...QUIET });
  await page.locator('tr[data-reading="camber"]').waitFor();
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }));
  await page.getByRole('spinbutton', { name: /^Top plate, across, left and right/ }).fill('-4');
  await page.keyboard.press('Tab');
  await unsaved(page).waitFor();
  const downloading = page.waitForEvent('download');
  await page.keyboard.press('Control+Shift+S');
  expect((await downloading).suggestedFilename()).toBe('saltmarsh-hatch.jounce.json');
  await page.getByRole('status').filter({ hasText: 'Downloaded' }).waitFor();
  await unsaved(page).waitFor({ state: 'detached' });

  const broken = (await reference('car-21')).replace('"ballJoint"', '"balJoint"').replace('"version": 1', '"version": "1"');
  await (
    await fileChooser(page)
  ).setFiles({ name: 'broken.jounce.json', mimeType: 'application/json', buffer: Buffer.from(broken) });
  const dialog = page.getByRole('dialog', { name: /^Not opened: \d+ faults in broken\.jounce\.json$/ });
  await dialog.waitFor();
  expect(await dialog.innerText()).toContain('Saltmarsh hatch, is as it was');
  // names of the file as they stand there, and no back-ticks about them
  expect(await dialog.locator('.faultlist code').allInnerTexts()).toContain('ballJoint');
  expect(await dialog.innerText()).not.toContain('`');
  const marked = () => dialog.locator('.bad mark').innerText();
  const first = await marked();
  await page.keyboard.press('F8');
  expect(await marked()).not.toBe(first);
  const seen = new Set([first, await marked()]);
  for (let step = 0; step < 6; step += 1) {
    await page.keyboard.press('F8');
    seen.add(await marked());
  }
  expect([...seen].join(' ')).toMatch(/"1".*"balJoint"|"balJoint".*"1"/);
  expect(await seriousOf(page)).toEqual([]);

  // the sure one by its button, the other by hand; nothing is opened before both are mended, and nothing is lost by Escape
  await dialog.getByRole('button', { name: /^Mend .*: balJoint → ballJoint$/ }).click();
  const left = page.getByRole('dialog', { name: /^Not opened: 1 fault left in broken\.jounce\.json$/ });
  await left.waitFor();
  await page.keyboard.press('Escape');
  await left.getByRole('button', { name: 'Close and lose the mends' }).waitFor();
  await left.getByRole('button', { name: 'Go to version in the text' }).click();
  const text = left.getByRole('textbox', { name: 'Text of the file, to be mended' });
  await text.fill((await text.inputValue()).replace('"version": "1"', '"version": 1'));
  const mended = page.getByRole('dialog', { name: /^Mended: no fault is left in broken\.jounce\.json$/ });
  await mended.waitFor();
  expect(await mended.getByRole('region', { name: 'Faults' }).innerText()).toBe(
    'No fault is left. The text beside it is what is opened.',
  );
  expect(await seriousOf(page)).toEqual([]);
  await mended.getByRole('button', { name: 'Open it, unsaved' }).click();
  await heading(page, 'Check car 21');
  await page.getByRole('img', { name: 'not saved yet' }).waitFor();

  await page.locator('.adjusters .held [role="spinbutton"]').first().press('ArrowUp');
  await page.getByRole('button', { name: /^Undo: / }).waitFor();
  await page.keyboard.press('Tab');
  await page.waitForTimeout(1000); // an edit is kept within a second
  const asked = new Promise<string>((resolve) =>
    page.once('dialog', (shown) => {
      resolve(shown.type());
      void shown.accept();
    }),
  );
  await page.reload();
  expect(await asked).toBe('beforeunload');
  await page.getByRole('dialog', { name: /without saving$/ }).waitFor();
});

test('of a file with a fault far down the text beside it stands there from the first', async () => {
  const { page } = await openWindow({ ...QUIET });
  await page.locator('tr[data-reading="camber"]').waitFor();
  const far = (await reference('car-23')).replace(/"Trial"(?![^]*"Trial")/, '"Trail"');
  const text = far.replace(/(\s*)\}\s*$/, ',$1"oops": 1 }');
  await page.evaluate(() => Object.assign(window, { showOpenFilePicker: undefined }));
  const file = { name: 'far.jounce.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await (await fileChooser(page)).setFiles(file);
  const dialog = page.getByRole('dialog', { name: /^Not opened: \d+ faults? in far\.jounce\.json$/ });
  await dialog.waitFor();
  const seen = () =>
    dialog.locator('.bad').evaluate((line) => {
      const [at, list] = [line.getBoundingClientRect(), line.closest('.scroll')?.getBoundingClientRect()];
      return list !== undefined && at.top >= list.top && at.bottom <= list.bottom;
    });
  expect(await dialog.locator('.scroll').evaluate((list) => list.scrollHeight > 2 * list.clientHeight)).toBe(true);
  await expect.poll(seen).toBe(true);
});
