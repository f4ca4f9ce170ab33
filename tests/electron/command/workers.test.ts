import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { cp, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { temporaryFolder } from '../temporaryFolder';
import { builtCommand, jounce, jounceBatch, jounceJson } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const stretch = { motion: 'bump', from: -30, to: 30, steps: 5 };
/** 4,641 combinations over a stretch: more than a moment's work, so that threads are started. */
const QUESTION = {
  setToe: true,
  wanted: [
    { reading: 'camber', axle: 'front', side: 'both', value: -2.6, tolerance: 0.05 },
    { reading: 'toe', axle: 'front', side: 'both', over: stretch, change: true, range: [-0.02, 0.02], tolerance: 0.01 },
  ],
  may: ['plateAcross', 'plateAlong', 'rearBush'].map((adjuster) => ({ axle: 'front', adjuster })),
};
const MAP = [
  '--x',
  'front.both.plateAcross',
  '--y',
  'front.both.clampBolt',
  '--reading',
  'front.left.camber',
  '--nx',
  '120',
  '--ny',
  '90',
];

describe('a long study', () => {
  test('has the same answer to the last bit with 1, 2 and 7 workers', async () => {
    const folder = await temporaryFolder();
    const file = path.join(folder, 'question.json');
    await writeFile(file, JSON.stringify(QUESTION));
    for (const words of [
      ['reach', HATCH, file],
      ['map', HATCH, ...MAP],
      ['ways', HATCH, 'camber=-2.4', '--axle', 'front', '--pairs', '--toe-reset'],
    ]) {
      const answer = (workers: string) => jounce([...words, '--json', '--workers', workers]);
      const [one, two, seven] = [await answer('1'), await answer('2'), await answer('7')];
      expect(one.status, one.stderr).toBe(0);
      expect(two.stdout).toBe(one.stdout);
      expect(seven.stdout).toBe(one.stdout);
    }
  }, 180_000);

  test('is worked out by other threads, and one that ends is said', async () => {
    const folder = path.join(await temporaryFolder(), 'command');
    await cp(path.dirname(await builtCommand()), folder, { recursive: true });
    await writeFile(path.join(folder, 'studyWorker.js'), "throw new Error('this thread is no good');");
    const run = async (workers: string): Promise<{ readonly status: number | null; readonly said: string }> => {
      const child = spawn(process.execPath, [path.join(folder, 'main.js'), 'map', HATCH, ...MAP, '--workers', workers]);
      const said: Buffer[] = [];
      child.stderr.on('data', (piece: Buffer) => said.push(piece));
      child.stdout.resume();
      const [status] = (await once(child, 'close')) as [number | null];
      return { status, said: Buffer.concat(said).toString() };
    };
    // where one is all there may be too: the thread that hears Ctrl-C does not do the work
    for (const workers of ['2', '1'])
      expect(await run(workers)).toEqual({ status: 3, said: 'jounce: jounce failed: this thread is no good\n' });
  });

  test.each(['3', '1'])(
    'ends at once by Ctrl-C, its threads too: %s',
    async (workers) => {
      const words = ['map', HATCH, ...MAP.slice(0, -4), '--nx', '1000', '--ny', '900', '--workers', workers];
      const child = spawn(process.execPath, [await builtCommand(), ...words], { stdio: 'ignore' });
      await new Promise((resolve) => setTimeout(resolve, 1500));
      const asked = performance.now();
      child.kill('SIGINT');
      const [status] = (await once(child, 'close')) as [number | null];
      expect(status).toBe(130);
      // at once, as far as a busy machine lets it
      expect(performance.now() - asked).toBeLessThan(5000);
    },
    60_000,
  );

  test('a search that takes seconds at a time ends at once too, with one worker', async () => {
    const file = path.join(await temporaryFolder(), 'question.json');
    const adjusters = ['plateAcross', 'plateAlong', 'rearBush', 'clampBolt', 'rodShim'];
    const over = { ...stretch, steps: 41 };
    const wanted = [QUESTION.wanted[0], { ...QUESTION.wanted[1], over }];
    await writeFile(
      file,
      JSON.stringify({ ...QUESTION, wanted, may: adjusters.map((adjuster) => ({ axle: 'front', adjuster })) }),
    );
    const words = ['reach', HATCH, file, '--workers', '1'];
    const child = spawn(process.execPath, [await builtCommand(), ...words], { stdio: 'ignore' });
    await new Promise((resolve) => setTimeout(resolve, 2000));
    expect(child.exitCode).toBeNull();
    const asked = performance.now();
    child.kill('SIGINT');
    const [status] = (await once(child, 'close')) as [number | null];
    expect(status).toBe(130);
    // a tenth of a second on a machine of its own
    expect(performance.now() - asked).toBeLessThan(1000);
  }, 60_000);
});

test('the number of workers is a whole number from 1 to 64, in a batch too', async () => {
  for (const workers of ['0', '65', '1.5', 'many']) {
    const { status, document } = await jounceJson(['influence', HATCH, '--workers', workers]);
    expect(status).toBe(2);
    expect(String(document['error']?.['message'])).toContain('--workers');
  }
  const ask = { car: HATCH, ask: 'reach' };
  const { answers } = await jounceBatch([
    { ...ask, id: 1, options: { question: QUESTION, workers: 1 } },
    { ...ask, id: 2, options: { question: QUESTION, workers: 2 } },
    { ...ask, id: 3, options: { question: QUESTION, workers: 0 } },
  ]);
  expect(answers[1]?.['answer']).toEqual(answers[0]?.['answer']);
  expect(String(answers[2]?.['error']?.['message'])).toContain('"workers"');
});
