import { spawn, spawnSync } from 'node:child_process';
import { cp, mkdir, readdir, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { buildCommand } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';

const ROOT = path.resolve(import.meta.dirname, '../../..');

/** A checkout whose command line says the text of a file that can be changed. */
const checkout = async (): Promise<string> => {
  const root = await temporaryFolder({ 'package.json': '{ "type": "module", "version": "0.0.0" }' });
  await cp(`${ROOT}/electron/building`, `${root}/electron/building`, { recursive: true });
  await cp(`${ROOT}/electron/jounce.cjs`, `${root}/electron/jounce.cjs`);
  await symlink(`${ROOT}/node_modules`, `${root}/node_modules`);
  await mkdir(`${root}/electron/command`);
  await mkdir(`${root}/geometry/pdf`, { recursive: true });
  // what stands beside the command line's bundle
  await writeFile(`${root}/geometry/pdf/sheetPdf.ts`, 'export {};');
  await writeFile(`${root}/electron/command/studyWorker.ts`, 'export {};');
  await writeFile(`${root}/geometry/word.ts`, `export const word: string = 'one';`);
  await writeFile(
    `${root}/electron/command/main.ts`,
    `import { word } from '../../geometry/word';\nprocess.stdout.write([word, ...process.argv.slice(2)].join(' '));\nprocess.exitCode = 7;`,
  );
  return root;
};

const run = (root: string, ...args: string[]) =>
  spawnSync(process.execPath, [`${root}/electron/jounce.cjs`, ...args], { encoding: 'utf8' });

test("a checkout runs today's sources, hands on the arguments and the status", async () => {
  const root = await checkout();
  expect(run(root, 'a', '--b')).toMatchObject({ stdout: 'one a --b', stderr: '', status: 7 });
  await writeFile(`${root}/geometry/word.ts`, `export const word: string = 'three';`);
  expect(run(root)).toMatchObject({ stdout: 'three', stderr: '', status: 7 });
  expect(run(root)).toMatchObject({ stdout: 'three', stderr: '', status: 7 });
  expect((await readdir(`${root}/build/today`)).filter((name) => name.startsWith('command-'))).toHaveLength(2);
});

test('several first calls at once all answer', async () => {
  const root = await checkout();
  const calls = Array.from(
    { length: 4 },
    () =>
      new Promise<string>((resolve) => {
        const child = spawn(process.execPath, [`${root}/electron/jounce.cjs`]);
        let said = '';
        child.stdout.on('data', (part: Buffer) => (said += part.toString()));
        child.stderr.on('data', (part: Buffer) => (said += part.toString()));
        child.once('close', () => resolve(said));
      }),
  );
  expect(await Promise.all(calls)).toEqual(['one', 'one', 'one', 'one']);
  expect((await readdir(`${root}/build/today`)).filter((name) => name.startsWith('draft-'))).toEqual([]);
});

test('an installed package, which has no sources and no tools, runs the bundle that came with it', async () => {
  const root = await temporaryFolder();
  await cp(`${ROOT}/electron/jounce.cjs`, `${root}/electron/jounce.cjs`);
  await cp(`${ROOT}/package.json`, `${root}/package.json`);
  await mkdir(`${root}/build/command`, { recursive: true });
  await buildCommand(`${root}/build/command`);
  const { stdout, stderr, status } = run(root, '--version');
  expect([stdout.trim(), stderr, status]).toEqual([expect.stringMatching(/\d+\.\d+\.\d+$/), '', 0]);
});

// Tried again when it fails: the other tests run at the same time and take turns with it.
test('an answer takes less than twice the time of an empty program plus 50 ms', { retry: 3 }, async () => {
  const [sample] = (await readdir(`${ROOT}/samples`)).filter((name) => name.endsWith('.jounce.json')).sort();
  const time = (...args: string[]): number => {
    const began = performance.now();
    const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
    expect(status).toBe(0);
    return performance.now() - began;
  };
  const answer = (): number => time(`${ROOT}/electron/jounce.cjs`, 'readings', `${ROOT}/samples/${sample}`, '--json');
  answer(); // bundles where the sources have changed
  const rounds = Array.from({ length: 9 }, () => ({ empty: time('-e', '0'), answer: answer() }));
  // The least of each: what a busy machine adds is not the program's.
  const [empty, full] = [Math.min(...rounds.map((round) => round.empty)), Math.min(...rounds.map((round) => round.answer))];
  expect(full).toBeLessThan(2 * empty + 50);
});
