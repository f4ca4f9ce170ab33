import {
  CATALOGUE,
  numberNamesOf,
  numbersOf,
  sweepCar,
  sweepReadings,
  toRadians,
  valueInContractUnits,
  type AssembledCar,
  type AxleName,
  type CarDocument,
  type CarReadings,
  type Failure,
  type Position,
  type ReadingEntry,
  type ReadingValues,
  type Result,
  type SomeReadings,
} from '../../geometry/index';
import { assembleSetup } from './assembleBench';
import { memoLast } from './memoLast';

/** The motion that curves run over: wheel travel [mm], roll [degrees] or rack travel [mm]. */
export type CurveOver = 'bump' | 'roll' | 'steer';

/** Positions of a curve: enough that straight pieces between them are not seen. */
export const CURVE_POSITIONS = 61;

export interface CurveSpan {
  readonly over: CurveOver;
  /** the first and the last position: mm, or degrees in roll */
  readonly from: number;
  readonly to: number;
  /** where the other two motions are held; the swept one is ignored */
  readonly held: { readonly travel: number; readonly rollDeg: number; readonly rack: number };
}

/** One reading along the span, in contract units; where it has no value the number is NaN and `why` says the reason. */
export interface CurveLine {
  readonly values: Float64Array;
  readonly why: (index: number) => string | null;
}

/** The lines of one reading: one for each side, or one for the axle or the car. */
export interface ReadingCurves {
  readonly left: CurveLine;
  /** null: the reading is of the axle or the car, and `left` is its only line */
  readonly right: CurveLine | null;
}

/** One setup swept over a span. */
export interface SweptSetup {
  readonly inputs: Float64Array;
  /** by the dotted name of the reading */
  readonly curves: ReadonlyMap<string, ReadingCurves>;
}

interface Positions {
  readonly inputs: Float64Array;
  readonly positions: readonly Position[];
}

const inputAt = (from: number, to: number, index: number): number => {
  const value = from + ((to - from) * index) / (CURVE_POSITIONS - 1);
  return Math.abs(value) < 1e-9 ? 0 : value;
};

const positionAt = (over: CurveOver, input: number, travel: number, rollDeg: number, rack: number): Position => {
  const roll = toRadians(over === 'roll' ? input : rollDeg);
  const level = { travel: over === 'bump' ? input : travel, rack: over === 'steer' ? input : rack };
  return roll === 0 ? level : { ...level, roll };
};

/** The positions of a span; the same array for the same span, so that what was swept over it can be kept. */
const positionsOf = memoLast(
  (over: CurveOver, from: number, to: number, travel: number, rollDeg: number, rack: number): Positions => {
    const inputs = Float64Array.from({ length: CURVE_POSITIONS }, (_, index) => inputAt(from, to, index));
    return { inputs, positions: Array.from(inputs, (input) => positionAt(over, input, travel, rollDeg, rack)) };
  },
  8,
);

const positionsOfSpan = ({ over, from, to, held }: CurveSpan, isSteered: boolean): Positions =>
  positionsOf(
    over,
    from,
    to,
    over === 'bump' ? 0 : held.travel,
    over === 'roll' ? 0 : held.rollDeg,
    over === 'steer' || !isSteered ? 0 : held.rack,
  );

const numberOf = (entry: ReadingEntry, component: number, readings: object): number | null => {
  const value = valueInContractUnits((readings as ReadingValues)[entry.key] ?? null, entry.quantity);
  return numbersOf(entry, value)[component] ?? null;
};

/** A line read off rows that are then let go: only its numbers, and the reasons where there are none, are kept. */
const lineOf = (count: number, valueAt: (index: number) => number | null, whyAt: CurveLine['why']): CurveLine => {
  const values = new Float64Array(count);
  let reasons: (string | null)[] | null = null;
  for (let index = 0; index < count; index += 1) {
    const value = valueAt(index);
    values[index] = value ?? NaN;
    if (value === null) (reasons ??= new Array<string | null>(count).fill(null))[index] = whyAt(index);
  }
  const kept = reasons;
  return { values, why: (index) => kept?.[index] ?? null };
};

type Owner = 'left' | 'right' | 'both';

const axleLine = (
  rows: readonly Result<SomeReadings, Failure>[],
  owner: Owner,
  entry: ReadingEntry,
  component: number,
): CurveLine =>
  lineOf(
    rows.length,
    (index) => {
      const row = rows[index];
      return row?.ok ? numberOf(entry, component, row.value[owner]) : null;
    },
    (index) => {
      const row = rows[index];
      if (!row) return null;
      return row.ok ? (row.value.why[`${owner}.${entry.key}`] ?? null) : row.failure.message;
    },
  );

const carLine = (rows: readonly CarReadings[], entry: ReadingEntry): CurveLine =>
  lineOf(
    rows.length,
    (index) => (rows[index] ? numberOf(entry, 0, rows[index].wholeCar) : null),
    (index) => rows[index]?.why[entry.key] ?? null,
  );

/** The reading of a dotted name: "camber", "wheelCentre.x". */
const entryOf = (number: string): ReadingEntry | undefined => CATALOGUE.find((entry) => numberNamesOf(entry).includes(number));

/** @param names - dotted names of the readings, joined by commas: equal texts are the same question */
const sweep = memoLast((car: AssembledCar, axle: AxleName, { inputs, positions }: Positions, names: string): SweptSetup => {
  const curves = new Map<string, ReadingCurves>();
  const wanted = names.split(',').map((name) => [name, entryOf(name)] as const);
  const keys = wanted.flatMap(([, entry]) => (entry ? [entry.key] : []));
  const rows = sweepReadings(car, axle, positions, keys);
  let cars: readonly CarReadings[] | null = null;
  for (const [number, entry] of wanted) {
    if (!entry) continue;
    const component = numberNamesOf(entry).indexOf(number);
    const line = (owner: Owner) => axleLine(rows, owner, entry, component);
    if (entry.of === 'corner') curves.set(number, { left: line('left'), right: line('right') });
    else if (entry.of === 'axle') curves.set(number, { left: line('both'), right: null });
    else curves.set(number, { left: carLine((cars ??= sweepCar(car, positions)), entry), right: null });
  }
  return { inputs, curves };
}, 6);

/**
 * One axle of one setup swept over a span. The last ones are kept: while a part is turned the compared setup is not swept
 * again, and while the car moves along the span nothing is.
 * @param numbers - dotted names of the readings wanted
 * @returns the failure of the assembly where the setup cannot stand
 */
export const sweepSetup = (
  document: CarDocument,
  setup: string,
  axle: AxleName,
  span: CurveSpan,
  numbers: readonly string[],
): Result<SweptSetup, Pick<Failure, 'message'>> => {
  const car = assembleSetup(document, setup);
  if (!car.ok) return car;
  const assembled = car.value[axle];
  if (!assembled) return { ok: false, failure: { message: `this car has no ${axle} axle` } };
  const { isSteered } = assembled.left.corner;
  if (span.over === 'steer' && !isSteered) return { ok: false, failure: { message: 'this axle is not steered' } };
  return { ok: true, value: sweep(car.value, axle, positionsOfSpan(span, isSteered), numbers.join(',')) };
};
