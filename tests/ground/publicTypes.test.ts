import { expect, test } from 'vitest';
import { emitTypes } from '../../electron/building/products.mjs';
import { temporaryFolder } from '../electron/temporaryFolder';
import { describeTypes } from './describeTypes';

const ON_PURPOSE =
  'The public types of geometry/ changed, and programs that use the library are built on them. If that is meant, say so in CHANGELOG.md and run `npx vitest run tests/ground/publicTypes -u`';

test('the public types are those that were agreed, and need no other package', async () => {
  const folder = await temporaryFolder();
  await emitTypes(folder);
  const types = describeTypes(folder);
  expect(types).not.toMatch(/import\(|\bz\.|\b(Matrix|ZodType|Buffer|HTMLElement|NodeJS)\b/);
  await expect(types, ON_PURPOSE).toMatchFileSnapshot('public-types.snap');
});

test('a change of a type that is only reached shows, a comment or the order of files does not', async () => {
  const describe = async (files: Record<string, string>): Promise<string> => describeTypes(await temporaryFolder(files));
  const index = `export { length, type Row } from './core.js';`;
  const core = `import type { Inner } from './inner.js';\nexport type Row = { inner: Inner };\nexport declare const length: (row: Row) => number;\ndeclare const hidden: 1;\nexport {};`;
  const before = await describe({ 'index.d.ts': index, 'core.d.ts': core, 'inner.d.ts': 'export interface Inner { a: number }' });
  expect(before).toContain('interface Inner');
  expect(before).not.toContain('hidden');
  const same = { 'index.d.ts': `/** why */\nexport { type Row, length } from './core.js';`, 'core.d.ts': core };
  expect(await describe({ ...same, 'inner.d.ts': '/** mm */ export interface Inner { a: number }' })).toBe(before);
  expect(await describe({ ...same, 'inner.d.ts': 'export interface Inner { a: string }' })).not.toBe(before);
});
