import { describe, it } from 'vitest';
import type { Position, Quantity, ReadingEntry } from '../../geometry/index';
import { assembled, carsOf, randomPositions, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { compareCars } from './compareCars';
import { compareRows } from './compareRows';
import { oneDozenIn, SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { ofSize } from './transforms';

/** What one of a quantity is in a model `size` times as large, with weights that grow with lengths and rates that stay. */
function growth(quantity: Quantity, size: number): number {
  switch (quantity) {
    case 'length':
    case 'force':
    case 'forcePerG':
      return size;
    case 'anglePerLength':
      return 1 / size;
    case 'momentPerAngle':
      return size * size;
    case 'frequency':
      return 1 / Math.sqrt(size);
    case 'angle':
    case 'anglePerAngle':
    case 'anglePerG':
    case 'ratio':
    case 'percent':
    case 'forcePerLength':
      return 1;
  }
}

/** The solvers stop at a residual in mm, which is ten times as large for a model of a tenth the size. */
const PART = { 0.1: 1e-1, 10: 1e-2 } as const;

function positionOf({ travel = 0, rack = 0, roll = 0 }: Position, size: number): Position {
  const grown = typeof travel === 'number' ? travel * size : { left: travel.left * size, right: travel.right * size };
  return { travel: grown, rack: rack * size, roll };
}

describe.each([0.1, 10] as const)('a model of %s times the size', (size) => {
  it(`has the same angles and ${size} times the lengths, one dozen in two of ${SEEDS_IN_WORDS}`, () => {
    const turned = (value: number, { quantity }: ReadingEntry): number => value / growth(quantity, size);
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(
      size < 1 ? oneDozenIn(2) : SEEDS.filter((seed) => Math.floor(seed / 12) % 2 === 1),
    )) {
      const other = assembled(ofSize(document, size), setup);
      breaches.check(other !== null, () => `seed ${seed} ${setup}: cannot be put together`);
      if (other === null) continue;
      const positions = randomPositions(draw, document[steeredAxle(document)]!, 1);
      const grown = positions.map((position) => positionOf(position, size));
      compareCars(
        breaches,
        [car, other],
        positions,
        `seed ${seed} ${setup}`,
        (row, match, where) => compareRows(breaches, row, match, where, { part: PART[size], turned }),
        grown,
      );
    }
    breaches.expectNone(100_000);
  });
});
