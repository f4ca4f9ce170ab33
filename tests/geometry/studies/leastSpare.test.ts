import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  answerStudy,
  findReading,
  findSetup,
  openStudy,
  parseCar,
  shortPairWords,
  toMechanism,
  type AxleName,
  type CarDocument,
  type ClearanceRow,
  type LeastSpare,
  type QuestionDocument,
  type SetupDocument,
  type SideName,
} from '../../../geometry/index';
import { clearanceStudy } from '../../../geometry/fitup/clearance/clearance';
import { gapMeshes, leastGap } from '../../../geometry/fitup/clearance/leastGap';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { partMeshFiles } from '../../../renderer/compute/fitup/partMeshFiles';
import { sampleNamed } from '../../samples/samples';

const { document: hatch } = sampleNamed('saltmarsh-hatch');
const baseline = findSetup(hatch, 'Baseline');
const meshesOf = (document: CarDocument) => partMeshFiles(document.parts).meshes;
const SIDES: readonly SideName[] = ['left', 'right'];

/** All rows of the study of clearance in one setup, least spare first. */
function clearanceRows(document: CarDocument, setup: SetupDocument, axles: readonly AxleName[]): readonly ClearanceRow[] {
  const asked = { axles, sides: SIDES, setups: [['', setup] as const], meshes: meshesOf(document) };
  const whole = answerStudy(clearanceStudy(toMechanism(document), asked, searchMesh));
  if (!whole.ok) throw new Error(whole.failure.message);
  return whole.value.rows;
}

const gapOf = (document: CarDocument, setup: SetupDocument, axles: readonly AxleName[]) => {
  const mechanism = toMechanism(document);
  const gap = leastGap(mechanism, setup, axles, gapMeshes(mechanism, meshesOf(document), searchMesh));
  if (gap.mm === null) throw new Error(gap.why);
  return { leastGap: gap.mm, leastSpare: gap.spare };
};

/** What is said of a setup is what `clearance` says of it: the first of its rows, and its verdict. The worst is found to 0.05 mm. */
function expectAsClearance(
  { leastGap: mm, leastSpare }: { readonly leastGap: number | null; readonly leastSpare: LeastSpare | null },
  rows: readonly ClearanceRow[],
): void {
  expect(leastSpare).not.toBeNull();
  const { pair, axle, side, spare, verdict } = leastSpare!;
  const [first] = rows;
  expect(Math.abs(spare - first.spare)).toBeLessThanOrEqual(0.05);
  const of = rows.filter((row) => row.axle === axle && row.pair.join() === pair.join());
  const sides = side === 'both' ? SIDES : [side];
  for (const one of sides) {
    const row = of.find((other) => other.side === one);
    expect(row?.verdict).toBe(verdict);
    expect(Math.abs((row?.spare ?? NaN) - spare)).toBeLessThanOrEqual(1e-6);
  }
  expect(Math.abs((mm ?? NaN) - Math.min(...rows.map(({ clearance }) => clearance)))).toBeLessThanOrEqual(0.05);
}

/** A setup with the settings of an answer of one axle laid on it. */
const withSettings = (setup: SetupDocument, { front, rear }: SetupDocument): SetupDocument => ({
  ...setup,
  front: { ...setup.front, ...front, both: { ...setup.front?.both, ...front?.both } },
  rear: { ...setup.rear, ...rear, both: { ...setup.rear?.both, ...rear?.both } },
});

test('each way says the pair with the least to spare, its spare and its verdict as `clearance` has them', () => {
  const question = {
    setup: baseline,
    entry: findReading('camber')!,
    value: -1.6,
    axle: 'front',
    side: 'both',
    toeReset: undefined,
    at: {},
    pairs: false,
    withLocked: false,
    meshes: meshesOf(hatch),
  } as const;
  const made = answerStudy(openStudy({ study: 'ways', document: hatch, question }, undefined, searchMesh));
  if (!made.ok) throw new Error(made.failure.message);
  for (const way of made.value.ways)
    expectAsClearance(way, clearanceRows(hatch, withSettings(baseline, way.settings), ['front']));
  // one that does all that is wanted is short all the same, and another one is not
  const verdicts = made.value.ways.filter(({ reaches }) => reaches).map(({ leastSpare }) => leastSpare?.verdict);
  expect(verdicts).toContain('short');
  expect(verdicts.some((verdict) => verdict === 'close' || verdict === 'clear')).toBe(true);
}, 60_000);

