import { describe, it } from 'vitest';
import { CATALOGUE, type AxleRow, type CarDocument, type Position, type ReadingEntry } from '../../geometry/index';
import type { SetupAxleDocument } from '../../geometry/car/document';
import { assembled, AXLES, carsOf, documentsOf, randomPositions, steeredAxle } from './assembled';
import { Breaches } from './breaches';
import { compareCars } from './compareCars';
import { SEEDS, SEEDS_IN_WORDS } from './randomCars';
import { mirrored } from './transforms';

type Values = Readonly<Record<string, number | readonly number[] | null>>;

/** Readings that change sign in a mirror; of points, the y. */
const TURNED = ['steerAngle', 'rollCentreOffset'];
const turn = (value: number, { key, components }: ReadingEntry, i: number): number =>
  TURNED.includes(key) || components?.[i] === 'y' ? -value : value;
/** −0 is 0. */
const same = (a: number, b: number): boolean => a === b;

const swapped = ({ travel = 0, rack = 0, roll = 0 }: Position): Position => ({
  travel: typeof travel === 'number' ? travel : { left: travel.right, right: travel.left },
  rack: -rack,
  roll: -roll,
});

/** Compares what one row says of a side with what its mirror image says of the other, to the last bit. */
function compareMirrored(breaches: Breaches, row: AxleRow, image: AxleRow, where: string): void {
  for (const [owner, other] of [
    ['left', 'right'],
    ['right', 'left'],
    ['both', 'both'],
  ] as const) {
    const [one, two] = [row[owner] as unknown as Values, image[other] as unknown as Values];
    for (const entry of CATALOGUE) {
      if (entry.of !== (owner === 'both' ? 'axle' : 'corner')) continue;
      const [a, b] = [one[entry.key], two[entry.key]];
      const list = (value: number | readonly number[] | null): readonly number[] =>
        value === null ? [] : typeof value === 'number' ? [value] : value;
      const [as, bs] = [list(a), list(b)];
      const holds = as.length === bs.length && as.every((value, i) => same(value, turn(bs[i], entry, i)));
      breaches.check(holds, () => `${where} ${owner}.${entry.key}: ${JSON.stringify(a)} and ${JSON.stringify(b)}`);
    }
  }
}

/** The left-hand side on both sides; a rack along Y, for any other is not symmetrical. */
function symmetrical(document: CarDocument): CarDocument {
  const half = { ...document };
  for (const axle of AXLES) {
    const { right: _, ...left } = document[axle]!;
    half[axle] = left.steering === undefined ? left : { ...left, steering: { ...left.steering, axis: [0, 1, 0] } };
  }
  const whole = ({ left: _, right: __, barHole, ...both }: SetupAxleDocument): SetupAxleDocument =>
    barHole === undefined ? both : { ...both, barHole: typeof barHole === 'object' ? barHole.left : barHole };
  const { Set: set, Stance: stance } = document.setups!;
  return {
    ...half,
    body: { ...half.body, leftShare: 0.5 },
    masses: [],
    setups: {
      Set: { front: whole(set.front!), rear: whole(set.rear!) },
      Stance: { front: whole(stance.front!), rear: whole(stance.rear!) },
    },
  };
}

describe('left and right', () => {
  it(`of a symmetrical car agree to the last bit, ride heights and roll the other way included, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, draw } of documentsOf(SEEDS)) {
      const car = assembled(symmetrical(document), Math.floor(seed / 12) % 4 === 1 ? 'Stance' : 'Set');
      if (car === null) continue;
      const positions = randomPositions(draw, document[steeredAxle(document)]!, 1);
      compareCars(
        breaches,
        [car, car],
        positions,
        `seed ${seed}`,
        (row, image, where) => compareMirrored(breaches, row, image, where),
        positions.map(swapped),
      );
    }
    breaches.expectNone(150_000);
  });

  it(`change places to the last bit in the mirror image of any car, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS)) {
      const other = assembled(mirrored(document), setup);
      breaches.check(other !== null, () => `seed ${seed} ${setup}: the mirror image cannot be put together`);
      if (other === null) continue;
      const positions = randomPositions(draw, document[steeredAxle(document)]!, 1);
      compareCars(
        breaches,
        [car, other],
        positions,
        `seed ${seed} ${setup}`,
        (row, image, where) => compareMirrored(breaches, row, image, where),
        positions.map(swapped),
      );
    }
    breaches.expectNone(150_000);
  });
});
