import {
  CATALOGUE,
  findReading,
  numbersOf,
  sweepCsvLines,
  toDegrees,
  type AxleName,
  type Radians,
  type ReadingEntry,
  type Sweep,
  type SweptRow,
} from '../../../geometry/index';
import type { CurveLine, ReadingCurves, SweptSetup } from '../../compute/curves';
import type { PlainTable } from '../../lengths/lengthTables';
import { shownQuantity, shownReading, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import type { SweptInputs } from './sweepForm';

type SweptAxle = Sweep['axles'][number];
type Owner = 'left' | 'right' | 'both' | 'wholeCar';

/** One column of the table. */
export interface SweepColumn {
  readonly axle: AxleName | 'wholeCar';
  readonly owner: Owner;
  readonly entry: ReadingEntry;
  readonly shown: ShownQuantity;
}

/** The columns of the readings chosen: left and right, or one; those of the whole car once. */
export const sweepColumns = (keys: readonly string[], axles: readonly AxleName[], units: ShownUnits): readonly SweepColumn[] => {
  const entries = keys.flatMap((key) => findReading(key) ?? []).filter(({ components }) => components === undefined);
  const ofAxles = axles.flatMap((axle) =>
    entries.flatMap((entry): SweepColumn[] => {
      if (entry.of === 'car') return [];
      const owners: readonly Owner[] = entry.of === 'corner' ? ['left', 'right'] : ['both'];
      return owners.map((owner) => ({ axle, owner, entry, shown: shownReading(entry, units) }));
    }),
  );
  const ofCar = entries
    .filter(({ of }) => of === 'car')
    .map((entry): SweepColumn => ({ axle: 'wholeCar', owner: 'wholeCar', entry, shown: shownReading(entry, units) }));
  return [...ofAxles, ...ofCar];
};

/** One number of where the car was put in each row of a list. */
export interface PlaceColumn {
  readonly name: string;
  readonly shown: ShownQuantity;
  /** mm, or degrees of roll */
  readonly values: readonly number[];
}

/** Where the rows of a list put the car: travel, apart where left and right differ, and what of rack and roll is not always zero. */
export const placeColumns = ({ unit, positions }: SweptInputs, units: ShownUnits): readonly PlaceColumn[] => {
  if (unit !== '1') return [];
  const length = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const sideOf = (side: 'left' | 'right') =>
    positions.map(({ travel = 0 }) => (typeof travel === 'number' ? travel : travel[side]));
  const [left, right] = [sideOf('left'), sideOf('right')];
  const isApart = left.some((value, index) => value !== right[index]);
  const travels = isApart
    ? [
        { name: 'travel left', shown: length, values: left },
        { name: 'travel right', shown: length, values: right },
      ]
    : [{ name: 'travel', shown: length, values: left }];
  const roll = positions.map((position) => toDegrees((position.roll ?? 0) as Radians));
  const others = [
    { name: 'rack', shown: length, values: positions.map(({ rack = 0 }) => rack) },
    { name: 'roll', shown: shownQuantity({ quantity: 'angle', decimals: 2 }, units), values: roll },
  ].filter(({ values }) => values.some((value) => value !== 0));
  return [...travels, ...others];
};

const rowOf = ({ axles }: Sweep, axle: SweepColumn['axle'], index: number): SweptRow | undefined =>
  axles.find((one) => one.axle === axle)?.rows[index];

/** The number of a column at a position, in contract units; null where there is none. */
export const valueOf = (sweep: Sweep, { axle, owner, entry }: SweepColumn, index: number): number | null => {
  if (axle === 'wholeCar' || owner === 'wholeCar') return single(sweep.wholeCar[index]?.values[entry.key]);
  const row = rowOf(sweep, axle, index);
  return row && !('error' in row) ? single(row[owner][entry.key]) : null;
};
const single = (value: unknown): number | null => (typeof value === 'number' ? value : null);

/** Why a position has no values at all: "front: …"; null where it has some. */
export const failureAt = ({ axles }: Sweep, index: number): string | null => {
  const failed = axles.flatMap(({ axle, rows }) => {
    const row = rows[index];
    return row && 'error' in row ? [{ axle, message: row.error.message }] : [];
  });
  if (failed.length < axles.length || failed.length === 0) return null;
  return [...new Set(failed.map(({ axle, message }) => (axles.length > 1 ? `${axle}: ${message}` : message)))].join('; ');
};

/** How many positions cannot be reached by any of the axles. */
export const failedCount = (sweep: Sweep, count: number): number =>
  Array.from({ length: count }, (_, index) => failureAt(sweep, index)).filter((failure) => failure !== null).length;

/** One axle of a sweep as curves: what has no value is a gap with its reason. */
export const curvesOf = ({ rows }: SweptAxle, wholeCar: Sweep['wholeCar'], inputs: readonly number[]): SweptSetup => {
  const line = (owner: 'left' | 'right' | 'both', entry: ReadingEntry): CurveLine => ({
    values: Float64Array.from(rows, (row) =>
      'error' in row ? NaN : (numbersOf(entry, row[owner][entry.key] ?? null)[0] ?? NaN),
    ),
    why: (index) => {
      const row = rows[index];
      if (!row) return null;
      return 'error' in row ? row.error.message : (row.why[`${owner}.${entry.key}`] ?? null);
    },
  });
  const carLine = (entry: ReadingEntry): CurveLine => ({
    values: Float64Array.from(wholeCar, ({ values }) => single(values[entry.key]) ?? NaN),
    why: (index) => wholeCar[index]?.why[entry.key] ?? null,
  });
  const curves = CATALOGUE.filter(({ components }) => components === undefined).map((entry): [string, ReadingCurves] => [
    entry.key,
    entry.of === 'corner'
      ? { left: line('left', entry), right: line('right', entry) }
      : { left: entry.of === 'axle' ? line('both', entry) : carLine(entry), right: null },
  ]);
  return { inputs: Float64Array.from(inputs), curves: new Map(curves) };
};

/** All readings as CSV, to the letter what the command line writes for the same sweep. */
export const sweepCsv = (sweep: Sweep, { inputs, unit }: SweptInputs, isOneAxle: boolean): string => {
  const axles = sweep.axles.map(({ axle, rows }) => ({ axle, rows, prefix: isOneAxle ? '' : `${axle}.` }));
  const wholeCar = isOneAxle ? null : sweep.wholeCar.map(({ values }) => values);
  return [...sweepCsvLines(inputs, unit, axles, wholeCar)].join('');
};

/** The readings chosen as they are copied: full numbers in the units shown. */
export const sweepPlainTable = (
  sweep: Sweep,
  inputs: readonly number[],
  head: string,
  columns: readonly SweepColumn[],
  toShown: (input: number) => number,
  places: readonly PlaceColumn[] = [],
): PlainTable => ({
  heads: [
    head,
    ...places.map(({ name, shown }) => `${name} [${shown.unit}]`),
    ...columns.map(({ axle, owner, entry, shown }) => {
      const whose = axle === 'wholeCar' ? 'car' : owner === 'both' ? axle : `${axle} ${owner}`;
      return `${entry.name}, ${whose}${shown.unit === '' ? '' : ` [${shown.unit}]`}`;
    }),
    'reason',
  ],
  rows: inputs.map((input, index) => [
    toShown(input),
    ...places.map(({ shown, values }) => shown.toShown(values[index] ?? 0)),
    ...columns.map((column) => {
      const value = valueOf(sweep, column, index);
      return value === null ? null : column.shown.toShown(value);
    }),
    failureAt(sweep, index) ?? '',
  ]),
});
