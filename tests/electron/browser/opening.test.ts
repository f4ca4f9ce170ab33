import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { spawnSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { appWindowCommand, defaultBrowserCommand, hasDisplay } from '../../../electron/browser/browserCommand';
import { launch } from '../../../electron/browser/launch';
import { makeProfile, removeProfile } from '../../../electron/browser/profiles';
import { stateFolder } from '../../../electron/files/stateFolder';
import { temporaryFolder } from '../temporaryFolder';

const node = (script: string) => ({ program: process.execPath, args: ['-e', script] });

test('the app window has a profile of its own, and its sandbox but for root', () => {
  const { args } = appWindowCommand('/usr/bin/chromium', 'http://127.0.0.1:1/open?token=a', '/state/profile', false);
  expect(args).toContain('--app=http://127.0.0.1:1/open?token=a');
  expect(args).toContain('--user-data-dir=/state/profile');
  expect(args).not.toContain('--no-sandbox');
  expect(appWindowCommand('chromium', 'x', 'y', true).args).toContain('--no-sandbox');
});

test('each system opens an address in its own way, without a shell that would read it', () => {
  expect((['linux', 'darwin', 'win32'] as const).map((platform) => defaultBrowserCommand('http://a/?b&c', platform))).toEqual([
    { program: 'xdg-open', args: ['http://a/?b&c'] },
    { program: 'open', args: ['http://a/?b&c'] },
    { program: 'rundll32', args: ['url.dll,FileProtocolHandler', 'http://a/?b&c'] },
  ]);
});

test('a display is needed on Linux alone', () => {
  expect(hasDisplay({}, 'linux')).toBe(false);
  expect(hasDisplay({ DISPLAY: ':0' }, 'linux')).toBe(true);
  expect(hasDisplay({ WAYLAND_DISPLAY: 'wayland-0' }, 'linux')).toBe(true);
  expect(hasDisplay({}, 'darwin')).toBe(true);
});

test('a program that fails at once is known by its last words; one that stays or ends well has started', async () => {
  const failed = await launch(node('console.error("first"); console.error("no display"); process.exit(1)'), 5000);
  expect(failed).toEqual({ ok: false, reason: 'no display' });
  expect(await launch({ program: '/nowhere/program', args: [] }, 5000)).toMatchObject({ ok: false });
  expect(await launch(node('process.exit(7)'), 5000)).toEqual({ ok: false, reason: 'it ended with 7' });
  expect((await launch(node(''), 5000)).ok).toBe(true);
  const stays = await launch(node('setTimeout(() => {}, 20000)'), 300);
  expect(stays.ok).toBe(true);
  if (stays.ok) stays.child.kill();
});

test('a profile is new for each run, and what a crash left behind goes', async () => {
  const folder = await temporaryFolder();
  const { pid } = spawnSync(process.execPath, ['-e', '']);
  for (const name of [`window-profile-${pid}`, 'window-profile-1', 'recent.json'])
    await mkdir(`${folder}/state/${name}`, { recursive: true });
  const profile = await makeProfile(`${folder}/state`);
  await writeFile(`${profile}/Cookies`, '');
  // Process 1 is always there; process `pid` has ended.
  expect(await readdir(`${folder}/state`)).toEqual(['recent.json', 'window-profile-1', `window-profile-${process.pid}`].sort());
  expect(await readdir(await makeProfile(`${folder}/state`))).toEqual([]);
  await removeProfile(profile);
  expect(await readdir(`${folder}/state`)).not.toContain(`window-profile-${process.pid}`);
});

test('state is kept where each system keeps it', () => {
  expect(stateFolder({ XDG_STATE_HOME: '/state' }, 'linux', '/home/a')).toBe('/state/jounce');
  expect(stateFolder({ XDG_STATE_HOME: 'not/absolute' }, 'linux', '/home/a')).toBe('/home/a/.local/state/jounce');
  expect(stateFolder({}, 'darwin', '/Users/a')).toBe('/Users/a/Library/Application Support/jounce');
  expect(stateFolder({ LOCALAPPDATA: '/local' }, 'win32', '/a')).toBe('/local/jounce');
});
