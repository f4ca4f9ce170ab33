import type { CurveOver } from '../compute/curves';
import { preferredList, preferredOf, type Preferences } from '../state/preferences';
import { readingOfNumber } from './plotContent';

/** Names under which the strip's choices are kept. */
export const CURVES_OVER = 'curves.over';
export const CURVES_SHOWN = 'curves.shown';

/** What one turns a part for, at first: bump steer, camber and the roll centre. */
const FIRST_PLOTS = ['toe', 'camber', 'rollCentreHeight'];
export const MOST_PLOTS = 6;

/** @param isSteered - nothing is drawn over steer on an axle that is not steered */
export const chosenOver = (preferences: Preferences, isSteered: boolean): CurveOver => {
  const over = preferredOf<CurveOver>(preferences, CURVES_OVER, ['bump', 'roll', 'steer']);
  return over === 'steer' && !isSteered ? 'bump' : over;
};

/** The readings of the plots, left to right: at least one. */
export const chosenPlots = (preferences: Preferences): readonly string[] => {
  const kept = preferredList(preferences, CURVES_SHOWN, FIRST_PLOTS).filter((number) => readingOfNumber(number));
  return kept.length > 0 ? kept.slice(0, MOST_PLOTS) : FIRST_PLOTS;
};

/** The first of the usual readings that no plot shows yet. */
export const nextPlot = (shown: readonly string[]): string =>
  [...FIRST_PLOTS, 'caster', 'mechanicalTrail', 'scrubRadius', 'track', 'bumpSteer', 'camberGain'].find(
    (number) => !shown.includes(number),
  ) ?? 'camber';

/** Least width of a plot in which its scale, its name and its values can be read [px]. */
const LEAST_WIDTH = 186;

/** How many plots a strip of that width has room for: the last ones give way first. */
export const plotsThatFit = (width: number): number => Math.max(1, Math.floor(width / LEAST_WIDTH));
