import type { AxleName, CarDocument, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import type { MayDocument, QuestionDocument, WantedDocument } from '../car/questionDocument';
import { cleanSetting, realSettings, stepScaleOf } from '../adjusters/stepScale';
import { toRadians } from '../core/angle';
import { unit, type Vector } from '../core/vector';
import { findReading } from '../readings/catalogue';
import type { ReadingEntry } from '../readings/readingEntry';
import type { Position } from '../readings/rows';
import { settingOf, type Sides } from '../setup/setupEdits';
import { withToeReset, type AskedToe } from './toeReset';

/** A reading that is wanted, and where. Values in contract units. */
export interface Wanted {
  readonly entry: ReadingEntry;
  readonly axle: AxleName | 'wholeCar';
  /** whose readings count: each of them is a place of its own in the mean */
  readonly owners: readonly ('left' | 'right' | 'both' | 'wholeCar')[];
  /** indexes into the positions of the question */
  readonly at: readonly number[];
  /** the position that a change is measured from; null: the value itself counts */
  readonly from: number | null;
  readonly least: number;
  readonly greatest: number;
  /** one value is wanted: a miss within the tolerance is met; of a range no miss is */
  readonly isValue: boolean;
  readonly tolerance: number;
}

/** Something that may be moved, and the values it can take, ascending. */
export type Variable =
  | {
      readonly kind: 'adjuster';
      readonly axle: AxleName;
      readonly side: Sides;
      readonly name: string;
      /** in the file's unit; null is a concentric bushing */
      readonly values: readonly (number | null)[];
    }
  | {
      readonly kind: 'point';
      readonly axle: AxleName;
      readonly side: Sides;
      readonly name: string;
      /** unit vector in the car frame, left side */
      readonly along: Vector;
      /** [mm] */
      readonly values: readonly number[];
    };

/** A question with its names looked up: what is asked of which positions, over which combinations. */
export interface Question {
  readonly setup: SetupDocument;
  readonly wanted: readonly Wanted[];
  readonly positions: readonly Position[];
  readonly variables: readonly Variable[];
  /** how many combinations of values there are */
  readonly combinations: number;
  readonly count: number;
  readonly seed: number;
  /** axles that something is wanted of or may be moved on */
  readonly axles: readonly AxleName[];
  /** the toe that is set after every move, where one is asked for: by axle [degrees] */
  readonly toe: Readonly<Partial<Record<AxleName, number>>>;
}

const COUNT = 5;
const AXLES = ['front', 'rear'] as const;

/**
 * Looks up what a question names.
 * @param question - judged with the car file that holds it (`questions`): its names are the car's
 * @param setup - the setup to start from, changes of the call included
 */
export function resolveQuestion(mechanism: CarMechanism, question: QuestionDocument, setup: SetupDocument): Question {
  const { document } = mechanism;
  const positions: Position[] = [];
  const indexOf = (position: Position): number => {
    const known = positions.findIndex(
      (other) =>
        JSON.stringify([other.travel, other.rack, other.roll]) ===
        JSON.stringify([position.travel, position.rack, position.roll]),
    );
    return known >= 0 ? known : positions.push(position) - 1;
  };
  const wanted = question.wanted.map((one) => wantedOf(one, indexOf));
  const named = new Set<string>([...question.may.map(({ axle }) => axle), ...wanted.map(({ axle }) => axle)]);
  const axles = AXLES.filter((axle) => document[axle] !== undefined && (named.has(axle) || named.has('wholeCar')));
  const toe: AskedToe = question.setToe === false ? undefined : question.setToe;
  const variables = question.may.flatMap((may) =>
    variablesOf(document, mechanism.mmPerUnit, may, setup, question.locked === true),
  );
  const reset = withToeReset(document, setup, axles, toe);
  return {
    setup: reset,
    wanted,
    positions,
    variables,
    combinations: variables.reduce((product, { values }) => product * values.length, 1),
    count: question.count ?? COUNT,
    seed: question.seed ?? 1,
    axles,
    toe: toe === undefined ? {} : toeOf(reset, axles),
  };
}

function toeOf(setup: SetupDocument, axles: readonly AxleName[]): Question['toe'] {
  return Object.fromEntries(
    axles.flatMap((axle) => {
      const { setToe } = setup[axle] ?? {};
      return setToe === undefined ? [] : [[axle, setToe]];
    }),
  );
}

function wantedOf(wanted: WantedDocument, indexOf: (position: Position) => number): Wanted {
  const entry = findReading(wanted.reading);
  if (entry === undefined) throw new RangeError(`There is no reading "${wanted.reading}".`);
  const [low, high] = wanted.range ?? [wanted.value ?? 0, wanted.value ?? 0];
  return {
    entry,
    axle: entry.of === 'car' ? 'wholeCar' : (wanted.axle ?? 'front'),
    owners: ownersOf(entry, wanted.side),
    ...placesOf(wanted, indexOf),
    least: low ?? -Infinity,
    greatest: high ?? Infinity,
    isValue: wanted.range === undefined,
    tolerance: wanted.tolerance,
  };
}

function ownersOf({ of }: ReadingEntry, side: WantedDocument['side']): Wanted['owners'] {
  if (of === 'car') return ['wholeCar'];
  if (of === 'axle') return ['both'];
  return side === 'left' || side === 'right' ? [side] : ['left', 'right'];
}

function placesOf(
  { at = {}, over, change }: WantedDocument,
  indexOf: (position: Position) => number,
): Pick<Wanted, 'at' | 'from'> {
  const travel = typeof at.travel === 'object' ? { left: at.travel[0], right: at.travel[1] } : (at.travel ?? 0);
  const fixed: Position = { travel, rack: at.rack ?? 0, roll: toRadians(at.roll ?? 0) };
  if (over === undefined)
    return { at: [indexOf(fixed)], from: change === true ? indexOf({ travel: 0, rack: 0, roll: 0 }) : null };
  const moved = (input: number): Position => {
    const still: Position = { travel: 0, rack: 0, roll: 0 };
    if (over.motion === 'bump') return { ...still, travel: input };
    return over.motion === 'steer' ? { ...still, rack: input } : { ...still, roll: toRadians(input) };
  };
  const inputs = Array.from({ length: over.steps }, (_, index) =>
    over.steps === 1 ? over.from : over.from + ((over.to - over.from) * index) / (over.steps - 1),
  );
  return { at: inputs.map((input) => indexOf(moved(input))), from: change === true ? indexOf(moved(0)) : null };
}

function variablesOf(
  document: CarDocument,
  mm: number,
  may: MayDocument,
  setup: SetupDocument,
  withLocked: boolean,
): readonly Variable[] {
  const sides: readonly Sides[] = may.sides === 'apart' ? ['left', 'right'] : ['both'];
  if ('point' in may) {
    const { axle, point, range, step } = may;
    const values = realSettings({ min: range[0], max: range[1], step, isRound: false });
    return sides.map((side) => ({ kind: 'point', axle, side, name: point, along: unit([...may.along] as Vector), values }));
  }
  const adjuster = document[may.axle]?.adjusters?.[may.adjuster];
  if (adjuster === undefined) throw new RangeError(`The ${may.axle} axle has no adjuster "${may.adjuster}".`);
  if (adjuster.locked !== undefined && !withLocked) return [];
  const real = realSettings(stepScaleOf(adjuster));
  return sides.map((side) => {
    const isConcentric =
      adjuster.kind === 'offset-bushing' &&
      (side === 'both' ? (['left', 'right'] as const) : [side]).every(
        (one) => settingOf(setup, may.axle, may.adjuster, one) === null,
      );
    const values = isConcentric ? [null, ...real] : real;
    return { kind: 'adjuster', axle: may.axle, side, name: may.adjuster, values };
  });
}

/** The values of a combination by its number: the first variable changes slowest. */
export function combinationAt({ variables }: Pick<Question, 'variables'>, number: number): number[] {
  const indexes = new Array<number>(variables.length);
  let rest = number;
  for (let i = variables.length - 1; i >= 0; i -= 1) {
    const { length } = variables[i].values;
    indexes[i] = rest % length;
    rest = Math.floor(rest / length);
  }
  return indexes;
}

/** The values at these indexes. */
export const valuesAt = ({ variables }: Pick<Question, 'variables'>, indexes: readonly number[]): (number | null)[] =>
  variables.map(({ values }, i) => values[indexes[i]] ?? null);

/** The values of a combination by its number. */
export const valuesOf = (question: Pick<Question, 'variables'>, number: number): (number | null)[] =>
  valuesAt(question, combinationAt(question, number));

/** The number of a combination. */
export function numberOf({ variables }: Pick<Question, 'variables'>, indexes: readonly number[]): number {
  return variables.reduce((number, { values }, i) => number * values.length + indexes[i], 0);
}

/** A value one step past an end of a variable's range. */
export const pastEnd = (values: readonly number[], step: number, end: 'min' | 'max'): number =>
  cleanSetting(end === 'min' ? (values[0] ?? 0) - step : (values[values.length - 1] ?? 0) + step);
