import type { AxleName } from '../../../geometry/index';
import { EMPTY_QUESTION, type ListQuestion } from './question';

type OfAxle = Pick<ListQuestion, 'names' | 'guessed' | 'datum' | 'datumRows'>;

/**
 * What was said of a list: how it was measured is true for both axles; which point a row is, is said for each of them, since
 * a row named for the front axle would else be taken for a point of the same name at the rear.
 */
export interface KeptList {
  readonly measured: Omit<ListQuestion, keyof OfAxle>;
  readonly named: Readonly<Partial<Record<AxleName, OfAxle>>>;
  /** what is added was said of a list that was taken, and kept for the next one */
  readonly isShiftKept: boolean;
}

const split = ({ names, guessed, datum, datumRows, ...measured }: ListQuestion) => ({
  measured,
  named: { names, guessed, datum, datumRows },
});

const EMPTY = split(EMPTY_QUESTION);

export const NO_LIST: KeptList = { measured: EMPTY.measured, named: {}, isShiftKept: false };

/** The question as it is asked of one axle. */
export const questionOf = ({ measured, named }: KeptList, axle: AxleName): ListQuestion => ({
  ...measured,
  ...(named[axle] ?? EMPTY.named),
});

/** What is said of one axle is kept beside what was said of the other, as long as it is the same list. */
export const withQuestion = (kept: KeptList, axle: AxleName, question: ListQuestion): KeptList => {
  const { measured, named } = split(question);
  const isSameList = measured.text === kept.measured.text;
  const isSameShift = measured.shift === kept.measured.shift;
  return {
    measured,
    named: { ...(isSameList ? kept.named : {}), [axle]: named },
    isShiftKept: kept.isShiftKept && isSameShift,
  };
};

/** A list that was taken goes; its unit, axes and datum stay for the other axle's, which was measured in the same frame. */
export const afterTaking = ({ measured: { unit, axes, shift } }: KeptList): KeptList => ({
  ...NO_LIST,
  measured: { ...EMPTY.measured, unit, axes, shift },
  isShiftKept: shift.some((text) => text.trim() !== ''),
});
