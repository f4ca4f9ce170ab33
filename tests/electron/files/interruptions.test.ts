import { readFile, readdir, rm, utimes, writeFile } from 'node:fs/promises';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { expect, test } from 'vitest';
import { readCarFile, saveCarFile } from '../../../electron/files/carFiles';
import { FileDesk } from '../../../electron/files/fileDesk';
import type { CopyNote } from '../../../renderer/files/fileService';
import { temporaryFolder } from '../temporaryFolder';
import { failingDisk, UNFLUSHED, type Interruption } from './failingDisk';

const SEED = 20261125;
const RUNS = 1000;
const HOWS: readonly Interruption[] = ['fail', 'tear', 'stop'];
const WINDOW = '11111111-1111-4111-8111-111111111111';
const COPY = '22222222-2222-4222-8222-222222222222';

const dice = (seed: number): ((from: number, to: number) => number) => {
  const generator = xoroshiro128plus(seed);
  return (from, to) => uniformInt(generator, from, to);
};

const textOf = (roll: (from: number, to: number) => number): string =>
  `{ "name": "${'å'.repeat(roll(0, 3000))}", "revision": "${roll(0, 1e9)}" }\n`;

test(`saving: ${RUNS} interruptions leave the old or the new file whole, and a save that said yes is there (seed ${SEED})`, async () => {
  const roll = dice(SEED);
  const folder = await temporaryFolder();
  const place = `${folder}/car.jounce.json`;
  const seen = { kept: 0, replaced: 0 };
  for (let run = 0; run < RUNS; run += 1) {
    const [old, young] = [textOf(roll), textOf(roll)];
    await writeFile(place, old);
    const before = await readCarFile(place);
    if (!before.ok) throw new Error('the file is there');
    const how = HOWS[roll(0, 2)] ?? 'fail';
    const at = roll(0, 6);
    const layer = failingDisk(how, at, roll(0, 100) / 100);
    const saved = await saveCarFile(place, young, before.value.version.stamp, layer).catch(() => null);
    const now = await readFile(place, 'utf8');
    expect([old, young], `run ${run}: ${how} at ${at}`).toContain(now);
    if (saved?.ok) expect(now, `run ${run}: ${how} at ${at} said yes`).toBe(young);
    if (saved?.ok === false) expect(now, `run ${run}: ${how} at ${at} said no`).toBe(old);
    seen[now === old ? 'kept' : 'replaced'] += 1;
    if (how !== 'stop') expect(await readdir(folder), `run ${run}: ${how} at ${at}`).toEqual(['car.jounce.json']);
    else for (const name of await readdir(folder)) if (name.startsWith('.')) await rm(`${folder}/${name}`);
  }
  expect(Math.min(seen.kept, seen.replaced)).toBeGreaterThan(RUNS / 10);
});

test(`recovery copies: ${RUNS} interruptions leave the old or the new copy whole for the next start (seed ${SEED})`, async () => {
  const roll = dice(SEED + 1);
  const state = await temporaryFolder();
  const note = (keptAt: number): CopyNote => ({
    id: COPY,
    window: WINDOW,
    title: 'Car',
    name: 'car.jounce.json',
    file: null,
    sample: null,
    savedAt: null,
    keptAt,
    setup: 'Trial 1',
    against: 'Baseline',
    steps: [],
    isParked: false,
  });
  for (let run = 0; run < RUNS; run += 1) {
    const [old, young] = [textOf(roll), textOf(roll)];
    const sound = new FileDesk({ stateFolder: state, layer: UNFLUSHED });
    expect(await sound.answer('keepCopy', { note: note(run), text: old })).toEqual({ ok: true, value: null });
    const how = HOWS[roll(0, 2)] ?? 'fail';
    const at = roll(0, 7);
    const broken = new FileDesk({ stateFolder: state, layer: failingDisk(how, at, roll(0, 100) / 100) });
    const kept = await broken.answer('keepCopy', { note: note(run + 0.5), text: young }).catch(() => null);
    const next = await sound.answer('begin', { window: '33333333-3333-4333-8333-333333333333' });
    expect(next, `run ${run}: ${how} at ${at}`).toMatchObject({ ok: true, value: { copies: [{ id: COPY }] } });
    const read = (await sound.answer('readCopy', { id: COPY })) as { value: { text: string; note: CopyNote } };
    expect([old, young], `run ${run}: ${how} at ${at}`).toContain(read.value.text);
    if (kept?.ok) expect(read.value.text).toBe(young);
    expect(read.value.note.keptAt).toBe(read.value.text === old ? run : run + 0.5);
    await sound.close();
    await broken.close();
  }
});

test('a draft that a stopped program left in the recovery folder is swept away once it is old', async () => {
  const state = await temporaryFolder({ 'recovery/.x.copy.0123456789ab': 'half', 'recovery/.y.copy.ba9876543210': 'half' });
  const old = Date.now() / 1000 - 2 * 60 * 60;
  await utimes(`${state}/recovery/.x.copy.0123456789ab`, old, old);
  const desk = new FileDesk({ stateFolder: state });
  await desk.answer('begin', { window: WINDOW });
  expect(await readdir(`${state}/recovery`)).toEqual(['.y.copy.ba9876543210']);
});
