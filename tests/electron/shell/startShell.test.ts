import { spawn } from 'node:child_process';
import { chmod, mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { buildShell } from '../../../electron/building/products.mjs';
import { installedElectron } from '../../../electron/shell/electronProgram';
import { temporaryFolder } from '../temporaryFolder';

const WINDOW = { 'build/window/index.html': '<title>Jounce</title>', 'samples/hatch.jounce.json': '{}' };
const STARTS = `import { startShell } from './shell.js';
const root = process.argv[2];
await startShell({ root, windowFolder: root + '/build/window', shellFolder: import.meta.dirname });`;

/** A package with a built window and an electron package whose program is this shell script, or which has no program. */
const packageWith = async (program?: string): Promise<string> => {
  const electron = { 'node_modules/electron/package.json': '{ "version": "0.0.0" }' };
  const root = await temporaryFolder({ 'package.json': '{}', ...WINDOW, ...electron });
  if (program === undefined) return root;
  await writeFile(`${root}/node_modules/electron/path.txt`, 'electron');
  await mkdir(`${root}/node_modules/electron/dist`);
  await writeFile(`${root}/node_modules/electron/dist/electron`, `#!/bin/sh\n${program}\n`);
  await chmod(`${root}/node_modules/electron/dist/electron`, 0o755);
  return root;
};

/** Starts the shell as a program of its own, and ends it when the wanted words have been said or it ended by itself. */
const start = async (
  root: string,
  until: string,
  environment: Record<string, string>,
): Promise<{ said: string; status: number | null }> => {
  await mkdir(`${root}/shell`);
  await buildShell(`${root}/shell`);
  await writeFile(`${root}/shell/start.mjs`, STARTS);
  await writeFile(`${root}/shell/package.json`, '{ "type": "module" }');
  const { PATH = '', HOME = '' } = process.env;
  const env = { PATH, HOME, XDG_STATE_HOME: `${root}/state`, ELECTRON_MIRROR: 'http://127.0.0.1:9/', ...environment };
  const child = spawn(process.execPath, [`${root}/shell/start.mjs`, root], { env });
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  child.stderr.on('data', (part: Buffer) => (said += part.toString()));
  child.stdout.on('data', (part: Buffer) => {
    said += part.toString();
    if (said.includes(until)) child.kill('SIGINT');
  });
  const status = await new Promise<number | null>((resolve) => child.once('exit', resolve));
  return { said, status };
};

test('with JOUNCE_NO_OPEN the address is printed and nothing else', async () => {
  const { said, status } = await start(await packageWith(), '\n', { JOUNCE_NO_OPEN: '1', DISPLAY: ':0' });
  expect(said).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/open\?token=[\w-]{43}\n$/);
  expect(status).toBe(0);
});

test('without a display the address is printed for a person to open', async () => {
  const { said, status } = await start(await packageWith('exit 0'), 'Ctrl-C', {});
  expect(said).toMatch(
    /^No Electron window: there is no display\.\nNo browser could be opened here\. .*\n\n {2}http:\S+\n\nIt is served at http:\S+, to this machine only\./,
  );
  expect(status).toBe(0);
});

test("where Electron's program is at hand it is started with the places of the window and the samples, and waited for", async () => {
  const root = await packageWith('printf "%s\\n" "$@" > "$(dirname "$0")/called"; sleep 4');
  expect(installedElectron(root)).toBe(`${root}/node_modules/electron/dist/electron`);
  const { said, status } = await start(root, 'served at', { DISPLAY: ':0' });
  expect([said, status]).toEqual(['', 0]);
  const called = await readFile(`${root}/node_modules/electron/dist/called`, 'utf8');
  expect(called.trim().split('\n')).toEqual([
    path.join(root, 'shell/desktop.js'),
    `--window-folder=${root}/build/window`,
    `--samples-folder=${root}/samples`,
  ]);
});

test('an Electron that fails, and a Chromium that fails, are named with their last words', async () => {
  const root = await packageWith('echo "no sandbox here" >&2; exit 1');
  await writeFile(`${root}/chromium`, '#!/bin/sh\necho "no screen" >&2; exit 1\n');
  await chmod(`${root}/chromium`, 0o755);
  const empty = { PATH: `${root}/nothing`, DISPLAY: ':0', JOUNCE_CHROMIUM: `${root}/chromium` };
  const { said, status } = await start(root, 'Ctrl-C', empty);
  expect(said).toContain('No Electron window: Electron did not start (no sandbox here).\n');
  expect(said).toContain(`${root}/chromium did not start (no screen).\n`);
  expect(said).toContain('No browser could be opened here.');
  expect(status).toBe(0);
});

test("where Electron's program cannot be fetched the browser's app window opens, and the server ends with it", async () => {
  const root = await packageWith();
  await writeFile(`${root}/chromium`, '#!/bin/sh\nprintf "%s\\n" "$@" > "$(dirname "$0")/called"; sleep 3\n');
  await chmod(`${root}/chromium`, 0o755);
  const { said, status } = await start(root, 'never said', { DISPLAY: ':0', JOUNCE_CHROMIUM: `${root}/chromium` });
  expect(said).toContain("No Electron window: Electron's program is not on this machine and could not be fetched.\n");
  expect(said).toContain(`Jounce opens in an app window of ${root}/chromium.`);
  expect(await readFile(`${root}/called`, 'utf8')).toMatch(/^--app=http:\/\/127\.0\.0\.1:\d+\/open\?token=\S+\n--user-data-dir=/);
  expect(status).toBe(0);
});
