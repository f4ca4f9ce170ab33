import type { SetupDocument } from '../car/document';
import type { Found, Tried } from './tried';
import { looksAlong, rootBeside } from './waysMarks';
import type { Adjustable, Look, WaysTries } from './waysTries';

/** Weights that differ by this part of themselves are equal. */
const ROUNDING = 1e-9;

/** One mark of each of two parts, both turned. */
interface Both {
  /** its place in the order of the file: the marks of the one, and in each those of the other */
  readonly number: number;
  readonly setup: SetupDocument;
  readonly look: Look;
}

/**
 * Two parts together: over the whole product of their marks, both turned, the one that reaches with the least change of
 * everything else, inside the limits; where none reaches the one that misses least. Of equals the earlier.
 * @param now - the setup itself
 * @returns null where that is no better than one of the two alone, where it stands there
 */
export function pairOf(tries: WaysTries, one: Adjustable, other: Adjustable, now: Tried): Found | null {
  const reaching = new Reaching(tries, now, bothOf(tries, one, other, tries.within).filter(reachesIn(tries)));
  const real = reaching.best ?? nearestLegal(tries, one, other, now);
  const isMore = (tried: Tried | null): tried is Tried => tried !== null && !isDoneByHalf(tries, one, other, tried, now);
  const walled = tries.question.withWalls === true && reaching.best === null && isMore(reaching.walled) ? reaching.walled : null;
  if (!isMore(real)) return walled === null ? null : { real: null, exact: null, walled };
  return { real, exact: rootBeside(tries, real.setup, other, real) ?? rootBeside(tries, real.setup, one, real), walled };
}

const reachesIn =
  ({ within }: WaysTries) =>
  ({ look }: Both): boolean =>
    look.missBy <= within;

/** Marks of both that may be within so much, and what is there. */
function bothOf(tries: WaysTries, one: Adjustable, other: Adjustable, within: number): readonly Both[] {
  // the long scale is the one of which marks are passed over
  const isSwapped = one.settings.length > other.settings.length;
  const [outer, inner] = isSwapped ? [other, one] : [one, other];
  const marksOf = ({ settings, isStill }: Adjustable) =>
    settings.flatMap((setting, index) => (isStill(setting) ? [] : [{ setting, index }]));
  const marks = marksOf(inner);
  const found: Both[] = [];
  for (const { setting, index } of marksOf(outer)) {
    const setup = tries.at(tries.setup, outer, setting);
    const at = (mark: number): SetupDocument => tries.at(setup, inner, marks[mark].setting);
    looksAlong(marks.length, (mark) => tries.look(at(mark)), within).forEach((look, mark) => {
      if (!look) return;
      const [i, j] = isSwapped ? [marks[mark].index, index] : [index, marks[mark].index];
      found.push({ number: i * other.settings.length + j, setup: at(mark), look });
    });
  }
  return found;
}

/** Of the marks that reach the one that changes least, inside the limits and outside of them. */
class Reaching {
  best: Tried | null = null;
  walled: Tried | null = null;

  constructor(tries: WaysTries, now: Tried, both: readonly Both[]) {
    const { document } = tries.mechanism;
    const hasLimits = (document.limits ?? []).length > 0;
    const sorted = both
      .map((one) => ({ ...one, least: tries.leastWeight(one.setup, now.numbers) }))
      .sort((a, b) => a.least - b.least || a.number - b.number);
    const found: Partial<Record<'best' | 'walled', { weight: number; number: number; tried: Tried }>> = {};
    for (const { setup, least, number } of sorted) {
      // the weight of the axle alone is past the best already: nothing that follows can be better
      if (found.best !== undefined && least > found.best.weight * (1 + ROUNDING)) break;
      const tried = tries.try(setup);
      if (tried === null) continue;
      const kind = !hasLimits || tried.isLegal ? 'best' : 'walled';
      const weight = tries.weight(now, tried);
      const known = found[kind];
      const isEqual = known !== undefined && Math.abs(weight - known.weight) <= ROUNDING * Math.max(weight, known.weight);
      if (known === undefined || (isEqual ? number < known.number : weight < known.weight))
        found[kind] = { weight, number, tried };
    }
    this.best = found.best?.tried ?? null;
    this.walled = found.walled?.tried ?? null;
  }
}

/** Where nothing reaches: of what comes nearer than the setup itself the legal one that misses least. */
function nearestLegal(tries: WaysTries, one: Adjustable, other: Adjustable, now: Tried): Tried | null {
  const most = now.missBy - tries.within;
  if (most <= tries.within) return null;
  const nearer = bothOf(tries, one, other, most).filter(({ look }) => look.missBy > tries.within && look.missBy < most);
  const sorted = nearer.sort((a, b) => a.look.missBy - b.look.missBy || a.number - b.number);
  for (const { setup } of sorted) {
    const tried = tries.try(setup);
    if (tried?.isLegal) return tried;
  }
  return null;
}

/** Whether one of a pair, where it stands there, does as much by itself: as near, inside the limits, changing no more of all else. */
function isDoneByHalf(tries: WaysTries, one: Adjustable, other: Adjustable, pair: Tried, now: Tried): boolean {
  const most = tries.weight(now, pair) * (1 + ROUNDING) + ROUNDING;
  return [one, other].some((part) => {
    const half = tries.try(tries.at(tries.setup, part, tries.settingIn(pair.setup, part)));
    if (half === null || (pair.isLegal && !half.isLegal)) return false;
    return half.missBy <= Math.max(tries.within, pair.missBy + ROUNDING) && tries.weight(now, half) <= most;
  });
}
