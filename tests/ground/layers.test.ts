import { ESLint } from 'eslint';
import { expect, test } from 'vitest';

const eslint = new ESLint({ overrideConfigFile: 'eslint.config.js' });

/** What lint says about a text as if it stood in that file. The files exist, since typed rules need a project that holds them. */
const lint = async (file: string, text: string): Promise<string[]> => {
  const [result] = await eslint.lintText(text, { filePath: file });
  return (result?.messages ?? []).map(({ message }) => message);
};

test.each([
  ['geometry/core/vector.ts', `import { x } from '../car/document';`, 'geometry/core/ holds no domain words'],
  ['geometry/core/vector.ts', `import { Matrix } from 'ml-matrix';`, 'matrices come from geometry/core/linear'],
  ['geometry/core/vector.ts', `import { readFileSync } from 'node:fs';`, 'imports only itself'],
  ['geometry/car/document.ts', `import { x } from '../../renderer/state/store';`, 'geometry/ is pure'],
  ['geometry/car/document.ts', `export { x } from 'three';`, 'geometry/ is pure'],
  ['geometry/car/document.ts', `export const x = () => import('node:fs');`, 'geometry/ is pure'],
  ['geometry/car/document.ts', `export type X = import('../../electron/browser/findChromium').X;`, 'geometry/ is pure'],
  ['geometry/pdf/sheetPdf.ts', `import { x } from '../core/vector';`, 'geometry/pdf/ may not import geometry/core/vector'],
  ['geometry/pdf/sheetPdf.ts', `import { readFileSync } from 'node:fs';`, 'neither Node nor the screen'],
  ['geometry/sheet/printedSheet.ts', `export { sheetPdf } from '../pdf/sheetPdf';`, 'geometry/ is pure'],
  ['electron/browser/findChromium.ts', `import { length } from '../../geometry/core/vector';`, 'geometry/index, the only door'],
  ['electron/browser/findChromium.ts', `import { x } from '../../renderer/state/store';`, 'renderer/files/fileService'],
  ['geometry/car/document.ts', `export const x = Math.pow(2, 0.5);`, 'Math.pow differs between engines'],
  ['geometry/car/document.ts', `export const x = Math.hypot(2, 0.5);`, 'use length from geometry/core/vector'],
  ['geometry/car/document.ts', `export const x = 2 ** 0.5;`, 'Powers differ between engines'],
  ['geometry/car/document.ts', `export const x = Math.random();`, 'seeded sampling'],
  ['geometry/car/document.ts', `export const x = Date.now();`, 'knows no clock'],
  ['geometry/car/document.ts', `console.log(1);`, 'prints nothing'],
  ['geometry/car/document.ts', `export const x = (a: number) => (a * Math.PI) / 180;`, 'geometry/core/angle.ts only'],
  ['geometry/car/document.ts', `export const x = (a: number) => a * 0.017453292519943295;`, 'geometry/core/angle.ts only'],
  ['geometry/car/document.ts', `export default 1;`, 'Named exports only'],
  ['geometry/car/document.ts', `export * from '../core/vector';`, 'no `export *`'],
  ['electron/browser/findChromium.ts', `const x = 1; export { x as default };`, 'Named exports only'],
  ['tests/ground/layers.test.ts', `import { test } from 'vitest'; test.skip('x', () => {});`, 'Every test runs'],
])('lint refuses in %s: %s', async (file, text, door) => {
  expect((await lint(file, text)).join('\n')).toContain(door);
});

test('lint lets each layer import what it may', async () => {
  expect(
    await lint(
      'geometry/car/document.ts',
      `export { length } from '../core/vector';\nexport { parseTree } from 'jsonc-parser';\n`,
    ),
  ).toEqual([]);
  expect(
    await lint('electron/browser/findChromium.ts', `export { x } from '../../geometry/index';\nexport { a } from 'node:fs';\n`),
  ).toEqual([]);
});

test('a comment cannot switch a rule off', async () => {
  const text = '/* eslint-' + 'disable */ export const x = Math.random();';
  expect((await lint('geometry/car/document.ts', text)).join('\n')).toContain('seeded sampling');
});
