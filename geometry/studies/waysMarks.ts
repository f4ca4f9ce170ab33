import { stepScaleOf } from '../adjusters/stepScale';
import type { SetupDocument } from '../car/document';
import { solveMonotone } from '../solve/solveMonotone';
import type { Tried } from './tried';
import type { Adjustable, Look, WaysTries } from './waysTries';

/** A root between two marks misses by no more than this part of what is asked. */
const ROOT = 1e-6;

/** Up to so many marks of a part are all looked at. */
const FEW = 24;
/** A longer scale is looked at in so many places first. */
const PLACES = 12;
/** By how much more than its neighbours say a stretch may bend. */
const BEND = 4;

/**
 * Which marks of a part to look at: all of a short scale. Of a long one those between places of which the values, with a bend
 * four times what is seen beside them, may pass within what is asked; marks that were passed over are undefined.
 * @param look - the reading with the part on one of its marks
 * @param within - what counts as there [mm or degrees]
 */
export function looksAlong(
  count: number,
  look: (index: number) => Look | null,
  within: number,
): readonly (Look | null | undefined)[] {
  if (count <= FEW) return Array.from({ length: count }, (_, index) => look(index));
  const places = Array.from({ length: PLACES + 1 }, (_, i) => Math.round((i * (count - 1)) / PLACES));
  const looks = new Array<Look | null | undefined>(count).fill(undefined);
  for (const place of places) looks[place] = look(place);
  const signed = places.map((place) => looks[place]?.signed ?? NaN);
  const bends = places.map((_, i) => Math.abs(signed[i - 1] - 2 * signed[i] + signed[i + 1]));
  for (let i = 0; i < PLACES; i += 1) {
    const ends = [signed[i], signed[i + 1]] as const;
    const near = ends[0] > 0 === ends[1] > 0 ? Math.min(Math.abs(ends[0]), Math.abs(ends[1])) : 0;
    // a chord is off a parabola by an eighth of its second difference at most
    const known = [bends[i], bends[i + 1]].filter((bend) => !Number.isNaN(bend));
    const off = known.length === 0 ? NaN : (BEND * Math.max(...known)) / 8;
    // without numbers, as where a link does not reach, nothing can be passed over
    if (near - off > within) continue;
    for (let index = places[i] + 1; index < places[i + 1]; index += 1) looks[index] = look(index);
  }
  return looks;
}

/** Where the value is met between two settings of a part; null where it is not, or passes a pole there. */
export function rootBetween(tries: WaysTries, setup: SetupDocument, part: Adjustable, from: number, to: number): Tried | null {
  const { isRound, max } = stepScaleOf(part.adjuster);
  const at = (setting: number): SetupDocument => tries.at(setup, part, isRound ? setting % max : setting);
  const miss = (setting: number): number | null => tries.look(at(setting))?.signed ?? null;
  const root = solveMonotone(miss, from, (to - from) / 2, [from, to], 1e-10);
  if (root === null) return null;
  const there = tries.try(at(root));
  // a reading that passes a pole changes its sign there without ever being what is wanted
  return there !== null && Math.abs(there.signed) <= ROOT * Math.max(1, Math.abs(tries.question.value)) ? there : null;
}

/** Where the value is met between a mark that a part stands on and the next one on either side. */
export function rootBeside(tries: WaysTries, setup: SetupDocument, part: Adjustable, here: Look): Tried | null {
  const { isRound, max } = stepScaleOf(part.adjuster);
  const marks = part.settings.filter((setting): setting is number => setting !== null);
  const mark = marks.indexOf(tries.settingIn(setup, part) ?? NaN);
  if (mark < 0) return null;
  for (const by of [-1, 1]) {
    const beside = isRound ? (mark + by + marks.length) % marks.length : mark + by;
    const next = marks[beside];
    const there = next === undefined ? null : tries.look(tries.at(setup, part, next));
    if (there === null || there.signed > 0 === here.signed > 0) continue;
    const [low, high] = by < 0 ? [next, marks[mark]] : [marks[mark], next];
    const root = rootBetween(tries, setup, part, low, isRound && high < low ? high + max : high);
    if (root !== null) return root;
  }
  return null;
}
