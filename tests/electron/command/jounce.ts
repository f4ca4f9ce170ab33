import { spawn } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { FreshFolder, SOURCES } from '../../../electron/building/freshFolder.cjs';
import { buildCommand, ROOT } from '../../../electron/building/products.mjs';

export const CARS = path.join(ROOT, 'tests/golden/cars');
export const carPath = (number: number): string => path.join(CARS, `car-${number}.jounce.json`);

/** A value read from JSON, to be looked into without knowing its form. */
export type Json = { readonly [key: string]: Json } & readonly Json[] & (string | number | boolean | null);

export const readJsonFile = async (file: string): Promise<Json> => JSON.parse(await readFile(file, 'utf8')) as Json;

export interface Ended {
  readonly status: number | null;
  readonly signal: string | null;
  readonly stdout: string;
  readonly stderr: string;
}

let built: Promise<string> | null = null;

/** The command line bundled from today's sources: the file that node runs. */
export const builtCommand = (): Promise<string> => {
  built ??= new FreshFolder(ROOT, 'command', SOURCES.command).ensure(buildCommand).then((folder) => path.join(folder, 'main.js'));
  return built;
};

interface Surroundings {
  readonly stdin?: string | Uint8Array;
  readonly folder?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs the built command line to its end. */
export async function jounce(words: readonly string[], { stdin = '', folder, env = {} }: Surroundings = {}): Promise<Ended> {
  const main = await builtCommand();
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [main, ...words], { cwd: folder, env: { ...process.env, ...env } });
    const stdout: Buffer[] = [];
    const stderr: Buffer[] = [];
    child.stdout.on('data', (piece: Buffer) => stdout.push(piece));
    child.stderr.on('data', (piece: Buffer) => stderr.push(piece));
    child.on('error', reject);
    child.on('close', (status, signal) =>
      resolve({ status, signal, stdout: Buffer.concat(stdout).toString(), stderr: Buffer.concat(stderr).toString() }),
    );
    // a command that does not read its input closes it early
    child.stdin.on('error', () => undefined);
    child.stdin.end(stdin);
  });
}

/** Runs it with `--json` and reads the one document that it prints. */
export async function jounceJson(
  words: readonly string[],
  surroundings: Surroundings = {},
): Promise<Ended & { readonly document: Json }> {
  const ended = await jounce([...words, '--json'], surroundings);
  return { ...ended, document: JSON.parse(ended.stdout) as Json };
}

/** Runs a batch of these lines (objects, or texts as they are) and reads its answers. */
export async function jounceBatch(
  lines: readonly (object | string)[],
  words: readonly string[] = [],
): Promise<Ended & { readonly answers: readonly Json[] }> {
  const stdin = lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n');
  const ended = await jounce(['batch', ...words], { stdin });
  const answers = ended.stdout
    .split('\n')
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Json);
  return { ...ended, answers };
}
