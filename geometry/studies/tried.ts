import { cleanSetting } from '../adjusters/stepScale';
import type { SetupDocument } from '../car/document';
import type { Numbers } from './carNumbers';
import type { BrokenLimit } from './brokenLimits';

/** One number, or one of each wheel. */
export type Reached = number | { readonly left: number; readonly right: number };

/** A setup as it was tried. */
export interface Tried {
  readonly setup: SetupDocument;
  readonly value: Reached;
  /** mean of value − wanted over the wheels: what a root is sought of */
  readonly signed: number;
  readonly missBy: number;
  readonly numbers: Numbers;
  readonly isLegal: boolean;
  readonly broken: readonly BrokenLimit[];
}

/** What a part or a pair comes to: the nearest on real steps, and between them. */
export interface Found {
  readonly real: Tried | null;
  readonly exact: Tried | null;
  /** what reaches and breaks a limit, where that is asked for */
  readonly walled: Tried | null;
}

/** The legal one that misses least; of equals the earlier. */
export function nearest(tried: readonly (Tried | null)[]): Tried | null {
  let best: Tried | null = null;
  for (const one of tried) if (one?.isLegal && (best === null || one.missBy < best.missBy)) best = one;
  return best;
}

/** Of those that reach and break a limit the one that misses least; of equals the earlier. */
export function nearestWalled(tried: readonly (Tried | null)[], within: number): Tried | null {
  let best: Tried | null = null;
  for (const one of tried)
    if (one !== null && !one.isLegal && one.missBy <= within && (best === null || one.missBy < best.missBy)) best = one;
  return best;
}

/** Found by halving: nine decimals are plenty. */
export function tidySettings(settings: SetupDocument): SetupDocument {
  return JSON.parse(JSON.stringify(settings), (_, value: unknown) =>
    typeof value === 'number' ? cleanSetting(value) : value,
  ) as SetupDocument;
}
