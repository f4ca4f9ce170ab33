import {
  findReading,
  mattersOf,
  realSettings,
  setWithin,
  stepScaleOf,
  withToeReset,
  type AxleName,
  type CarDocument,
  type MapAxis,
  type MapReading,
  type MotionName,
  type StudyOrder,
} from '../../../geometry/index';
import type { MotionRanges } from '../../compute/motionRanges';
import { setupNamed } from '../../state/settings';
import { atOf, MOVED_BY, placeOf, setToeOf, toeOf } from '../kept/keptParts';
import type { QuestionForms } from '../kept/useQuestionPage';
import { EMPTY_FIELD, faultOfNumber, fieldOf, type FieldValue } from '../question/fieldValue';
import { faultOfPlace, RIDE_HEIGHT, type Place } from '../question/place';
import { askedToe, faultOfToe, ownToe, type ToeChoice } from '../question/toeChoice';

export type MapOrder = Extract<StudyOrder, { study: 'map' }>;

/** A motion along one side of a map instead of an adjuster. */
export const MOTIONS = ['travel', 'roll', 'rack'] as const;
export type MapMotion = (typeof MOTIONS)[number];
export const MOTION_WORDS: Readonly<Record<MapMotion, string>> = { travel: 'bump', roll: 'roll', rack: 'rack' };

/** The question of a map, as it stands in its sentence. */
export interface MapForm {
  readonly reading: string;
  /** whose wheel, of a reading of the corner */
  readonly wheel: 'left' | 'right';
  /** an adjuster by its key */
  readonly x: string;
  /** another one, or "motion:travel" */
  readonly y: string;
  /** which wheels are turned */
  readonly side: 'both' | 'left' | 'right';
  /** the value that is marked; empty: none */
  readonly wanted: FieldValue;
  readonly tolerance: FieldValue;
  /** the second reading; empty: none */
  readonly second: string;
  readonly sense: 'above' | 'below';
  readonly threshold: FieldValue;
  readonly place: Place;
  readonly toe: ToeChoice;
}

export type MapFault = Readonly<Partial<Record<'axes' | 'wanted' | 'tolerance' | 'threshold' | 'place' | 'toe', string>>>;

/** Values along either side. */
export const GRID = 120;
/** More real steps than these are too many to draw, or to try. */
export const MOST_STEPS = 20_000;

const motionOf = (name: string): MapMotion | null => MOTIONS.find((motion) => name === `motion:${motion}`) ?? null;

/** Adjusters that can be drawn over: what toe turns by itself is none, nor what is locked, unless there is nothing else. */
export const mapAdjusters = (document: CarDocument, axle: AxleName): readonly string[] => {
  const all = Object.entries(document[axle]?.adjusters ?? {});
  const free = all.filter(([name, { locked }]) => locked === undefined && name !== document[axle]?.toeAdjuster);
  return (free.length > 0 ? free : all).map(([name]) => name);
};

export const beginMap = (document: CarDocument, axle: AxleName): MapForm => {
  const names = mapAdjusters(document, axle);
  const kindOf = (name: string) => document[axle]?.adjusters?.[name]?.kind;
  const cambers = names.filter((name) => kindOf(name) !== 'offset-bushing' && kindOf(name) !== 'perch');
  const [x = names[0] ?? ''] = cambers;
  const y =
    cambers.find((name) => name !== x && kindOf(name) !== kindOf(x)) ?? names.find((name) => name !== x) ?? 'motion:travel';
  return {
    reading: 'camber',
    wheel: 'left',
    x,
    y,
    side: 'both',
    wanted: EMPTY_FIELD,
    tolerance: fieldOf(setWithin(document, 'camber') ?? 0.1),
    second: 'rollCentreHeight',
    sense: 'above',
    threshold: EMPTY_FIELD,
    place: RIDE_HEIGHT,
    toe: { kind: 'own', value: EMPTY_FIELD },
  };
};

/** A form whose parts the axle has: another axle begins anew. */
export const mapFormFor = (form: MapForm, document: CarDocument, axle: AxleName): MapForm => {
  const adjusters = document[axle]?.adjusters ?? {};
  const isKnown = (name: string): boolean => motionOf(name) !== null || Object.hasOwn(adjusters, name);
  return isKnown(form.x) && isKnown(form.y) ? form : { ...beginMap(document, axle), reading: form.reading, second: form.second };
};

/** With another reading what was marked of the last one says nothing. */
export const withMapReading = (form: MapForm, document: CarDocument, reading: string): MapForm => ({
  ...form,
  reading,
  wanted: EMPTY_FIELD,
  tolerance: fieldOf(setWithin(document, reading) ?? mattersOf(document, reading)),
});

const readingOf = (key: string, wheel: MapForm['wheel'], axle: AxleName): MapReading | null => {
  const entry = findReading(key);
  if (!entry || entry.components !== undefined) return null;
  switch (entry.of) {
    case 'corner':
      return { entry, axle, owner: wheel };
    case 'axle':
      return { entry, axle, owner: 'both' };
    case 'car':
      return { entry, axle: 'wholeCar', owner: 'wholeCar' };
  }
};

const isEmpty = ({ value, typed }: FieldValue): boolean => value === null && (typed === null || typed.trim() === '');

