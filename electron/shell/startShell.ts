/**
 * `npm start`: the desktop window. Electron where its program is at hand or can be fetched; otherwise the same built
 * window, served on the loopback address and opened in a browser's app window. The terminal says which.
 */
import path from 'node:path';
import { stateFolder } from '../files/stateFolder';
import { hasDisplay } from '../browser/browserCommand';
import { launch } from '../browser/launch';
import { serveWindow } from '../serve/serveWindow';
import { fetchElectron, installedElectron } from './electronProgram';
import { openInBrowser } from './openInBrowser';

export interface ShellPlaces {
  /** The package. */
  readonly root: string;
  readonly windowFolder: string;
  /** Where this program and Electron's scripts were built. */
  readonly shellFolder: string;
  /** Car files to open, absolute: the only ones that a served window may read and write by itself. */
  readonly files?: readonly string[];
}

/** Electron fails within this time when it cannot run here, ms. */
const ELECTRON_PATIENCE_MS = 3000;

const say = (line: string): void => void process.stdout.write(`${line}\n`);

/** Runs the window in Electron and resolves when it ends; the reason when it cannot run here. */
const runElectron = async (places: ShellPlaces): Promise<string | null> => {
  if (!hasDisplay()) return 'there is no display';
  const program = installedElectron(places.root) ?? (await fetchElectron(places.root));
  if (program === null) return "Electron's program is not on this machine and could not be fetched";
  const script = path.join(places.shellFolder, 'desktop.js');
  const named = [`--window-folder=${places.windowFolder}`, `--samples-folder=${path.join(places.root, 'samples')}`];
  const args = [script, ...named, ...(places.files ?? []).map((file) => `--open=${file}`)];
  const started = await launch({ program, args }, ELECTRON_PATIENCE_MS);
  if (!started.ok) return `Electron did not start (${started.reason})`;
  if (started.child.exitCode === null) await new Promise((resolve) => started.child.once('exit', resolve));
  return null;
};

export const startShell = async (places: ShellPlaces): Promise<void> => {
  const isPrintOnly = process.env['JOUNCE_NO_OPEN'] === '1';
  const reason = isPrintOnly ? null : await runElectron(places);
  if (!isPrintOnly && reason === null) return;
  const state = stateFolder();
  const server = await serveWindow({
    windowFolder: places.windowFolder,
    samplesFolder: path.join(places.root, 'samples'),
    stateFolder: state,
    handed: places.files ?? [],
  });
  process.once('SIGINT', server.close);
  process.once('SIGTERM', server.close);
  if (isPrintOnly) {
    say(server.openAddress);
    await server.ended;
    return;
  }
  say(`No Electron window: ${reason}.`);
  await openInBrowser(server, state, say);
};
