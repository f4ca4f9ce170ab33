import type { AxleName, LimitDocument, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { realSettings, stepScaleOf } from '../adjusters/stepScale';
import { toRadians } from '../core/angle';
import { succeed, type Result } from '../core/result';
import type { Failure } from '../corner/failure';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import type { ReadingEntry } from '../readings/readingEntry';
import { sweepCar, sweepReadings } from '../readings/readings';
import type { Position } from '../readings/rows';
import { assembleCar, type AssembledCar } from '../setup/assembleCar';
import { judgeLimits } from '../setup/judgeLimits';
import { settingOf, withSetting, type Sides } from '../setup/setupEdits';
import { answerStudy, roundOf, type Study } from './study';
import { turnedByReset } from './turnedByReset';

/** What is varied along one side of a map. */
export type MapAxis =
  | { readonly kind: 'adjuster'; readonly axle: AxleName; readonly side: Sides; readonly name: string }
  | { readonly kind: 'travel' | 'rack' | 'roll'; readonly from: number; readonly to: number };

/** A reading that a map is drawn of. */
export interface MapReading {
  readonly entry: ReadingEntry;
  readonly axle: AxleName | 'wholeCar';
  readonly owner: 'left' | 'right' | 'both' | 'wholeCar';
}

export interface MapQuestion extends MapReading {
  /** toe reset included */
  readonly setup: SetupDocument;
  readonly x: MapAxis;
  readonly y: MapAxis;
  readonly nx: number;
  readonly ny: number;
  /** what is not varied; travel and rack in mm, roll in degrees */
  readonly at: { readonly travel: number; readonly rack: number; readonly roll: number };
  /** another reading on the same map */
  readonly second?: MapReading | undefined;
  /** what each limit of the file has to spare, everywhere */
  readonly withLimits?: boolean | undefined;
  /** the same at every real step of the adjusters; along a motion, where the car stands in it */
  readonly onSteps?: boolean | undefined;
}

/** Rows of a map, `y.length` of them with `x.length` values each; null where there is no value. */
export type MapValues = readonly (readonly (number | null)[])[];

/** What one limit has to spare over a map, in its own unit: negative where it is broken. */
export interface MapLimit {
  /** "front.left.camber" */
  readonly name: string;
  readonly limit: LimitDocument;
  /** null where the limit cannot be judged, which is not allowed either */
  readonly spare: MapValues;
}

export interface MapAnswer {
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** ny rows of nx, in contract units; null where there is no value */
  readonly z: MapValues;
  /** "row,column" -> why it is null */
  readonly why: Readonly<Record<string, string>>;
  /** where the parts can really stand; null along a motion */
  readonly steps: { readonly x: readonly number[] | null; readonly y: readonly number[] | null };
  /** where the setup stands, and the reading there; the second too where one was asked for */
  readonly now: {
    readonly x: number | null;
    readonly y: number | null;
    readonly z: number | null;
    readonly second?: number | null;
  };
  /** the second reading, where one was asked for */
  readonly second?: MapValues;
  /** where the limits were asked for */
  readonly limits?: readonly MapLimit[];
  /** at the real steps, where they were asked for */
  readonly onSteps?: {
    readonly x: readonly number[];
    readonly y: readonly number[];
    readonly z: MapValues;
    readonly second?: MapValues;
    readonly limits?: readonly MapLimit[];
  };
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

type Value = { readonly value: number } | { readonly why: string };

/** One place of a map. */
interface Cell {
  readonly first: Value;
  readonly second: number | null;
  /** in the order of the limits that `judgeLimits` gives; null: none were asked for */
  readonly spares: readonly (number | null)[] | null;
}

/** What is at the places of a column, and how its limits are called. */
interface Column {
  readonly cells: readonly Cell[];
  readonly limits: readonly { readonly name: string; readonly limit: LimitDocument }[];
}

/** Where an adjuster stands; null for a concentric bushing, and where left and right stand differently and both are turned. */
function standingAt(
  { document }: CarMechanism,
  { setup }: MapQuestion,
  { axle, side, name }: Extract<MapAxis, { kind: 'adjuster' }>,
): number | null {
  const unset = document[axle]?.adjusters?.[name]?.kind === 'offset-bushing' ? null : 0;
  const [left, right] = (['left', 'right'] as const).map((one) => settingOf(setup, axle, name, one) ?? unset);
  if (side === 'both') return left === right ? left : null;
  return side === 'left' ? left : right;
}

/** Values of a map that one chunk works out, as far as they are whole columns: each column is one x. */
const CHUNK = 400;

type Maker = (setup: SetupDocument) => Result<AssembledCar, Failure>;

/**
 * Puts cars of a map together: only the axles whose parts the map turns; the others stand as in the setup it started from. A
 * toe reset starts from the last one's, so every column has a maker of its own.
 */
function carMaker(mechanism: CarMechanism, { x, y }: MapQuestion, started: AssembledCar): Maker {
  const turned = [x, y].flatMap((axis) => (axis.kind === 'adjuster' ? [axis.axle] : []));
  let near = started;
  return (setup) => {
    const car = assembleCar(mechanism, setup, turned, near);
    if (!car.ok) return car;
    near = { ...car.value, front: car.value.front ?? started.front, rear: car.value.rear ?? started.rear };
    return succeed(near);
  };
}

/**
 * One reading over a grid of two things.
 * @returns the failure of the setup itself where it cannot be put together; a place without value has its reason in `why`
 */
export const map = (mechanism: CarMechanism, question: MapQuestion): Result<MapAnswer, Failure> =>
  answerStudy(mapStudy(mechanism, question));

interface Grid {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

/** The steps of an axis; a motion is held where the question holds it. */
const standingSteps = (mechanism: CarMechanism, question: MapQuestion, axis: MapAxis): readonly number[] =>
  stepsAlong(mechanism, axis) ?? (axis.kind === 'adjuster' ? [] : [question.at[axis.kind]]);

export function mapStudy(mechanism: CarMechanism, question: MapQuestion): Study<MapAnswer> {
  const grid = {
    x: valuesAlong(mechanism, question.x, question.nx),
    y: valuesAlong(mechanism, question.y, question.ny),
  };
  const steps: Grid =
    question.onSteps === true
      ? { x: standingSteps(mechanism, question, question.x), y: standingSteps(mechanism, question, question.y) }
      : { x: [], y: [] };
  const started = assembleCar(mechanism, question.setup);
  const columns = [
    ...grid.x.map((x) => ({ x, y: grid.y })),
    ...(steps.y.length === 0 ? [] : steps.x.map((x) => ({ x, y: steps.y }))),
  ];
  const atOnce = Math.max(1, Math.floor(CHUNK / Math.max(question.ny, steps.y.length)));
  const idle = [question.x, question.y]
    .map((axis) => (axis.kind === 'adjuster' ? turnedByReset(mechanism.document, question.setup, axis.axle, axis.name) : null))
    .find((reason) => reason !== null);
  const failure: Failure | null = started.ok ? null : started.failure;
  return {
    failure: idle === undefined ? failure : { kind: 'setup', message: idle },
    round: () =>
      roundOf<readonly Column[], MapAnswer>({
        doing: 'drawing the map',
        chunks: Math.ceil(columns.length / atOnce),
        run: (chunk) => {
          if (!started.ok) throw new Error(started.failure.message);
          return columns
            .slice(chunk * atOnce, (chunk + 1) * atOnce)
            .map(({ x, y }) => columnAt(carMaker(mechanism, question, started.value), question, x, y));
        },
        merge: (parts) => {
          const all = parts.flat();
          return { answer: mapOf(mechanism, question, grid, steps, all) };
        },
      }),
  };
}

function mapOf(mechanism: CarMechanism, question: MapQuestion, grid: Grid, steps: Grid, columns: readonly Column[]): MapAnswer {
  const own = columns.slice(0, grid.x.length);
  const why: Record<string, string> = {};
  own.forEach(({ cells }, column) =>
    cells.forEach(({ first }, row) => {
      if ('why' in first) why[`${row},${column}`] = first.why;
    }),
  );
  const at = (axis: MapAxis): number | null =>
    axis.kind === 'adjuster' ? standingAt(mechanism, question, axis) : question.at[axis.kind];
  const standing = cellsAt((setup) => assembleCar(mechanism, setup), { ...question, withLimits: false }, question.setup, [
    question.at,
  ]).cells[0];
  const { z, ...more } = layersOf(question, grid.y, own);
  return {
    ...grid,
    z,
    why,
    steps: { x: stepsAlong(mechanism, question.x), y: stepsAlong(mechanism, question.y) },
    now: {
      x: at(question.x),
      y: at(question.y),
      z: standing !== undefined ? valueOf(standing.first) : null,
      ...(question.second === undefined ? {} : { second: standing?.second ?? null }),
    },
    ...more,
    ...(question.onSteps === true ? { onSteps: { ...steps, ...layersOf(question, steps.y, columns.slice(grid.x.length)) } } : {}),
  };
}

const valueOf = (value: Value): number | null => ('value' in value ? value.value : null);

/** Columns of cells as rows of numbers. */
function layersOf(
  question: MapQuestion,
  y: readonly number[],
  columns: readonly Column[],
): Pick<MapAnswer, 'z' | 'second' | 'limits'> {
  const rows = (of: (cell: Cell) => number | null): MapValues =>
    y.map((_, row) => columns.map(({ cells }) => (cells[row] === undefined ? null : of(cells[row]))));
  const limits = columns.find((column) => column.limits.length > 0)?.limits ?? [];
  return {
    z: rows(({ first }) => valueOf(first)),
    ...(question.second === undefined ? {} : { second: rows(({ second }) => second) }),
    ...(question.withLimits === true
      ? { limits: limits.map((limit, index) => ({ ...limit, spare: rows(({ spares }) => spares?.[index] ?? null) })) }
      : {}),
  };
}

function columnAt(make: Maker, question: MapQuestion, x: number, y: readonly number[]): Column {
  const laid = (setup: SetupDocument, axis: MapAxis, value: number): SetupDocument =>
    axis.kind === 'adjuster' ? withSetting(setup, axis.axle, axis.name, axis.side, value) : setup;
  const placed = (position: MapQuestion['at'], axis: MapAxis, value: number): MapQuestion['at'] =>
    axis.kind === 'adjuster' ? position : { ...position, [axis.kind]: value };
  const setup = laid(question.setup, question.x, x);
  const at = placed(question.at, question.x, x);
  // along a motion the car is put together once
  if (question.y.kind !== 'adjuster')
    return cellsAt(
      make,
      question,
      setup,
      y.map((value) => placed(at, question.y, value)),
    );
  const columns = y.map((value) => cellsAt(make, question, laid(setup, question.y, value), [at]));
  return {
    cells: columns.flatMap(({ cells }) => cells),
    limits: columns.find(({ limits }) => limits.length > 0)?.limits ?? [],
  };
}

function cellsAt(make: Maker, question: MapQuestion, setup: SetupDocument, positions: readonly MapQuestion['at'][]): Column {
  const none = (why: string): Column => ({
    cells: positions.map(() => ({ first: { why }, second: null, spares: null })),
    limits: [],
  });
  const car = make(setup);
  if (!car.ok) return none(car.failure.message);
  for (const axle of axlesOf(question)) {
    const reset = car.value[axle]?.toeReset;
    if (reset?.inRange === false) return none(`the toe reset leaves the range of ${reset.adjuster}`);
  }
  const asked = positions.map(({ travel, rack, roll }): Position => ({ travel, rack, roll: toRadians(roll) }));
  const limits = question.withLimits === true ? judgeLimits(car.value) : [];
  const spares = question.withLimits === true ? limits.map(({ spare }) => spare) : null;
  const first = valuesOf(car.value, question, asked);
  const second = question.second === undefined ? null : valuesOf(car.value, question.second, asked);
  return {
    cells: first.map((value, index) => ({ first: value, second: second === null ? null : valueOf(second[index]), spares })),
    limits: limits.map(({ name, limit }) => ({ name, limit })),
  };
}

/** The axles whose toe reset the readings lean on. */
const axlesOf = ({ axle, second }: MapQuestion): readonly AxleName[] =>
  [axle, second?.axle].filter((one) => one === 'front' || one === 'rear');

function valuesOf(car: AssembledCar, { axle, owner, entry }: MapReading, positions: readonly Position[]): readonly Value[] {
  const cell = (values: object, why: Readonly<Record<string, string>>, name: string): Value => {
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
