import { AxeBuilder } from '@axe-core/playwright';
import { chmod, readdir, readFile, writeFile, rename } from 'node:fs/promises';
import path from 'node:path';
import type { FileChooser, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { DISK, type FileLayer } from '../../electron/files/fileLayer';
import { temporaryFolder } from '../electron/temporaryFolder';
import { motionField, openSample, type } from './bench';
import { launchDoomedChromium, openWindow } from './chromium';
import { startProgram } from './startProgram';

const ROOT = path.resolve(import.meta.dirname, '../..');
const QUIET = { viewport: { width: 1280, height: 720 }, reducedMotion: 'reduce' } as const;

const reference = (name: string): Promise<string> => readFile(path.join(ROOT, `tests/golden/cars/${name}.jounce.json`), 'utf8');

const plate = (page: Page) => page.getByRole('spinbutton', { name: /^Plate across, left and right/ });
/** What stands in a field, with a plain minus. */
const valueOf = async (page: Page): Promise<string> => (await plate(page).inputValue()).replace('−', '-');
const unsaved = (page: Page) => page.getByRole('img', { name: 'changed since it was saved' });
const heading = (page: Page, name: string) => page.getByRole('heading', { level: 1, name }).waitFor();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const choose = async (page: Page, name: string | RegExp) => {
  await press(page, 'File');
  await page.getByRole('menuitem', { name }).click();
};

/** What axe has against the page as it is, or a part of it, in both themes: serious and critical alone. */
const seriousOf = async (page: Page, part = 'html'): Promise<readonly string[]> => {
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
const fileChooser = async (page: Page): Promise<FileChooser> => {
  const stand = (): void => undefined;
  page.on('filechooser', stand);
  await page.evaluate(() => document.readyState);
  const choosing = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  return choosing.finally(() => page.off('filechooser', stand));
};

/** How many lines differ between two texts. */
const linesChanged = (before: string, after: string): number => {
  const known = new Set(before.split('\n'));
  return after.split('\n').filter((line) => !known.has(line)).length;
};

test('edit, kill server and browser, start again, recover, save, undo', async () => {
  const folder = await temporaryFolder({ 'mine.jounce.json': await reference('car-23') });
  const file = `${folder}/mine.jounce.json`;
  const original = await readFile(file, 'utf8');
  const first = await startProgram(`${folder}/state`, file);
  const doomed = await launchDoomedChromium();
  const lost = await (await doomed.browser.newContext(QUIET)).newPage();
  await lost.goto(first.address);
  await heading(lost, 'Check car 23');
  await lost.keyboard.press('Control+s');
  expect(await readFile(file, 'utf8')).toBe(original);
  await type(plate(lost), '-5');
  await unsaved(lost).waitFor();
  const copies = async () =>
    (await readdir(`${folder}/state/jounce/recovery`).catch(() => [])).filter((name) => name.endsWith('.copy'));
  await expect.poll(copies, { timeout: 10_000 }).toHaveLength(1);

  first.child.kill('SIGKILL');
  const gone = lost.getByRole('alert').filter({ hasText: 'The program behind this window ended' });
  await gone.waitFor({ timeout: 8000 });
  await type(plate(lost), '-6'); // the window itself goes on
  await lost.keyboard.press('Control+s');
  await lost.getByRole('alert').filter({ hasText: 'Nothing is lost' }).waitFor();
  const downloading = lost.waitForEvent('download');
  await gone.getByRole('button', { name: 'Download a copy' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe('mine.jounce.json');
  await doomed.kill();
  expect(await readFile(file, 'utf8')).toBe(original);

  const second = await startProgram(`${folder}/state`, file);
  const { browser } = await launchDoomedChromium();
  const page = await (await browser.newContext(QUIET)).newPage();
  await page.goto(second.address);
  const dialog = page.getByRole('dialog', { name: /^Jounce ended at .* without saving$/ });
  await dialog.waitFor();
  const said = await dialog.innerText();
  expect(said).toMatch(/A copy of Check car 23 was kept at \d\d:\d\d:\d\d, 1 change after the file was last saved/);
  expect(said).toMatch(/5 mm inboard.*Plate across.*Trial 1, new, from/s);
  expect(await seriousOf(page)).toEqual([]);
  await page.keyboard.press('Enter');
  expect(await valueOf(page)).toBe('-5');
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Trial 1');
  expect(await page.getByRole('button', { name: /^Undo: Go on with the kept copy/ }).count()).toBe(1);
  await page.keyboard.press('Control+s');
  await unsaved(page).waitFor({ state: 'detached' });
  const saved = await readFile(file, 'utf8');
  expect(saved).toContain('"Trial 1"');
  expect(linesChanged(original, saved)).toBeLessThan(12);
  await expect.poll(copies, { timeout: 10_000 }).toEqual([]);
  await page.keyboard.press('Control+z');
  await unsaved(page).waitFor();
  await page.keyboard.press('Control+s');
  await unsaved(page).waitFor({ state: 'detached' });
  expect(await readFile(file, 'utf8')).toBe(original);

  // somebody else writes the file: asked about before it is written over, however often the copy is gone on with
  const theirs = original.replace('"Check car 23"', '"Check car of hers"');
  page.on('dialog', (leaving) => void leaving.accept());
  const dialogOfCopy = page.getByRole('dialog', { name: /without saving$/ });
  for (const setting of ['-5', '-6', '-7']) {
    await type(plate(page), setting);
    await expect.poll(copies, { timeout: 10_000 }).toHaveLength(1);
    await writeFile(file, theirs);
    await page.reload();
    await dialogOfCopy.waitFor();
    expect(await dialogOfCopy.innerText()).toMatch(
      /was changed by somebody else since \(\d\d:\d\d\): saving the copy asks first/,
    );
    await page.keyboard.press('Enter');
    await expect.poll(() => valueOf(page)).toBe(setting);
  }
  await page.keyboard.press('Control+s');
  await page.getByRole('alert').filter({ hasText: 'The file was changed on the disk' }).waitFor();
  expect(await readFile(file, 'utf8')).toBe(theirs);
});

test('a file changed on the disk, read-only, in two windows: each is said, and nothing is lost', async () => {
  // what is kept of the window has a folder of its own: keeping it makes its folder anew
  const whole = await temporaryFolder({ 'cars/mine.jounce.json': await reference('car-23') });
  const folder = `${whole}/cars`;
  const file = `${folder}/mine.jounce.json`;
  const served = { stateFolder: `${whole}/state`, handed: [file] };
  const { page, complaints } = await openWindow({ ...QUIET, served });
  await heading(page, 'Check car 23');
  await type(plate(page), '-5');
  const theirs = (await readFile(file, 'utf8')).replace('"Check car 23"', '"Check car of hers"');
  await writeFile(file, theirs);
  await page.keyboard.press('Control+s');
  const changed = page.getByRole('alert').filter({ hasText: 'The file was changed on the disk' });
  expect(await changed.innerText()).toMatch(new RegExp(`“mine.jounce.json” in ${folder} was changed by somebody else`));
  expect(await readFile(file, 'utf8')).toBe(theirs);
  expect(await seriousOf(page)).toEqual([]);
  await changed.getByRole('button', { name: 'Keep mine: write it' }).click();
  await unsaved(page).waitFor({ state: 'detached' });
  expect(await readFile(file, 'utf8')).toContain('"Check car 23"');
  await writeFile(file, theirs);
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
  await changed.waitFor();
  await changed.getByRole('button', { name: 'Take theirs' }).click();
  await heading(page, 'Check car of hers');

  // with changes of one's own: which version is meant is said, and saving first, which cannot be, is not offered
  await type(plate(page), '-7');
  await writeFile(file, theirs.replace('"Check car of hers"', '"Check car of theirs"'));
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
  await changed.getByRole('button', { name: 'Take theirs' }).click();
  const asked = page.getByRole('dialog', { name: 'Your version of mine.jounce.json has changes that were not saved' });
  expect(await asked.innerText()).toMatch(/The version on the disk, written at \d\d:\d\d, is ready/);
  expect(await asked.getByRole('button', { name: 'Save and open' }).count()).toBe(0);
  await press(page, 'Keep a copy of mine, open theirs');
  await heading(page, 'Check car of theirs');
  await choose(page, /^Check car of hers/);
  await page.getByRole('dialog', { name: 'A copy of Check car of hers was put aside' }).waitFor();
  await page.keyboard.press('Escape');

  await chmod(file, 0o444);
  await type(plate(page), '-4');
  await page.keyboard.press('Control+s');
  const refused = page.getByRole('alert').filter({ hasText: 'Not saved' });
  expect(await refused.innerText()).toMatch(/may not be written.*read-only.*Nothing is lost/s);
  expect(await seriousOf(page, '.filenotices')).toEqual([]);
  await chmod(file, 0o644);
  await refused.getByRole('button', { name: 'Save again' }).click();
  await unsaved(page).waitFor({ state: 'detached' });

  // its folder gone: said, and the car is still open and still unsaved
  await rename(folder, `${folder}-away`);
  await type(plate(page), '-3');
  await page.keyboard.press('Control+s');
  const gone = page.getByRole('alert').filter({ hasText: 'Not saved' });
  expect(await gone.innerText()).toMatch(/mine\.jounce\.json.*folder.*Nothing is lost/s);
  expect([await valueOf(page), await unsaved(page).count()]).toEqual(['-3', 1]);
  await rename(`${folder}-away`, folder);
  await gone.getByRole('button', { name: 'Save again' }).click();
  await unsaved(page).waitFor({ state: 'detached' });

  const other = await openWindow({ ...QUIET, served });
  await other.page.getByRole('status').filter({ hasText: 'open in another window too' }).waitFor();
  await page.evaluate(() => window.dispatchEvent(new Event('focus')));
  await page.getByRole('status').filter({ hasText: 'open in another window too' }).waitFor();
  // a browser tells of every answer that is no 200: changed by others, read-only, folder gone
  expect(complaints.map((complaint) => /status of (\d+)/.exec(complaint)?.[1])).toEqual(['409', '500', '500']);
});

test('a full disk is said, the car stays unsaved and its copy kept; with room again it is saved', async () => {
  const folder = await temporaryFolder({ 'cars/mine.jounce.json': await reference('car-23') });
  const file = `${folder}/cars/mine.jounce.json`;
  const original = await readFile(file, 'utf8');
  let isFull = true;
  const noRoom = (): Promise<never> => Promise.reject(Object.assign(new Error('no room'), { code: 'ENOSPC' }));
  const create: FileLayer['create'] = async (place, mode) => {
    const draft = await DISK.create(place, mode);
    return isFull && path.dirname(place) === path.dirname(file) ? { ...draft, write: noRoom } : draft;
  };
  const served = { stateFolder: `${folder}/state`, handed: [file], layer: { ...DISK, create } };
  const { page } = await openWindow({ ...QUIET, served });
  await heading(page, 'Check car 23');
  await type(plate(page), '-5');
  await page.keyboard.press('Control+s');
  const refused = page.getByRole('alert').filter({ hasText: 'Not saved' });
  expect(await refused.innerText()).toMatch(/“mine\.jounce\.json” in .*cars was not written: the disk is full.*Nothing is lost/s);
  expect([await valueOf(page), await unsaved(page).count()]).toEqual(['-5', 1]);
  expect(await readdir(path.dirname(file))).toEqual(['mine.jounce.json']);
  expect(await readFile(file, 'utf8')).toBe(original);
  const copies = async () => (await readdir(`${folder}/state/recovery`)).filter((name) => name.endsWith('.copy'));
  await expect.poll(copies, { timeout: 10_000 }).toHaveLength(1);
  const [copy = ''] = await copies();
  expect(await readFile(`${folder}/state/recovery/${copy}`, 'utf8')).toContain('"Trial 1"');
  isFull = false;
  await refused.getByRole('button', { name: 'Save again' }).click();
  await unsaved(page).waitFor({ state: 'detached' });
  expect(await readFile(file, 'utf8')).toContain('"Trial 1"');
  await expect.poll(copies, { timeout: 10_000 }).toEqual([]);
});

/** Drops a file of this machine on the window as the system does, so that the browser gives the window a handle on it. */
const dropFile = async (page: Page, file: string): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  const data = { items: [], files: [file], dragOperationsMask: 1 };
  for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
    await session.send('Input.dispatchDragEvent', { type, x: 600, y: 400, data });
};

test('two windows of two programs are told of a file that the browser opened in both, and of no other', async () => {
  const [mine, other] = [await reference('car-23'), await reference('car-21')];
  const folder = await temporaryFolder({ 'mine.jounce.json': mine, 'other.jounce.json': other });
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
  const drop = () =>
    page.evaluate((content) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content], 'dropped.jounce.json', { type: 'application/json' }));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    }, text);
  await drop();
  await heading(page, 'Dropped');
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
