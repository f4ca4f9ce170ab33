import type { AtDocument, MotionName } from '../../../geometry/index';
import { EMPTY_FIELD, fieldOf } from '../question/fieldValue';
import { placeParts, type Place } from '../question/place';
import type { ToeChoice } from '../question/toeChoice';

/** What stands on a page, as the file keeps it; or why it cannot be kept, null where the fields say so themselves. */
export type Keepable<Question> = { readonly question: Question } | { readonly fault: string | null };

/** A place as the file keeps it: what is 0 is left out; undefined: all of it is. */
export const atOf = (place: Place): AtDocument | undefined => {
  const moved = placeParts.flatMap((part) => {
    const { value } = place[part];
    return value === null || value === 0 ? [] : [[part, value] as const];
  });
  return moved.length === 0 ? undefined : Object.fromEntries(moved);
};

export const placeOf = ({ travel = 0, roll = 0, rack = 0 }: AtDocument = {}): Place => ({
  travel: fieldOf(travel),
  roll: fieldOf(roll),
  rack: fieldOf(rack),
});

/** Toe as the file keeps it: true for the setup's own, false where it follows, else degrees. */
export const setToeOf = ({ kind, value }: ToeChoice): boolean | number =>
  kind === 'own' ? true : kind === 'follow' ? false : (value.value ?? false);

/** @param unsaid - where the file says nothing */
export const toeOf = (setToe: boolean | number | undefined, unsaid: ToeChoice['kind'] = 'own'): ToeChoice => {
  if (typeof setToe === 'number') return { kind: 'value', value: fieldOf(setToe) };
  return { kind: setToe === undefined ? unsaid : setToe ? 'own' : 'follow', value: EMPTY_FIELD };
};

/** The part of a place that a motion moves. */
export const MOVED_BY: Readonly<Record<MotionName, keyof Place>> = { bump: 'travel', roll: 'roll', steer: 'rack' };
