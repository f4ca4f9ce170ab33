import { existsSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../electron/building/products.mjs';
import { DOCUMENTS, documentText, withFreshOutputs, withFreshSections } from './documents';
import { anchorsOf, linksOf } from './markdown';

/** Every command of a document is a process of its own. */
const PATIENCE = 300_000;

describe.each(DOCUMENTS)('%s', (name) => {
  test('what is made from the program is up to date: npm run docs', async () => {
    const text = await documentText(name);
    expect(await withFreshSections(text)).toBe(text);
  });

  test(
    'its commands run and answer what stands beside them',
    async () => {
      const text = await documentText(name);
      expect(await withFreshOutputs(text)).toBe(text);
    },
    PATIENCE,
  );

  test('its links lead somewhere', async () => {
    const dead: string[] = [];
    for (const link of linksOf(await documentText(name))) {
      if (/^https:\/\//.test(link)) continue;
      const [file = '', anchor] = link.split('#');
      const target = file === '' ? name : path.posix.join(path.posix.dirname(name), file);
      if (!existsSync(path.join(ROOT, target))) dead.push(link);
      else if (anchor !== undefined && !anchorsOf(await documentText(target)).includes(anchor)) dead.push(link);
    }
    expect(dead).toEqual([]);
  });
});
