import { describe, it } from 'vitest';
import { sweepAxle, toRadians, type Position } from '../../geometry/index';
import { AXLES, carsOf, FULL_TRAVEL, lockOf } from './assembled';
import { Breaches } from './breaches';
import { compareRows } from './compareRows';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';

/** The exactness that the solvers promise: 1e-8 mm, 1e-9 deg. */
const PART = 1e-2;

describe('a sweep', () => {
  it(`gives forward what it gives backward, in values and in what can be reached, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car } of carsOf(SEEDS)) {
      for (const axle of AXLES) {
        const [low, high] = lockOf(document[axle]!);
        // bump at lock and steer at bump in turn: the ends are where a sweep may lose its way
        const motions: readonly ((t: number) => Position)[] = [
          (t) => ({ travel: FULL_TRAVEL * t, rack: high }),
          (t) => ({ travel: 40, rack: t < 0 ? -t * low : t * high }),
          (t) => ({ roll: toRadians(5 * t), rack: low }),
        ];
        const motion = motions[seed % motions.length];
        const positions = Array.from({ length: 5 }, (_, i) => motion((i - 2) / 2));
        const back = sweepAxle(car, axle, [...positions].reverse()).reverse();
        for (const [i, row] of sweepAxle(car, axle, positions).entries()) {
          const other = back[i];
          const where = `seed ${seed} ${setup} ${axle} ${JSON.stringify(positions[i])}`;
          breaches.check(row.ok === other.ok, () => `${where}: reached ${row.ok} forward and ${other.ok} back`);
          if (row.ok && other.ok) compareRows(breaches, row.value, other.value, where, { part: PART });
        }
      }
    }
    breaches.expectNone(500_000);
  });
});
