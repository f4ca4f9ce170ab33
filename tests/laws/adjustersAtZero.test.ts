import { describe, it } from 'vitest';
import { sweepAxle, type AxleRow, type CarDocument, type Position } from '../../geometry/index';
import type { AdjusterDocument, AxleDocument, SideSettings, Triple } from '../../geometry/car/document';
import { assembled, AXLES, axlesApart, documentsOf, randomPositions } from './assembled';
import { Breaches } from './breaches';
import { compareRows } from './compareRows';
import { oneDozenIn, SEEDS, SEEDS_IN_WORDS } from './randomCars';

/** The same adjustments added up in another order: the last bits. */
const ROUNDING = 1e-3;

/** All adjusters of an axle at their zero; an offset bushing has none, so a concentric one is fitted. */
function zeros(axle: AxleDocument): SideSettings {
  return Object.fromEntries(
    Object.entries(axle.adjusters ?? {}).map(([name, { kind }]) => [name, kind === 'offset-bushing' ? null : 0]),
  );
}

const bitsOf = ({ left, right, both }: AxleRow): string =>
  JSON.stringify([left, right, both], (_, value: unknown) => (value === 0 ? 0 : value));

/** A car with its setup "Design" replaced. */
const withDesign = (
  document: CarDocument,
  axle: 'front' | 'rear',
  both: SideSettings,
  adjusters?: Readonly<Record<string, AdjusterDocument>>,
): CarDocument => ({
  ...document,
  [axle]: {
    ...document[axle]!,
    ...(adjusters === undefined ? {} : { adjusters: { ...document[axle]!.adjusters, ...adjusters } }),
  },
  setups: { ...document.setups, Design: { [axle]: { both } } },
});

/** The rows of an axle, each on its own; null where the car cannot be put together. */
function rowsOf(document: CarDocument, axle: 'front' | 'rear', positions: readonly Position[]): (AxleRow | null)[] | null {
  const car = assembled(axlesApart(document), 'Design');
  return car === null ? null : sweepAxle(car, axle, positions).map((row) => (row.ok ? row.value : null));
}

/** Two ways of saying one thing: they have the same rows. */
function compareCars(
  breaches: Breaches,
  one: CarDocument,
  other: CarDocument,
  axle: 'front' | 'rear',
  positions: readonly Position[],
  where: string,
  except?: readonly string[],
): void {
  const [rows, others] = [rowsOf(one, axle, positions), rowsOf(other, axle, positions)];
  breaches.check((rows === null) === (others === null), () => `${where}: only one of the two can be put together`);
  if (rows === null || others === null) return;
  for (const [i, row] of rows.entries()) {
    const twin = others[i];
    const here = `${where} ${JSON.stringify(positions[i])}`;
    breaches.check((row === null) === (twin === null), () => `${here}: only one of the two is reached`);
    if (row !== null && twin !== null) compareRows(breaches, row, twin, here, { part: ROUNDING, except });
  }
}

describe('adjusters', () => {
  it(`at zero are as if they were not there, to the last bit, ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, draw } of documentsOf(SEEDS)) {
      const axle = draw.pick(AXLES);
      const positions = randomPositions(draw, document[axle]!, 1);
      const { adjusters: _, toeAdjuster, ...bare } = document[axle]!;
      // an unsteered axle's steering axis is that of its toe adjuster, so it keeps that one
      const kept =
        toeAdjuster === undefined ? {} : { adjusters: { [toeAdjuster]: document[axle]!.adjusters![toeAdjuster] }, toeAdjuster };
      const without = rowsOf({ ...document, [axle]: { ...bare, ...kept }, setups: { Design: {} } }, axle, positions);
      const atZero = rowsOf(withDesign(document, axle, zeros(document[axle]!)), axle, positions);
      for (const [i, row] of (without ?? []).entries()) {
        const other = atZero?.[i] ?? null;
        const same = row === null || other === null ? row === other : bitsOf(row) === bitsOf(other);
        breaches.check(same, () => `seed ${seed} ${axle} ${JSON.stringify(positions[i])}`);
      }
    }
    breaches.expectNone(1400);
  });

  it(`do the same in whatever order the file lists them, one dozen in three of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, draw } of documentsOf(oneDozenIn(3))) {
      const axle = draw.pick(AXLES);
      const both = document.setups!['Set'][axle]!.both ?? {};
      const reversed = {
        ...document,
        [axle]: { ...document[axle]!, adjusters: Object.fromEntries(Object.entries(document[axle]!.adjusters!).reverse()) },
      };
      const turned = Object.fromEntries(Object.entries(both).reverse());
      compareCars(
        breaches,
        withDesign(document, axle, both),
        withDesign(reversed, axle, turned),
        axle,
        randomPositions(draw, document[axle]!, 2),
        `seed ${seed} ${axle}`,
      );
    }
    breaches.expectNone(40_000);
  });

  it(`that move one point in one seat add up, one dozen in three of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, draw } of documentsOf(oneDozenIn(3))) {
      const axle = draw.pick(AXLES);
      const moves = document[axle]!.layout === 'strut' ? 'armRear' : Object.values(document[axle]!.rods!)[0][0];
      const seat = draw.pick(['body', 'arm'] as const);
      const along: Triple = [0.6, 0, 0.8];
      const slide: AdjusterDocument = { kind: 'slide', moves, along, seat, range: [-9, 9], step: 0.1 };
      const [a, b] = [draw.between(-4, 4), draw.between(-4, 4)];
      const pair = { first: slide, second: { ...slide, along: [-0.6, 0, -0.8] as const } };
      compareCars(
        breaches,
        withDesign(document, axle, { first: a, second: b }, pair),
        withDesign(document, axle, { first: a - b }, pair),
        axle,
        randomPositions(draw, document[axle]!, 2),
        `seed ${seed} ${axle} ${moves} in ${seat}`,
      );
    }
    breaches.expectNone(40_000);
  });

  it(`that move an inner point in body and arm alike are that point elsewhere in the file, one dozen in three of ${SEEDS_IN_WORDS}`, () => {
    const breaches = new Breaches();
    for (const { seed, document, draw } of documentsOf(oneDozenIn(3))) {
      const axle = draw.pick(AXLES);
      const moves = document[axle]!.layout === 'strut' ? 'armFront' : Object.values(document[axle]!.rods!)[1][0];
      const by = draw.between(-8, 8);
      const slide: AdjusterDocument = { kind: 'slide', moves, along: [0, 0, 1], range: [-9, 9], step: 0.1 };
      const shifted = (points: Readonly<Record<string, Triple>>): Record<string, Triple> => ({
        ...points,
        ...(points[moves] === undefined ? {} : { [moves]: [points[moves][0], points[moves][1], points[moves][2] + by] as const }),
      });
      const { right, points } = document[axle]!;
      const elsewhere = {
        ...document,
        [axle]: {
          ...document[axle]!,
          points: shifted(points),
          ...(right?.points === undefined ? {} : { right: { ...right, points: shifted(right.points) } }),
        },
      };
      compareCars(
        breaches,
        withDesign(
          document,
          axle,
          { inBody: by, inArm: by },
          { inBody: { ...slide, seat: 'body' }, inArm: { ...slide, seat: 'arm' } },
        ),
        withDesign(elsewhere, axle, {}),
        axle,
        randomPositions(draw, document[axle]!, 2),
        `seed ${seed} ${axle} ${moves}`,
      );
    }
    breaches.expectNone(40_000);
  });
});
