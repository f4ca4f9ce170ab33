import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar, toDegrees, type CarDocument, type Vector } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { placeSetup } from '../../../renderer/compute/placeSetup';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import {
  askedSetups,
  clearanceOrder,
  jointsOrder,
  loadsOrder,
  meshesOfCar,
  strokeOrder,
} from '../../../renderer/fitup/fitUpQuestion';
import { jounceJson, type Json } from '../../electron/command/jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
/** To this every number of the page is that of the command line. */
const SAME = 1e-9;

const listOf = (value: Json | undefined): readonly Json[] => (value ?? []) as readonly Json[];
const valueOf = <Value>(result: { ok: true; value: Value } | { ok: false; failure: { message: string } }): Value => {
  if (!result.ok) throw new Error(result.failure.message);
  return result.value;
};

/** Whether two answers say the same, every number to `SAME`. */
const differences = (mine: unknown, theirs: unknown, at = ''): readonly string[] => {
  if (typeof mine === 'number' && typeof theirs === 'number')
    return Math.abs(mine - theirs) <= SAME * Math.max(1, Math.abs(theirs)) ? [] : [`${at}: ${mine} and ${theirs}`];
  if (typeof mine === 'object' && mine !== null && typeof theirs === 'object' && theirs !== null)
    return [...new Set([...Object.keys(mine), ...Object.keys(theirs)])].flatMap((key) =>
      differences((mine as Record<string, unknown>)[key], (theirs as Record<string, unknown>)[key], `${at}.${key}`),
    );
  return mine === theirs ? [] : [`${at}: ${String(mine)} and ${String(theirs)}`];
};

