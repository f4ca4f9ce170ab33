import { describe, it } from 'vitest';
import { sweepAxle } from '../../geometry/index';
import { assembled, AXLES, carsOf, randomPositions } from './assembled';
import { Breaches } from './breaches';
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
      for (const axle of AXLES) {
        const positions = randomPositions(draw, document[axle]!, 2);
        const there = sweepAxle(other, axle, positions);
        for (const [i, row] of sweepAxle(car, axle, positions).entries()) {
          const where = `seed ${seed} ${setup} ${axle} ${JSON.stringify(positions[i])}`;
          const match = there[i];
          breaches.check(row.ok === match.ok, () => `${where}: reached ${row.ok} and ${match.ok}`);
          if (row.ok && match.ok) compareRows(breaches, row.value, match.value, where, { part: PART });
        }
      }
    }
    breaches.expectNone(300_000);
  });
});
