import type { AdjusterDocument } from '../../geometry/index';
import { stepSetting } from './adjusterSteps';

const STEPS = [1, -1, 5, -5] as const;
const MOST_ROUNDS = 60;

/**
 * The mark of an adjuster that brings a point nearest to where the hand wants it: from the present one step by step,
 * as long as it comes nearer. Ties stay where they are.
 * @param missAt - how far the point is off at a setting; Infinity where that cannot be assembled
 */
export const nearestSetting = (
  adjuster: AdjusterDocument,
  start: number | null,
  missAt: (setting: number | null) => number,
): number | null => {
  let [best, miss] = [start, missAt(start)];
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const tried = STEPS.map((steps) => stepSetting(adjuster, best, steps)).map((setting) => ({ setting, miss: missAt(setting) }));
    const nearest = tried.reduce((a, b) => (b.miss < a.miss ? b : a));
    if (nearest.miss >= miss - 1e-9) return best;
    [best, miss] = [nearest.setting, nearest.miss];
  }
  return best;
};
