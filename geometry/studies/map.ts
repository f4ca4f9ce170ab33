import type { AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { realSettings, stepScaleOf } from '../adjusters/stepScale';
import { toRadians } from '../core/angle';
import type { Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import type { ReadingEntry } from '../readings/readingEntry';
import { sweepCar, sweepReadings } from '../readings/readings';
import type { Position } from '../readings/rows';
import { assembleCar, type AssembledCar } from '../setup/assembleCar';
import { settingOf, withSetting, type Sides } from '../setup/setupEdits';
import { answerStudy, roundOf, type Study } from './study';

/** What is varied along one side of a map. */
export type MapAxis =
  | { readonly kind: 'adjuster'; readonly axle: AxleName; readonly side: Sides; readonly name: string }
  | { readonly kind: 'travel' | 'rack' | 'roll'; readonly from: number; readonly to: number };

export interface MapQuestion {
  /** toe reset included */
  readonly setup: SetupDocument;
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly nx: number;
  readonly ny: number;
  readonly entry: ReadingEntry;
  readonly axle: AxleName | 'wholeCar';
  readonly owner: 'left' | 'right' | 'both' | 'wholeCar';
  /** what is not varied; travel and rack in mm, roll in degrees */
  readonly at: { readonly travel: number; readonly rack: number; readonly roll: number };
}

export interface MapAnswer {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** ny rows of nx, in contract units; null where there is no value */
  readonly z: readonly (readonly (number | null)[])[];
  /** "row,column" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
  /** where the parts can really stand; null along a motion */
  readonly steps: { readonly x: readonly number[] | null; readonly y: readonly number[] | null };
  /** where the setup stands, and the reading there */
  readonly now: { readonly x: number | null; readonly y: number | null; readonly z: number | null };
}

/** The values along an axis: from one end of the range to the other, both included. */
function valuesAlong(mechanism: CarMechanism, axis: MapAxis, count: number): readonly number[] {
  const [from, to] = axis.kind === 'adjuster' ? rangeOf(mechanism, axis) : [axis.from, axis.to];
  return Array.from({ length: count }, (_, index) => (count === 1 ? from : from + ((to - from) * index) / (count - 1)));
}

const rangeOf = (
  { document }: CarMechanism,
  { axle, name }: Extract<MapAxis, { kind: 'adjuster' }>,
): readonly [number, number] => {
  const adjuster = document[axle]?.adjusters?.[name];
  if (adjuster === undefined) throw new RangeError(`The ${axle} axle has no adjuster "${name}".`);
  const { min, max } = stepScaleOf(adjuster);
  return [min, max];
};

const stepsAlong = ({ document }: CarMechanism, axis: MapAxis): readonly number[] | null => {
  if (axis.kind !== 'adjuster') return null;
  const adjuster = document[axis.axle]?.adjusters?.[axis.name];
  return adjuster === undefined ? null : realSettings(stepScaleOf(adjuster));
};

type Cell = { readonly value: number } | { readonly why: string };

/** Columns of a map that one chunk works out: each is one x. */
const COLUMNS = 4;

/**
 * One reading over a grid of two things.
 * @returns the failure of the setup itself where it cannot be put together; a place without value has its reason in `why`
 */
export const map = (mechanism: CarMechanism, question: MapQuestion): Result<MapAnswer, Failure> =>
  answerStudy(mapStudy(mechanism, question));

export function mapStudy(mechanism: CarMechanism, question: MapQuestion): Study<MapAnswer> {
  const x = valuesAlong(mechanism, question.x, question.nx);
  const y = valuesAlong(mechanism, question.y, question.ny);
  const started = assembleCar(mechanism, question.setup);
  return {
    failure: started.ok ? null : started.failure,
    round: () =>
      roundOf<readonly (readonly Cell[])[], MapAnswer>({
        doing: 'drawing the map',
        chunks: Math.ceil(x.length / COLUMNS),
        run: (chunk) => x.slice(chunk * COLUMNS, (chunk + 1) * COLUMNS).map((value) => columnAt(mechanism, question, value, y)),
        merge: (parts) => ({ answer: mapOf(mechanism, question, x, y, parts.flat()) }),
      }),
  };
}

function mapOf(
  mechanism: CarMechanism,
  question: MapQuestion,
  x: readonly number[],
  y: readonly number[],
  columns: readonly (readonly Cell[])[],
): MapAnswer {
  const why: Record<string, string> = {};
  const z = y.map((_, row) =>
    columns.map((column, index) => {
      const cell = column[row];
      if ('value' in cell) return cell.value;
      why[`${row},${index}`] = cell.why;
      return null;
    }),
  );
  const at = (axis: MapAxis): number | null =>
    axis.kind === 'adjuster'
      ? settingOf(question.setup, axis.axle, axis.name, axis.side === 'right' ? 'right' : 'left')
      : question.at[axis.kind];
  const standing = cellsAt(mechanism, question, question.setup, [question.at])[0];
  return {
    x,
    y,
    z,
    why,
    steps: { x: stepsAlong(mechanism, question.x), y: stepsAlong(mechanism, question.y) },
    now: { x: at(question.x), y: at(question.y), z: standing !== undefined && 'value' in standing ? standing.value : null },
  };
}

function columnAt(mechanism: CarMechanism, question: MapQuestion, x: number, y: readonly number[]): readonly Cell[] {
  const laid = (setup: SetupDocument, axis: MapAxis, value: number): SetupDocument =>
    axis.kind === 'adjuster' ? withSetting(setup, axis.axle, axis.name, axis.side, value) : setup;
  const placed = (position: MapQuestion['at'], axis: MapAxis, value: number): MapQuestion['at'] =>
    axis.kind === 'adjuster' ? position : { ...position, [axis.kind]: value };
  const setup = laid(question.setup, question.x, x);
  const at = placed(question.at, question.x, x);
  // along a motion the car is put together once
  if (question.y.kind !== 'adjuster')
    return cellsAt(
      mechanism,
      question,
      setup,
      y.map((value) => placed(at, question.y, value)),
    );
  return y.flatMap((value) => cellsAt(mechanism, question, laid(setup, question.y, value), [at]));
}

function cellsAt(
  mechanism: CarMechanism,
  question: MapQuestion,
  setup: SetupDocument,
  positions: readonly MapQuestion['at'][],
): readonly Cell[] {
  const car = assembleCar(mechanism, setup);
  if (!car.ok) return positions.map(() => ({ why: car.failure.message }));
  const reset = question.axle === 'wholeCar' ? null : car.value[question.axle]?.toeReset;
  if (reset?.inRange === false) return positions.map(() => ({ why: `the toe reset leaves the range of ${reset.adjuster}` }));
  const asked = positions.map(({ travel, rack, roll }): Position => ({ travel, rack, roll: toRadians(roll) }));
  return valuesOf(car.value, question, asked);
}

function valuesOf(car: AssembledCar, { axle, owner, entry }: MapQuestion, positions: readonly Position[]): readonly Cell[] {
  const cell = (values: object, why: Readonly<Record<string, string>>, name: string): Cell => {
    const value = valueInContractUnits((values as Readonly<Record<string, ReadingValue>>)[entry.key] ?? null, entry.quantity);
    return typeof value === 'number' ? { value } : { why: why[name] ?? 'it has no value here' };
  };
  if (axle === 'wholeCar') return sweepCar(car, positions).map((row) => cell(row.wholeCar, row.why, entry.key));
  const rows: readonly Result<{ readonly why: Readonly<Record<string, string>> }, Failure>[] = sweepReadings(
    car,
    axle,
    positions,
    [entry.key],
  );
  return rows.map((row) =>
    row.ok
      ? cell((row.value as unknown as Readonly<Record<string, object>>)[owner], row.value.why, `${owner}.${entry.key}`)
      : { why: row.failure.message },
  );
}
