import { chmod, readdir, readFile, writeFile, rename } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { DISK, type FileLayer } from '../../electron/files/fileLayer';
import { temporaryFolder } from '../electron/temporaryFolder';
import { type } from './bench';
import { launchDoomedChromium, openWindow } from './chromium';
import { QUIET, choose, heading, plate, press, reference, seriousOf, unsaved, valueOf } from './filesPage';
import { startProgram } from './startProgram';

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
  const downloaded = await lost.getByRole('status').filter({ hasText: 'Downloaded' }).innerText();
  expect(downloaded).toMatch(/The file itself was not written, and the car counts as unsaved/);
  await doomed.kill();
  expect(await readFile(file, 'utf8')).toBe(original);

  const second = await startProgram(`${folder}/state`, file);
  const { browser } = await launchDoomedChromium();
  const page = await (await browser.newContext(QUIET)).newPage();
  await page.goto(second.address);
  const dialog = page.getByRole('dialog', { name: /^Jounce ended at .* without saving$/ });
  await dialog.waitFor();
  const said = await dialog.innerText();
  expect(said).toMatch(
    /A copy of Check car 23, from mine\.jounce\.json in \/.*, was kept at \d\d:\d\d:\d\d, 1 change after the file was last saved/,
  );
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
  const keptText = async (): Promise<string> => {
    const [copy] = await copies();
    return copy === undefined ? '' : readFile(`${folder}/state/jounce/recovery/${copy}`, 'utf8');
  };
  const dialogOfCopy = page.getByRole('dialog', { name: /without saving$/ });
  for (const setting of ['-5', '-6', '-7']) {
    await type(plate(page), setting);
    await expect.poll(keptText, { timeout: 10_000 }).toContain(`"plateAcross": ${setting}`);
    await writeFile(file, theirs);
    await page.reload();
    await dialogOfCopy.waitFor();
    expect(await dialogOfCopy.innerText()).toMatch(
      /was changed by somebody else since \(\d\d:\d\d\): saving the copy asks first/,
    );
    await page.keyboard.press('Enter');
    await expect.poll(() => valueOf(page)).toBe(setting);
    await heading(page, 'Check car 23'); // the copy's name, not the one that the file has by now
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