let document: CarDocument;
beforeAll(() => {
  const read = parseCar(readFileSync(HATCH, 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  document = read.value.document;
});

describe('the page of fit-up answers as the command line does', () => {
  test('clearance: rows, envelopes and what would clear them, with the meshes of the file', async () => {
    const { meshes, faults } = meshesOfCar(document);
    expect(faults).toEqual([]);
    const order = clearanceOrder(document, 'front', 'both', askedSetups(document, []), meshes);
    const told: string[] = [];
    const mine = valueOf(answerFitUp(order, searchMesh, ({ doing, done, of }) => told.push(`${doing} ${done}/${of}`)));
    const { document: theirs } = await jounceJson(['clearance', HATCH, '--axle', 'front']);
    expect(mine.rows.length).toBeGreaterThan(20);
    expect(mine.rows.some(({ wouldClear }) => wouldClear.length > 0)).toBe(true);
    expect(differences(mine.rows, theirs['rows'])).toEqual([]);
    expect(differences(mine.envelope, theirs['envelope'])).toEqual([]);
    expect(told.some((words) => words.startsWith('looking at every pair 0/'))).toBe(true);
  }, 120_000);

  test('joints: tilt, spare and place', async () => {
    const order = jointsOrder(document, 'front', askedSetups(document, []));
    const mine = valueOf(answerFitUp(order, searchMesh));
    const { document: theirs } = await jounceJson(['joints', HATCH, '--axle', 'front']);
    const rows = listOf(theirs['rows']);
    expect(mine.rows.length).toBe(rows.length);
    expect(rows.length).toBeGreaterThan(3);
    mine.rows.forEach((row, index) => {
      const other = rows[index]!;
      expect([row.point, row.side]).toEqual([other['point'], other['side']]);
      expect(differences(toDegrees(row.tilt!), other['tilt'])).toEqual([]);
      expect(differences(row.at, other['at'])).toEqual([]);
      expect(differences(row.bestBolt, other['bestBolt'])).toEqual([]);
      expect(differences(toDegrees(row.tiltThen!), other['tiltThen'])).toEqual([]);
    });
    expect(differences(mine.warnings, theirs['warnings'])).toEqual([]);
  }, 60_000);

  test('stroke: damper, spring, spans, threads', async () => {
    const order = strokeOrder(document, 'front', askedSetups(document, []));
    const mine = valueOf(answerFitUp(order, searchMesh));
    const { document: theirs } = await jounceJson(['stroke', HATCH, '--axle', 'front']);
    const rows = listOf(theirs['rows']);
    expect(mine.rows.length).toBe(rows.length);
    mine.rows.forEach((row, index) => {
      for (const key of [
        'standing',
        'bumpLeft',
        'solidLeft',
        'droopLeft',
        'looseAt',
        'bindAt',
        'looseLeft',
        'bindLeft',
        'spans',
        'threads',
      ] as const)
        expect(differences(row[key], rows[index]![key], `${row.setup} ${row.side} ${key}`)).toEqual([]);
    });
    expect(differences(mine.warnings, theirs['warnings'])).toEqual([]);
  }, 60_000);

  test('loads: axial forces, ends, residual', async () => {
    const [setup] = askedSetups(document, []);
    const mine = valueOf(answerFitUp(loadsOrder(document, 'front', setup![0], setup![1], 10, 5, 0), searchMesh));
    const { document: theirs } = await jounceJson([
      'loads', HATCH, '--axle', 'front', '--setup', setup![0], '--travel', '10', '--rack', '5',
    ]); // prettier-ignore
    const cases = listOf(theirs['cases']);
    expect(mine.cases.length).toBe(cases.length);
    mine.cases.forEach((one, index) => {
      const rows = listOf(cases[index]!['rows']);
      expect(differences(one.rows.map(({ axial }) => axial), rows.map((row) => row['axial']))).toEqual([]); // prettier-ignore
      expect(differences(one.residual, cases[index]!['residual'])).toEqual([]);
    });
  }, 60_000);
});

describe('the parts as they are drawn', () => {
  const distanceTo = (point: Vector, at: Vector): number => Math.hypot(point[0] - at[0], point[1] - at[1], point[2] - at[2]);

  test.each(['left', 'right'] as const)('in roll they stand where the readings have the wheel: %s', (side) => {
    const [setup] = askedSetups(document, []);
    const at = { travel: 6, from: 'standing', rack: 9, rollDeg: -2 } as const;
    const order = { job: 'drawn', document, setup: setup!, axle: 'front', side, at, meshes: {} } as const;
    const { parts } = valueOf(answerFitUp(order, searchMesh));
    const placed = placeSetup(document, setup![0], 'front', at)![side];
    const rod = placed.rods.find(({ name }) => name === 'tieRod')!;
    const [shape] = parts.find(({ name }) => name === 'tieRod')!.shapes;
    if (shape?.kind !== 'capsule') throw new Error('a rod is drawn as a capsule');
    const ends = [distanceTo(shape.from, rod.inner), distanceTo(shape.to, rod.outer)];
    expect(Math.max(...ends)).toBeLessThan(1e-6);
    const level = placeSetup(document, setup![0], 'front', { ...at, rollDeg: 0 })![side];
    expect(Math.abs(level.wheelCentre[2] - placed.wheelCentre[2])).toBeGreaterThan(10);
  });

  test('both points of the worst gap lie on what is drawn of the two', () => {
    const { meshes } = meshesOfCar(document);
    const setups = askedSetups(document, []);
    const { rows } = valueOf(answerFitUp(clearanceOrder(document, 'front', 'both', setups, meshes), searchMesh));
    let looked = 0;
    for (const row of rows.slice(0, 40)) {
      const setup = setups.find(([name]) => name === row.at.setup)!;
      const { parts } = valueOf(
        answerFitUp(
          { job: 'drawn', document, setup, axle: 'front', side: row.side, at: { ...row.at, from: 'design' }, meshes },
          searchMesh,
        ),
      );
      row.pair.forEach((name, index) => {
        const point = row.points[index]!;
        const part = parts.find((one) => one.name === name)!;
        const off = Math.min(
          ...part.shapes.map((shape) => {
            switch (shape.kind) {
              case 'sphere':
                return Math.abs(distanceTo(point, shape.at) - shape.radius);
              case 'capsule': {
                const way = shape.to.map((value, i) => value - shape.from[i]!) as unknown as Vector;
                const size = way[0] ** 2 + way[1] ** 2 + way[2] ** 2;
                const along = way.reduce((sum, value, i) => sum + value * (point[i]! - shape.from[i]!), 0) / size;
                const share = Math.min(1, Math.max(0, along));
                const near = shape.from.map((value, i) => value + share * way[i]!) as unknown as Vector;
                return Math.abs(distanceTo(point, near) - shape.radius);
              }
              default:
                return NaN;
            }
          }),
        );
        if (Number.isNaN(off)) return;
        looked += 1;
        expect(off, `${name}, ${row.side}`).toBeLessThan(1e-4);
      });
    }
    expect(looked).toBeGreaterThan(10);
  }, 120_000);
});
