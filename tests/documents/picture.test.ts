import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ROOT } from '../../electron/building/products.mjs';
import { documentText } from './documents';
import { linksOf } from './markdown';

/** First and last bytes of a JPEG. */
const BEGIN = 'ffd8ff';
const END = 'ffd9';

test('the pictures are whole and small, and each is shown in the README', async () => {
  const folder = path.join(ROOT, 'samples/pictures');
  const shown = linksOf(await documentText('README.md'));
  const names = await readdir(folder);
  expect(names.length).toBeGreaterThan(0);
  for (const name of names) {
    const bytes = await readFile(path.join(folder, name));
    expect([bytes.subarray(0, 3).toString('hex'), bytes.subarray(-2).toString('hex')], name).toEqual([BEGIN, END]);
    expect(bytes.length, name).toBeLessThan(200_000);
    expect(shown).toContain(`samples/pictures/${name}`);
  }
});
