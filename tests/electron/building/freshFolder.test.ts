import { existsSync } from 'node:fs';
import { readFile, readdir, rename, rm, utimes, writeFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { FreshFolder, stampOf } from '../../../electron/building/freshFolder.cjs';
import { temporaryFolder } from '../temporaryFolder';

const sources = () => temporaryFolder({ 'a/one.ts': '1', 'a/deep/two.ts': '2', 'b.json': '{}' });
const stamp = (root: string): string => stampOf(root, ['a', 'b.json', 'c']);

test('the stamp stays while nothing changes, and changes when a file is written, added, renamed or removed', async () => {
  const root = await sources();
  const stamps = [stamp(root)];
  expect(stamp(root)).toBe(stamps[0]);
  const changes = [
    () => writeFile(`${root}/a/deep/two.ts`, '22'),
    () => utimes(`${root}/a/one.ts`, 1000, 1000), // same size, written again
    () => writeFile(`${root}/a/deep/three.ts`, ''),
    () => rename(`${root}/a/deep/three.ts`, `${root}/a/deep/four.ts`),
    () => rm(`${root}/b.json`),
    () => writeFile(`${root}/c`, ''),
  ];
  for (const change of changes) {
    await change();
    stamps.push(stamp(root));
  }
  expect(new Set(stamps).size).toBe(changes.length + 1);
  expect(stamps.every((text) => /^[0-9a-z]{14}$/.test(text))).toBe(true);
});

test('it is made once for the same sources and anew for others', async () => {
  const root = await sources();
  let made = 0;
  const make = (folder: string): Promise<void> => writeFile(`${folder}/main.js`, String((made += 1)));
  const first = await new FreshFolder(root, 'thing', ['a']).ensure(make);
  expect(await new FreshFolder(root, 'thing', ['a']).ensure(make)).toBe(first);
  await writeFile(`${root}/a/one.ts`, 'changed');
  const second = await new FreshFolder(root, 'thing', ['a']).ensure(make);
  expect([made, await readFile(`${first}/main.js`, 'utf8'), await readFile(`${second}/main.js`, 'utf8')]).toEqual([2, '1', '2']);
});

test('one that fails leaves nothing behind and is tried again', async () => {
  const root = await sources();
  const fresh = new FreshFolder(root, 'thing', ['a']);
  await expect(fresh.ensure(() => Promise.reject(new Error('a slip in the source')))).rejects.toThrow('a slip in the source');
  expect([fresh.isThere, await readdir(`${root}/build/today`)]).toEqual([false, []]);
  await fresh.ensure((folder) => writeFile(`${folder}/main.js`, ''));
  expect(fresh.isThere).toBe(true);
});

test('where another program was first, its folder is used', async () => {
  const root = await sources();
  const mine = new FreshFolder(root, 'thing', ['a']);
  const folder = await mine.ensure(async (draft) => {
    await writeFile(`${draft}/main.js`, 'mine');
    const other = new FreshFolder(root, 'thing', ['a']);
    await rename(draft, `${draft}-aside`); // as if the other had a draft of its own
    await other.ensure((otherDraft) => writeFile(`${otherDraft}/main.js`, 'other'));
    await rename(`${draft}-aside`, draft);
  });
  expect(await readFile(`${folder}/main.js`, 'utf8')).toBe('other');
});

test('what is older than a day goes when something new is made', async () => {
  const root = await sources();
  const old = await new FreshFolder(root, 'thing', ['a']).ensure((folder) => writeFile(`${folder}/main.js`, ''));
  await utimes(old, 1000, 1000);
  await writeFile(`${root}/a/one.ts`, 'changed');
  await new FreshFolder(root, 'thing', ['a']).ensure((folder) => writeFile(`${folder}/main.js`, ''));
  expect(existsSync(old)).toBe(false);
});
