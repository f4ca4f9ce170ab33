import { describe, it } from 'vitest';
import { assembled, carsOf, randomPositions, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { compareCars } from './compareCars';
import { compareRows } from './compareRows';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { inInches } from './transforms';

/** A thousandth of what two solvers may differ by. */
const PART = 1e-3;

describe('a file in inches', () => {
  it(`reads as the same file in millimetres, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      const other = assembled(inInches(document), setup);
      breaches.check(other !== null, () => `seed ${seed} ${setup}: cannot be put together in inches`);
      if (other === null) continue;
      const positions = randomPositions(draw, document[steeredAxle(document)]!, 1);
      compareCars(breaches, [car, other], positions, `seed ${seed} ${setup}`, (row, match, where) =>
        compareRows(breaches, row, match, where, { part: PART }),
      );
    }
    breaches.expectNone(150_000);
  });
});