test('an answer of reach that meets all that is wanted says that it is short, as `clearance` does', () => {
  const file = path.resolve(import.meta.dirname, '../../../samples/camber-and-roll-centre.question.json');
  const question = { ...(JSON.parse(readFileSync(file, 'utf8')) as QuestionDocument), count: 1 };
  const order = { study: 'reach', document: hatch, setup: baseline, question, meshes: meshesOf(hatch) } as const;
  const made = answerStudy(openStudy(order, undefined, searchMesh));
  if (!made.ok) throw new Error(made.failure.message);
  const [best] = made.value.answers;
  expect([best.met, best.leastSpare?.verdict]).toEqual([true, 'short']);
  expectAsClearance(best, clearanceRows(hatch, withSettings(baseline, best.settings), ['front']));

  const { parts: _, ...bare } = hatch;
  const without = answerStudy(openStudy({ ...order, document: bare }));
  if (!without.ok) throw new Error(without.failure.message);
  expect(without.value.answers[0]).toMatchObject({ leastGap: null, leastSpare: null });
}, 60_000);

describe('the least to spare', () => {
  test('is of another pair than the least gap where a farther one has to keep far more', () => {
    const sphere = { axle: 'front', on: 'body', shape: { kind: 'sphere', at: [450, 720, 330], radius: 10 }, margin: 200 };
    const parsed = parseCar(JSON.stringify({ ...hatch, parts: { ...hatch.parts, sphere } }));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
    const { document } = parsed.value;
    const rows = clearanceRows(document, baseline, ['front']);
    const nearest = rows.reduce((least, row) => (row.clearance < least.clearance ? row : least));
    const found = gapOf(document, baseline, ['front']);
    expectAsClearance(found, rows);
    expect(nearest.pair).not.toContain('sphere');
    expect(found.leastSpare?.pair).toContain('sphere');
    expect(found.leastSpare?.verdict).toBe('short');
    // the margin that it was given, and its own least distance
    const own = rows.find(({ pair }) => pair.join() === found.leastSpare?.pair.join());
    expect(own?.needs).toBe(200);
    expect(own?.clearance).toBeGreaterThan(nearest.clearance + 1);
    // and what the sphere needs changes nothing of the least gap
    expect(Math.abs(found.leastGap - gapOf(hatch, baseline, ['front']).leastGap)).toBeLessThanOrEqual(0.05);
  }, 60_000);

  test.each([[['front', 'rear']], [['rear']]] as const)('of the axles %s is that of all their rows', (axles) => {
    const sprint = findSetup(hatch, 'Sprint');
    const found = gapOf(hatch, sprint, axles);
    expect(found.leastSpare).toMatchObject({ axle: axles[0], side: 'both' });
    expectAsClearance(found, clearanceRows(hatch, sprint, axles));
  });

  // a strut whose top stands farther out has its tube nearer to the tyre
  test.each([
    [-584, 'right'],
    [-570, 'left'],
  ] as const)(
    'where the right-hand strut top is at %d mm it is that of the %s wheel',
    (y, side) => {
      const [x, , z] = hatch.front!.points['strutTop']!;
      const document: CarDocument = { ...hatch, front: { ...hatch.front!, right: { points: { strutTop: [x, y, z] } } } };
      const found = gapOf(document, baseline, ['front']);
      expect(found.leastSpare?.side).toBe(side);
      expectAsClearance(found, clearanceRows(document, baseline, ['front']));
    },
    60_000,
  );
});

describe('in words', () => {
  const style = { nameOf: (key: string) => key, length: (mm: number) => mm.toFixed(1), withAxle: false };
  const row: LeastSpare = { pair: ['tyre', 'tube'], axle: 'front', side: 'both', spare: -2.94, verdict: 'short' };
  test.each([
    [row, 'tyre – tube short by 2.9'],
    [{ ...row, side: 'right' }, 'tyre – tube (right) short by 2.9'],
    [{ ...row, spare: -0.01 }, 'tyre – tube short by a hair'],
    [{ ...row, spare: -10, verdict: 'cuts' }, 'tyre – tube cut into each other'],
    [{ ...row, spare: 0.1, verdict: 'not-proved' }, 'tyre – tube not proved to keep its margin'],
    [{ ...row, spare: 1, verdict: 'close' }, null],
    [{ ...row, spare: 9, verdict: 'clear' }, null],
  ] as const)('%o: %s', (spare, words) => {
    expect(shortPairWords(spare, style)).toBe(words);
  });

  test('the axle comes first where more than one is asked about', () => {
    expect(shortPairWords(row, { ...style, withAxle: true })).toBe('front tyre – tube short by 2.9');
  });
});
