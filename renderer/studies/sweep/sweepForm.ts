import {
  positionOf,
  positionsOfList,
  readPositionList,
  stepsBetween,
  type AskedPosition,
  type AxleName,
  type CarDocument,
  type Fault,
  type Position,
  type StudyOrder,
} from '../../../geometry/index';
import type { MotionRanges } from '../../compute/motionRanges';
import { setupNamed } from '../../state/settings';
import { atOf, placeOf } from '../kept/keptParts';
import type { QuestionForms } from '../kept/useQuestionPage';
import { faultOfNumber, fieldOf, type FieldValue } from '../question/fieldValue';
import { faultOfPlace, RIDE_HEIGHT, type Place } from '../question/place';

export type SweepOrder = Extract<StudyOrder, { study: 'sweep' }>;

export const SWEEP_MOTIONS = ['bump', 'roll', 'steer', 'combined', 'list'] as const;
export type SweepMotion = (typeof SWEEP_MOTIONS)[number];
export const SWEEP_WORDS: Readonly<Record<SweepMotion, string>> = {
  bump: 'bump',
  roll: 'roll',
  steer: 'steer',
  combined: 'heave, roll and steer together',
  list: 'a recorded list',
};

/** A list that was opened: its positions, or what is wrong with it. */
export type OpenedList =
  | {
      readonly ok: true;
      readonly name: string;
      readonly asked: readonly AskedPosition[];
      readonly positions: readonly Position[];
      /** how its fields were read, in words, where that is not by commas */
      readonly readAs: string | null;
    }
  | { readonly ok: false; readonly name: string; readonly message: string; readonly faults: readonly Fault[] };

/** The question of a sweep, as it stands in its sentence. */
export interface SweepForm {
  readonly motion: SweepMotion;
  /** which axles: the one of the header, or both and the whole car */
  readonly axles: 'one' | 'both';
  /** of the motion: mm, degrees in roll */
  readonly from: FieldValue;
  readonly to: FieldValue;
  readonly steps: FieldValue;
  /** where what is not swept is held */
  readonly held: Place;
  /** positions that the person edits, of heave, roll and steer together */
  readonly rows: readonly Place[];
  readonly list: OpenedList | null;
  /** readings that are columns and curves, by key */
  readonly readings: readonly string[];
}

export type SweepFault = Readonly<Partial<Record<'from' | 'to' | 'steps' | 'held' | 'rows', string>>>;

/** Positions of a motion, at most. */
export const MOST_STEPS = 2001;
const STEPS = 25;

const row = (travel: number, roll: number, rack: number): Place => ({
  travel: fieldOf(travel),
  roll: fieldOf(roll),
  rack: fieldOf(rack),
});

const rangeOf = (motion: SweepMotion, ranges: MotionRanges) =>
  motion === 'roll' ? ranges.roll : motion === 'steer' ? (ranges.rack ?? ranges.travel) : ranges.travel;

export const beginSweep = (ranges: MotionRanges): SweepForm => ({
  motion: 'bump',
  axles: 'one',
  from: fieldOf(ranges.travel.min),
  to: fieldOf(ranges.travel.max),
  steps: fieldOf(STEPS),
  held: RIDE_HEIGHT,
  rows: [row(0, 0, 0), row(10, 0.5, 5), row(20, 1, 10), row(30, 1.5, 15)],
  list: null,
  readings: ['camber', 'toe', 'caster', 'rollCentreHeight'],
});

/** With another motion its ends are those that the car has. */
export const withMotion = (form: SweepForm, motion: SweepMotion, ranges: MotionRanges): SweepForm => {
  const { min, max } = rangeOf(motion, ranges);
  return { ...form, motion, ...(motion === 'combined' || motion === 'list' ? {} : { from: fieldOf(min), to: fieldOf(max) }) };
};

/** Reads the bytes of a list that was dropped or opened. */
export const openList = (name: string, bytes: Uint8Array): OpenedList => {
  const read = readPositionList(bytes);
  if (!read.ok)
    return { ok: false, name, message: `${name} is no list of positions: ${read.failure.message}`, faults: read.failure.faults };
  const positions = positionsOfList(read.value.positions);
  return positions.ok
    ? { ok: true, name, asked: read.value.positions, positions: positions.value, readAs: read.value.readAs }
    : { ok: false, name, message: positions.failure, faults: [] };
};

const isMotion = (motion: SweepMotion): motion is 'bump' | 'roll' | 'steer' => motion !== 'combined' && motion !== 'list';

const askedOf = ({ travel, roll, rack }: Place): AskedPosition => ({
  travel: travel.value ?? 0,
  roll: roll.value ?? 0,
  rack: rack.value ?? 0,
});

