import { chmod } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { findChromium } from '../../../electron/browser/findChromium';
import { temporaryFolder } from '../temporaryFolder';

const withPrograms = async (...names: string[]): Promise<string> => {
  const folder = await temporaryFolder(Object.fromEntries(names.map((name) => [name, '#!/bin/sh\n'])));
  for (const name of names) await chmod(path.join(folder, name), 0o755);
  return folder;
};

test('the one that JOUNCE_CHROMIUM names comes before the PATH', async () => {
  const folder = await withPrograms('chromium', 'mine');
  expect(findChromium({ PATH: folder, JOUNCE_CHROMIUM: `${folder}/mine` }, 'linux')).toBe(`${folder}/mine`);
  expect(findChromium({ PATH: folder, JOUNCE_CHROMIUM: '' }, 'linux')).toBe(`${folder}/chromium`);
});

test('a JOUNCE_CHROMIUM that is no program finds nothing, whatever the PATH holds', async () => {
  const folder = await withPrograms('chromium');
  expect(findChromium({ PATH: folder, JOUNCE_CHROMIUM: `${folder}/gone` }, 'linux')).toBeNull();
});

test('the names are tried in order over the whole PATH', async () => {
  const first = await withPrograms('google-chrome');
  const second = await withPrograms('chromium-browser');
  const PATH = [first, '.', '', second].join(path.delimiter);
  expect(findChromium({ PATH }, 'linux')).toBe(`${second}/chromium-browser`);
});

test('a folder or a file that cannot be run is not a program', async () => {
  const folder = await temporaryFolder({ 'chromium/readme': '', 'chromium-browser': 'not executable' });
  expect(findChromium({ PATH: folder }, 'linux')).toBeNull();
  expect(findChromium({}, 'linux')).toBeNull();
});
