import { describe, it } from 'vitest';
import type { ReadingEntry } from '../../geometry/index';
import { assembled, carsOf, randomPositions, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { compareCars } from './compareCars';
import { compareRows } from './compareRows';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { withOriginMoved } from './transforms';

const MOVED = { x: 1234.5, y: 0, z: 321 };
/** A thousandth of what two solvers may differ by. */
const PART = 1e-3;

/** Coordinates move with the origin; nothing else does. */
const turned = (value: number, { components }: ReadingEntry, i: number): number =>
  components === undefined ? value : value - MOVED[components[i]];

describe('the origin of coordinates', () => {
  it(`moves no reading but coordinates when it moves by ${MOVED.x} mm in X and ${MOVED.z} mm in Z, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      const other = assembled(withOriginMoved(document, MOVED.x, MOVED.z), setup);
      breaches.check(other !== null, () => `seed ${seed} ${setup}: cannot be put together there`);
      if (other === null) continue;
      const positions = randomPositions(draw, document[steeredAxle(document)]!, 1);
      compareCars(breaches, [car, other], positions, `seed ${seed} ${setup}`, (row, match, where) =>
        compareRows(breaches, row, match, where, { part: PART, turned }),
      );
    }
    breaches.expectNone(150_000);
  });
});
