import {
  findReading,
  mattersOf,
  setWithin,
  type AxleName,
  type CarDocument,
  type QuestionDocument,
  type Sides,
} from '../../../geometry/index';
import { toeOf } from '../kept/keptParts';
import { axlesOf, readingChoices } from '../question/readingChoices';
import { EMPTY_FIELD, fieldOf, type FieldValue } from '../question/fieldValue';
import { RIDE_HEIGHT, type Place } from '../question/place';
import type { ToeChoice } from '../question/toeChoice';

/** How a reading is wanted: one value, or a range with an end on one side or on both; steady is as far either way of zero. */
export type Relation = 'value' | 'above' | 'below' | 'steady' | 'within';
export type Motion = 'bump' | 'roll' | 'steer';

/** One line of what is wanted, as it stands on the page. */
export interface WantedForm {
  /** of this line, unlike any other's of the question */
  readonly id: number;
  readonly reading: string;
  readonly axle: AxleName;
  readonly side: Sides;
  readonly where: 'at' | 'over';
  readonly place: Place;
  /** left and right at different travel [mm], as a file may ask; null: alike */
  readonly apart: readonly [number, number] | null;
  readonly motion: Motion;
  /** [mm, or degrees of roll] */
  readonly from: FieldValue;
  readonly to: FieldValue;
  readonly steps: FieldValue;
  /** what counts is the change from zero of the motion */
  readonly isChange: boolean;
  readonly relation: Relation;
  readonly value: FieldValue;
  readonly least: FieldValue;
  readonly greatest: FieldValue;
  readonly tolerance: FieldValue;
}

export const DIRECTIONS = {
  up: { label: 'up and down', along: [0, 0, 1] },
  across: { label: 'across', along: [0, 1, 0] },
  fore: { label: 'fore and aft', along: [1, 0, 0] },
} as const satisfies Readonly<Record<string, { label: string; along: readonly [number, number, number] }>>;
export type Direction = keyof typeof DIRECTIONS | 'own';

/** One line of what may be turned or moved. */
export type MayForm =
  | {
      readonly kind: 'adjuster';
      readonly id: number;
      readonly axle: AxleName;
      readonly name: string;
      readonly sides: 'together' | 'apart';
    }
  | {
      readonly kind: 'point';
      readonly id: number;
      readonly axle: AxleName;
      readonly name: string;
      readonly sides: 'together' | 'apart';
      readonly direction: Direction;
      /** X, Y, Z of a direction of one's own, left side */
      readonly along: readonly [FieldValue, FieldValue, FieldValue];
      /** [mm] */
      readonly least: FieldValue;
      readonly greatest: FieldValue;
      readonly step: FieldValue;
    };

/** A question as it stands on the page: all of it, typed wrongly or not at all. */
export interface ReachForm {
  readonly wanted: readonly WantedForm[];
  readonly may: readonly MayForm[];
  readonly setup: string;
  readonly toe: ToeChoice;
  readonly count: FieldValue;
  readonly withLocked: boolean;
  readonly seed: number | null;
}

export const nextId = (lines: readonly { readonly id: number }[]): number => Math.max(0, ...lines.map(({ id }) => id)) + 1;

/** How some readings are wanted most: toe is set anyway, so that what counts is how it changes through the travel. */
const USUALLY: Readonly<Record<string, Partial<WantedForm>>> = {
  toe: { where: 'over', isChange: true, relation: 'steady' },
  rollCentreHeight: { relation: 'above' },
};

/** What is wanted first, in the order in which lines are added. */
const WANTED_FIRST = ['camber', 'toe', 'rollCentreHeight', 'caster', 'mechanicalTrail', 'scrubRadius'];

/** The next line: the first of the usual readings that is not wanted yet, then of all; twice only where every one is. */
export const nextWanted = (document: CarDocument, { wanted }: Pick<ReachForm, 'wanted'>, axle: AxleName): WantedForm => {
  const others = readingChoices(['corner', 'axle']).flatMap(({ entries }) => entries.map(({ key }) => key));
  const isNew = (one: string): boolean => !wanted.some((line) => line.reading === one && line.axle === axle);
  const reading = [...WANTED_FIRST, ...others].find(isNew) ?? 'camber';
  return beginWanted(document, nextId(wanted), reading, axle);
};

/** A line with its blanks. */
export const beginWanted = (document: CarDocument, id: number, reading: string, axle: AxleName): WantedForm => ({
  id,
  reading,
  axle,
  side: 'both',
  where: 'at',
  place: RIDE_HEIGHT,
  apart: null,
  motion: 'bump',
  from: fieldOf(-30),
  to: fieldOf(30),
  steps: fieldOf(7),
  isChange: false,
  relation: 'value',
  value: EMPTY_FIELD,
  least: EMPTY_FIELD,
  greatest: EMPTY_FIELD,
  tolerance: fieldOf(setWithin(document, reading) ?? mattersOf(document, reading)),
  ...USUALLY[reading],
});

/** Another reading is wanted: its numbers are others. */
export const withWantedReading = (wanted: WantedForm, document: CarDocument, reading: string): WantedForm => ({
  ...beginWanted(document, wanted.id, reading, wanted.axle),
  side: wanted.side,
});

/** A line over a stretch, or at one place again: over a stretch a reading is wanted steady. */
export const withWhere = (wanted: WantedForm, where: WantedForm['where']): WantedForm => ({
  ...wanted,
  where,
  isChange: where === 'over',
  relation: where === 'over' ? 'steady' : 'value',
});

