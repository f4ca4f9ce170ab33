import { readFileSync } from 'node:fs';
import {
  assembleCar,
  findSetup,
  parseCar,
  sweepAxle,
  toMechanism,
  toRadians,
  type AxleName,
  type AxleRow,
  type CarDocument,
  type Failure,
  type PerSide,
  type Position,
  type Result,
} from '../../geometry/index';

export const GOLDEN_CARS = ['car-21', 'car-22', 'car-23', 'car-24'] as const;

export type ExpectedReadings = Readonly<Record<string, number | readonly number[] | null>>;

/** One row of an expectation: lengths in mm, angles in degrees. Which motion carries which numbers: cars/README.md. */
export interface ExpectedRow {
  readonly setup: string;
  readonly axle: AxleName;
  readonly motion: 'bump' | 'steer' | 'roll' | 'combined';
  readonly input?: number;
  readonly position?: { readonly travel: PerSide<number>; readonly rack: number; readonly roll: number };
  readonly travel: PerSide<number>;
  readonly left: ExpectedReadings;
  readonly right: ExpectedReadings;
  readonly both: ExpectedReadings;
}

const read = (name: string): string => readFileSync(new URL(`cars/${name}.json`, import.meta.url), 'utf8');

export const goldenText = (car: string): string => read(`${car}.jounce`);
export const goldenDocument = (car: string): CarDocument => JSON.parse(goldenText(car)) as CarDocument;
export const goldenRows = (car: string): readonly ExpectedRow[] => JSON.parse(read(`${car}.expected`)) as ExpectedRow[];

/** The position that a row of an expectation was made at. */
export function positionOf({ motion, input, position }: ExpectedRow): Position {
  switch (motion) {
    case 'bump':
      return { travel: input };
    case 'steer':
      return { rack: input };
    case 'roll':
      return { roll: toRadians(input!) };
    case 'combined': {
      const { travel, rack, roll } = position!;
      return { travel: roll === 0 ? travel : travel.left, rack, roll: toRadians(roll) };
    }
  }
}

/** Rows in the order of the expectations, each setup × axle swept in one go, as the program reads them from a file. */
export function solvedRows(
  document: CarDocument,
  rows: readonly ExpectedRow[],
  positionFor = positionOf,
): (Result<AxleRow, Failure> | undefined)[] {
  const parsed = parseCar(JSON.stringify(document));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.failure.faults));
  const mechanism = toMechanism(parsed.value.document);
  const solved: (Result<AxleRow, Failure> | undefined)[] = rows.map(() => undefined);
  for (const setup of new Set(rows.map((row) => row.setup))) {
    const car = assembleCar(mechanism, findSetup(document, setup));
    if (!car.ok) throw new Error(`${setup}: ${car.failure.message}`);
    for (const axle of ['front', 'rear'] as const) {
      const own = rows.flatMap((row, index) => (row.setup === setup && row.axle === axle ? [index] : []));
      const answers = sweepAxle(
        car.value,
        axle,
        own.map((index) => positionFor(rows[index])),
      );
      own.forEach((index, i) => (solved[index] = answers[i]));
    }
  }
  return solved;
}

export const titleOf = ({ setup, axle, motion, input, position }: ExpectedRow): string =>
  `${setup} ${axle} ${motion} ${input ?? JSON.stringify(position)}`;