/** What is wrong with a form, field by field. */
export const mapFaults = (form: MapForm, document: CarDocument, axle: AxleName): MapFault => {
  const place = faultOfPlace(form.place);
  const toe = document[axle]?.toeAdjuster === undefined ? null : faultOfToe(form.toe);
  const number = (field: FieldValue, what: string): string | null =>
    isEmpty(field) || faultOfNumber(field) === null ? null : `${what}: ${faultOfNumber(field) ?? ''}.`;
  const tolerance = isEmpty(form.wanted)
    ? null
    : faultOfNumber(form.tolerance) !== null
      ? `How near: ${faultOfNumber(form.tolerance) ?? ''}.`
      : (form.tolerance.value ?? 0) <= 0
        ? 'How near: it has to be more than 0.'
        : null;
  const faults: [keyof MapFault, string | null][] = [
    ['axes', form.x === form.y ? 'A map is over two things: choose another part or a motion.' : null],
    ['wanted', number(form.wanted, 'The marked value')],
    ['tolerance', tolerance],
    ['threshold', number(form.threshold, 'The threshold')],
    ['place', place === null ? null : `Where: ${place}.`],
    ['toe', toe],
  ];
  return Object.fromEntries(faults.filter(([, fault]) => fault !== null));
};

const axisOf = (name: string, axle: AxleName, side: MapForm['side'], ranges: MotionRanges): MapAxis | null => {
  const motion = motionOf(name);
  if (motion === null) return { kind: 'adjuster', axle, side, name };
  const range = ranges[motion];
  return range === null ? null : { kind: motion, from: range.min, to: range.max };
};

/** How many real steps an adjuster has; a motion is held at one place. */
const stepCount = (document: CarDocument, axis: MapAxis): number => {
  const adjuster = axis.kind === 'adjuster' ? document[axis.axle]?.adjusters?.[axis.name] : undefined;
  return adjuster === undefined ? 1 : realSettings(stepScaleOf(adjuster)).length;
};

/** Whatever of a form decides what is solved: the rest only marks it. */
export type SolvedForm = Omit<MapForm, 'wanted' | 'tolerance' | 'sense' | 'threshold'>;

/** The order of a form; null where something in it cannot be read. */
export const mapOrder = (
  form: SolvedForm,
  document: CarDocument,
  setup: string,
  axle: AxleName,
  ranges: MotionRanges,
): MapOrder | null => {
  const whole: MapForm = { ...form, wanted: EMPTY_FIELD, tolerance: EMPTY_FIELD, sense: 'above', threshold: EMPTY_FIELD };
  if (Object.keys(mapFaults(whole, document, axle)).length > 0) return null;
  const reading = readingOf(form.reading, form.wheel, axle);
  const second = form.second === '' || form.second === form.reading ? null : readingOf(form.second, form.wheel, axle);
  const [x, y] = [axisOf(form.x, axle, form.side, ranges), axisOf(form.y, axle, form.side, ranges)];
  if (!reading || !x || !y || x.kind !== 'adjuster' || !document[axle]?.adjusters?.[x.name]) return null;
  const toe = askedToe(form.toe, ownToe(document, setup, [axle]));
  const { travel, rack, roll } = form.place;
  return {
    study: 'map',
    document,
    question: {
      setup: withToeReset(document, setupNamed(document, setup), [axle], toe),
      x,
      y,
      nx: GRID,
      ny: GRID,
      ...reading,
      ...(second && { second }),
      withLimits: (document.limits ?? []).length > 0,
      onSteps: stepCount(document, x) * stepCount(document, y) <= MOST_STEPS,
      at: {
        travel: travel.value ?? 0,
        rack: document[axle].steering === undefined ? 0 : (rack.value ?? 0),
        roll: roll.value ?? 0,
      },
    },
  };
};

const MOTION_NAMES = { travel: 'bump', roll: 'roll', rack: 'steer' } as const satisfies Readonly<Record<MapMotion, MotionName>>;

/** How the form and the question of the file become one another. */
export const mapForms = (document: CarDocument, axle: AxleName): QuestionForms<'map', MapForm> => ({
  ask: 'map',
  begin: () => beginMap(document, axle),
  formOf: ({ x, y, where, ...question }) => {
    const [least, greatest] = where?.range ?? [null, null];
    return {
      reading: question.reading,
      wheel: question.wheel ?? 'left',
      x: x.adjuster,
      y: 'motion' in y ? `motion:${MOVED_BY[y.motion]}` : y.adjuster,
      side: question.side ?? 'both',
      wanted: fieldOf(question.value),
      tolerance: fieldOf(question.tolerance ?? setWithin(document, question.reading) ?? mattersOf(document, question.reading)),
      second: where?.reading ?? '',
      sense: least === null && greatest !== null ? 'below' : 'above',
      threshold: fieldOf(least ?? greatest),
      place: placeOf(question.at),
      toe: toeOf(question.setToe),
    };
  },
  questionOf: (form) => {
    const faults = mapFaults(form, document, axle);
    const motion = motionOf(form.y);
    if (Object.keys(faults).length > 0) return { fault: faults.axes ?? null };
    const at = atOf(form.place);
    const { value: threshold } = form.threshold;
    return {
      question: {
        ask: 'map',
        setToe: setToeOf(form.toe),
        axle,
        side: form.side,
        ...(at && { at }),
        x: { adjuster: form.x },
        y: motion === null ? { adjuster: form.y } : { motion: MOTION_NAMES[motion] },
        reading: form.reading,
        wheel: form.wheel,
        ...(form.wanted.value !== null && { value: form.wanted.value }),
        ...((form.tolerance.value ?? 0) > 0 && { tolerance: form.tolerance.value ?? 0 }),
        ...(form.second !== '' && {
          where: {
            reading: form.second,
            ...(threshold !== null && {
              range: form.sense === 'above' ? ([threshold, null] as const) : ([null, threshold] as const),
            }),
          },
        }),
      },
    };
  },
});
