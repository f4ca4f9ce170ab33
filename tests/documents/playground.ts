import { spawn } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ROOT, buildLibrary } from '../../electron/building/products.mjs';

/** Copied instead of linked: what a command of a document may write to or read by its real place. */
const COPIED = ['package.json', 'samples'];
const LEFT_OUT = ['build', '.git'];

export interface Ran {
  readonly status: number | null;
  /** standard output and standard error as they came */
  readonly output: string;
}

/** A folder that looks like a checkout, for the commands of one document. */
export interface Playground {
  readonly folder: string;
  readonly run: (command: string) => Promise<Ran>;
  /** Builds the library from today's sources into it, for `import 'jounce/geometry'`. */
  readonly addLibrary: () => Promise<void>;
  /** Starts what does not end by itself, waits for words in its output, ends it, and gives what it said. */
  readonly start: (command: string, until: RegExp) => Promise<string>;
  readonly remove: () => Promise<void>;
}

/** Makes one. Its command line is the checkout's; a left-over build of the library is not in it. */
export async function makePlayground(): Promise<Playground> {
  const folder = await mkdtemp(path.join(tmpdir(), 'jounce-documents-'));
  for (const name of await readdir(ROOT)) {
    if (COPIED.includes(name)) await cp(path.join(ROOT, name), path.join(folder, name), { recursive: true });
    else if (!LEFT_OUT.includes(name) && !name.startsWith('build')) await symlink(path.join(ROOT, name), path.join(folder, name));
  }
  return {
    folder,
    run: (command) => run(folder, command),
    addLibrary: async () => {
      const library = path.join(folder, 'build/geometry');
      await mkdir(library, { recursive: true });
      await buildLibrary(library);
    },
    start: (command, until) => start(folder, command, until),
    remove: () => rm(folder, { recursive: true, force: true }),
  };
}

/** No browser is opened, nothing is coloured, and npm talks of nothing but the script. */
const SURROUNDINGS = { JOUNCE_NO_OPEN: '1', NO_COLOR: '1', npm_config_update_notifier: 'false' };

const shell = (folder: string, command: string) =>
  spawn('bash', ['-e', '-o', 'pipefail', '-c', `exec 2>&1\n${command}`], {
    cwd: folder,
    env: { ...process.env, ...SURROUNDINGS },
    stdio: ['ignore', 'pipe', 'inherit'],
    detached: true, // a group of its own, to be ended with everything that it started
  });

function run(folder: string, command: string): Promise<Ran> {
  const child = shell(folder, command);
  const pieces: Buffer[] = [];
  child.stdout.on('data', (piece: Buffer) => pieces.push(piece));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => resolve({ status, output: Buffer.concat(pieces).toString() }));
  });
}

function start(folder: string, command: string, until: RegExp): Promise<string> {
  const child = shell(folder, command);
  const endGroup = (): void => void (child.pid !== undefined && child.exitCode === null && process.kill(-child.pid, 'SIGINT'));
  let said = '';
  return new Promise((resolve, reject) => {
    child.stdout.on('data', (piece: Buffer) => {
      said += piece.toString();
      if (until.test(said)) endGroup();
    });
    child.on('error', reject);
    child.on('close', () => (until.test(said) ? resolve(said) : reject(new Error(`${command} said only: ${said}`))));
  });
}
