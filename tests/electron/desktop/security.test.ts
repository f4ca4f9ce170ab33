import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';

const ROOT = path.resolve(import.meta.dirname, '../../..');
const read = (file: string): Promise<string> => readFile(path.join(ROOT, file), 'utf8');

/** `file` — `code`, and further `code` after commas. */
const CLAIM = /`([\w./-]+\.(?:ts|json))` — ((?:`[^`]+`(?:, )?)+)/g;

test('every line of code that the security checklist names is where it says', async () => {
  const rows = (await read('electron/desktop/SECURITY.md')).split('\n').filter((line) => /^\| \d/.test(line));
  expect(rows).toHaveLength(20);
  const claims = rows.flatMap((row) => [...row.matchAll(CLAIM)].map(([, file = '', codes = '']) => ({ file, codes })));
  expect(claims.length).toBeGreaterThan(18);
  for (const { file, codes } of claims) {
    const source = (await read(file)).replace(/\s+/g, ' ');
    for (const [, code = ''] of codes.matchAll(/`([^`]+)`/g)) expect(source, `${file}: ${code}`).toContain(code);
  }
});

test('what the checklist says is used nowhere is used nowhere', async () => {
  for (const name of await readdir(path.join(ROOT, 'electron/desktop'))) {
    if (!name.endsWith('.ts')) continue;
    const source = await read(`electron/desktop/${name}`);
    expect(source, name).not.toMatch(
      /allowRunningInsecureContent|enableBlinkFeatures|experimentalFeatures|openExternal|shell\b.*from 'electron'/,
    );
  }
});