/** The axles that a question is about: those whose toe is kept. */
export const axlesAsked = ({ wanted, may }: Pick<ReachForm, 'wanted' | 'may'>, document: CarDocument): readonly AxleName[] => {
  const isOfCar = wanted.some(({ reading }) => findReading(reading)?.of === 'car');
  return axlesOf(document).filter(
    (one) => isOfCar || may.some(({ axle }) => axle === one) || wanted.some(({ axle }) => axle === one),
  );
};

/** Every part of an axle that may be turned: not what is locked, what sets the toe, nor what is there already. */
export const withAllOf = (form: ReachForm, document: CarDocument, axle: AxleName): ReachForm => {
  const described = document[axle];
  const names = Object.entries(described?.adjusters ?? {}).flatMap(([name, { locked }]) => {
    const setsToe = form.toe.kind !== 'follow' && described?.toeAdjuster === name;
    const isThere = form.may.some((may) => may.kind === 'adjuster' && may.axle === axle && may.name === name);
    return (locked !== undefined && !form.withLocked) || setsToe || isThere ? [] : [name];
  });
  const first = nextId(form.may);
  return {
    ...form,
    may: [
      ...form.may,
      ...names.map((name, index) => ({ kind: 'adjuster', id: first + index, axle, name, sides: 'together' }) as const),
    ],
  };
};

export const beginPoint = (id: number, axle: AxleName, name: string): MayForm => ({
  kind: 'point',
  id,
  axle,
  name,
  sides: 'together',
  direction: 'up',
  along: [fieldOf(0), fieldOf(0), fieldOf(1)],
  least: fieldOf(-10),
  greatest: fieldOf(10),
  step: fieldOf(1),
});

const COUNT = 5;

/** A question with its blanks: camber of the axle on the bench, and nothing that may be turned yet. */
export const beginReach = (document: CarDocument, setup: string, axle: AxleName): ReachForm => ({
  wanted: [beginWanted(document, 1, 'camber', axle)],
  may: [],
  setup,
  toe: { kind: 'own', value: EMPTY_FIELD },
  count: fieldOf(COUNT),
  withLocked: false,
  seed: null,
});

const relationOf = (range: readonly [number | null, number | null] | undefined): Relation => {
  if (range === undefined) return 'value';
  const [least, greatest] = range;
  if (least === null) return 'below';
  if (greatest === null) return 'above';
  return greatest >= 0 && least === -greatest ? 'steady' : 'within';
};

const wantedForm = (document: CarDocument, wanted: QuestionDocument['wanted'][number], id: number): WantedForm => {
  const begun = beginWanted(document, id, wanted.reading, wanted.axle ?? 'front');
  const { at = {}, over, range } = wanted;
  const apart = typeof at.travel === 'object' ? at.travel : null;
  return {
    ...begun,
    side: wanted.side ?? 'both',
    where: over ? 'over' : 'at',
    place: {
      travel: fieldOf(typeof at.travel === 'object' ? 0 : (at.travel ?? 0)),
      roll: fieldOf(at.roll ?? 0),
      rack: fieldOf(at.rack ?? 0),
    },
    apart,
    ...(over && { motion: over.motion, from: fieldOf(over.from), to: fieldOf(over.to), steps: fieldOf(over.steps) }),
    isChange: wanted.change === true,
    relation: relationOf(range),
    value: fieldOf(wanted.value),
    least: fieldOf(range?.[0]),
    greatest: fieldOf(range?.[1]),
    tolerance: fieldOf(wanted.tolerance),
  };
};

const directionOf = (along: readonly [number, number, number]): Direction =>
  (Object.keys(DIRECTIONS) as (keyof typeof DIRECTIONS)[]).find((name) =>
    DIRECTIONS[name].along.every((part, axis) => part === along[axis]),
  ) ?? 'own';

const mayForm = (may: QuestionDocument['may'][number], id: number): MayForm => {
  const sides = may.sides ?? 'together';
  if ('adjuster' in may) return { kind: 'adjuster', id, axle: may.axle, name: may.adjuster, sides };
  const [x, y, z] = may.along;
  return {
    kind: 'point',
    id,
    axle: may.axle,
    name: may.point,
    sides,
    direction: directionOf([x, y, z]),
    along: [fieldOf(x), fieldOf(y), fieldOf(z)],
    least: fieldOf(may.range[0]),
    greatest: fieldOf(may.range[1]),
    step: fieldOf(may.step),
  };
};

/** A question of the file as it stands on the page. @param setup - what it starts from where it does not say */
export const formOf = (document: CarDocument, question: QuestionDocument, setup: string): ReachForm => ({
  wanted: question.wanted.map((wanted, index) => wantedForm(document, wanted, index + 1)),
  may: question.may.map((may, index) => mayForm(may, index + 1)),
  setup: question.setup ?? setup,
  toe: toeOf(question.setToe, 'follow'),
  count: fieldOf(question.count ?? COUNT),
  withLocked: question.locked === true,
  seed: question.seed ?? null,
});

/** A line moved by one place. */
export const moved = <Line extends { readonly id: number }>(lines: readonly Line[], id: number, by: 1 | -1): readonly Line[] => {
  const at = lines.findIndex((line) => line.id === id);
  const to = at + by;
  const [line, other] = [lines[at], lines[to]];
  if (!line || !other) return lines;
  return lines.map((one, index) => (index === at ? other : index === to ? line : one));
};