/** What is wrong with a form, field by field. */
export const sweepFaults = (form: SweepForm): SweepFault => {
  const faults: [keyof SweepFault, string | null][] = [];
  if (isMotion(form.motion)) {
    const { value } = form.steps;
    const ends = [form.from.value ?? NaN, form.to.value ?? NaN];
    const isSteep = form.motion === 'roll' && ends.some((end) => Math.abs(end) > 45);
    faults.push(
      ['from', faultOfNumber(form.from) ?? (isSteep ? 'roll is at most 45° either way' : null)],
      ['to', faultOfNumber(form.to)],
      [
        'steps',
        faultOfNumber(form.steps) ??
          (value !== null && (!Number.isInteger(value) || value < 2 || value > MOST_STEPS)
            ? `a whole number from 2 to ${MOST_STEPS}`
            : null),
      ],
      ['held', faultOfPlace(form.held)],
    );
  }
  if (form.motion === 'combined') {
    const wrong = form.rows.flatMap((one, index) => {
      const judged = faultOfPlace(one) ?? faultIn(positionOf(askedOf(one)));
      return judged === null ? [] : [`row ${index + 1}: ${judged}`];
    });
    faults.push(['rows', form.rows.length === 0 ? 'there are no positions' : (wrong[0] ?? null)]);
  }
  return Object.fromEntries(faults.filter(([, fault]) => fault !== null));
};

const faultIn = (judged: ReturnType<typeof positionOf>): string | null => ('fault' in judged ? judged.fault : null);

/** The inputs of a sweep and where they put the car; null where something cannot be read, or no list is open. */
export interface SweptInputs {
  readonly inputs: readonly number[];
  /** mm, deg, or 1 for the rows of a list */
  readonly unit: 'mm' | 'deg' | '1';
  readonly positions: readonly Position[];
}

export const sweptInputs = (form: SweepForm): SweptInputs | null => {
  if (Object.keys(sweepFaults(form)).length > 0) return null;
  if (form.motion === 'list') {
    if (!form.list?.ok) return null;
    return { inputs: form.list.positions.map((_, index) => index + 1), unit: '1', positions: form.list.positions };
  }
  if (form.motion === 'combined') {
    const positions = form.rows.flatMap((one) => {
      const judged = positionOf(askedOf(one));
      return 'fault' in judged ? [] : [judged];
    });
    return { inputs: positions.map((_, index) => index + 1), unit: '1', positions };
  }
  const key = { bump: 'travel', roll: 'roll', steer: 'rack' } as const;
  const inputs = stepsBetween(form.from.value ?? 0, form.to.value ?? 0, form.steps.value ?? 2);
  const { motion } = form;
  const positions = inputs.flatMap((input) => {
    const judged = positionOf({ ...askedOf(form.held), [key[motion as 'bump']]: input });
    return 'fault' in judged ? [] : [judged];
  });
  return { inputs, unit: motion === 'roll' ? 'deg' : 'mm', positions };
};

/** The axles whose rows are wanted. */
export const axlesAsked = (axles: SweepForm['axles'], document: CarDocument, axle: AxleName): readonly AxleName[] =>
  axles === 'one' ? [axle] : (['front', 'rear'] as const).filter((one) => document[one] !== undefined);

export const sweepOrder = (
  swept: SweptInputs | null,
  axles: SweepForm['axles'],
  document: CarDocument,
  setup: string,
  axle: AxleName,
): SweepOrder | null =>
  swept && {
    study: 'sweep',
    document,
    question: { setup: setupNamed(document, setup), axles: axlesAsked(axles, document, axle), positions: swept.positions },
  };

/** How the form and the question of the file become one another. */
export const sweepForms = (axle: AxleName, ranges: MotionRanges): QuestionForms<'sweep', SweepForm> => ({
  ask: 'sweep',
  begin: () => beginSweep(ranges),
  formOf: ({ over, positions, at, readings, axle: of }) => {
    const begun = beginSweep(ranges);
    return {
      ...begun,
      motion: over?.motion ?? 'combined',
      axles: of === undefined ? 'both' : 'one',
      ...(over && { from: fieldOf(over.from), to: fieldOf(over.to), steps: fieldOf(over.steps) }),
      held: placeOf(at),
      rows: positions?.map((position) => placeOf(position)) ?? begun.rows,
      readings: readings ?? begun.readings,
    };
  },
  questionOf: (form) => {
    if (form.motion === 'list')
      return { fault: 'A recorded list stays in its own file: keep a motion, or positions that are written here.' };
    if (Object.keys(sweepFaults(form)).length > 0) return { fault: null };
    if (form.readings.length === 0) return { fault: 'A question that is kept has one reading at least.' };
    const at = atOf(form.held);
    return {
      question: {
        ask: 'sweep',
        ...(form.axles === 'one' && { axle }),
        ...(form.motion === 'combined'
          ? { positions: form.rows.map((one) => atOf(one) ?? {}) }
          : {
              ...(at && { at }),
              over: {
                motion: form.motion,
                from: form.from.value ?? 0,
                to: form.to.value ?? 0,
                steps: form.steps.value ?? STEPS,
              },
            }),
        readings: form.readings,
      },
    };
  },
});
