import { describe, it } from 'vitest';
import { sweepAxle, type ReadingEntry } from '../../geometry/index';
import { assembled, AXLES, carsOf, randomPositions } from './assembled';
import { Breaches } from './breaches';
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
      for (const axle of AXLES) {
        const positions = randomPositions(draw, document[axle]!, 2);
        const there = sweepAxle(other, axle, positions);
        for (const [i, row] of sweepAxle(car, axle, positions).entries()) {
          const where = `seed ${seed} ${setup} ${axle} ${JSON.stringify(positions[i])}`;
          const match = there[i];
          breaches.check(row.ok === match.ok, () => `${where}: reached ${row.ok} and ${match.ok}`);
          if (row.ok && match.ok) compareRows(breaches, row.value, match.value, where, { part: PART, turned });
        }
      }
    }
    breaches.expectNone(300_000);
  });
});
