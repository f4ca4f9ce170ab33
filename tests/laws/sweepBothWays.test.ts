import { describe, it } from 'vitest';
import { sweepCar, toRadians, type Position } from '../../geometry/index';
import { carsOf, FULL_TRAVEL, lockOf, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { compareAnswers } from './compareCars';
import { compareRows } from './compareRows';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';

/** The exactness that the solvers promise: 1e-8 mm, 1e-9 deg. */
const PART = 1e-2;

describe('a sweep', () => {
  it(`gives forward what it gives backward, in values and in what can be reached, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car } of carsOf(SEEDS)) {
      const [low, high] = lockOf(document[steeredAxle(document)]!);
      // bump at lock, steer at bump and roll at lock in turn: the ends are where a sweep may lose its way
      const motions: readonly ((t: number) => Position)[] = [
        (t) => ({ travel: FULL_TRAVEL * t, rack: high }),
        (t) => ({ travel: 40, rack: t < 0 ? -t * low : t * high }),
        (t) => ({ roll: toRadians(5 * t), rack: low }),
      ];
      const motion = motions[Math.floor(seed / 6) % motions.length];
      const positions = [-1, -0.4, 0.5, 1].map(motion);
      const back = sweepCar(car, [...positions].reverse()).reverse();
      for (const [i, answer] of sweepCar(car, positions).entries()) {
        compareAnswers(breaches, answer, back[i], `seed ${seed} ${setup} ${JSON.stringify(positions[i])}`, (row, match, where) =>
          compareRows(breaches, row, match, where, { part: PART }),
        );
      }
    }
    breaches.expectNone(450_000);
  });
});
