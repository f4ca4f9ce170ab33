import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';

/** How long the place where Electron's program is kept has to answer, ms. */
const PATIENCE_MS = 2500;

const packageFolder = (root: string): string | null => {
  try {
    return path.dirname(createRequire(path.join(root, 'package.json')).resolve('electron/package.json'));
  } catch {
    return null;
  }
};

/** Electron's program as its package keeps it, or null when it has not been fetched. */
export const installedElectron = (root: string): string | null => {
  const folder = packageFolder(root);
  if (folder === null || !existsSync(path.join(folder, 'path.txt'))) return null;
  const name = readFileSync(path.join(folder, 'path.txt'), 'utf8');
  const program = path.join(process.env['ELECTRON_OVERRIDE_DIST_PATH'] ?? path.join(folder, 'dist'), name);
  return existsSync(program) ? program : null;
};

/** Whether the place that Electron's program is fetched from answers at all: without a network this is known at once. */
const answers = async (version: string): Promise<boolean> => {
  const place = process.env['ELECTRON_MIRROR'] ?? 'https://github.com/electron/electron/releases/download/';
  try {
    const address = `${place}v${version}/SHASUMS256.txt`;
    const response = await fetch(address, { method: 'HEAD', signal: AbortSignal.timeout(PATIENCE_MS) });
    return response.ok;
  } catch {
    return false;
  }
};

/** Fetches Electron's program with the script of its own package, once. */
export const fetchElectron = async (root: string): Promise<string | null> => {
  const folder = packageFolder(root);
  if (folder === null) return null;
  const { version } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')) as { version: string };
  if (!(await answers(version))) return null;
  process.stdout.write("Fetching Electron's program, about 120 MB, this once…\n");
  const child = spawn(process.execPath, [path.join(folder, 'install.js')], { stdio: ['ignore', 'ignore', 'ignore'] });
  await new Promise((resolve) => {
    child.once('exit', resolve);
    child.once('error', resolve);
  });
  return installedElectron(root);
};
