import type { AxleName } from '../../geometry/index';
import { memoLast } from '../compute/memoLast';
import { motionRanges } from '../compute/motionRanges';
import { standingRow } from '../compute/standing';
import type { BenchState } from '../state/benchStore';

const PATH_STEPS = 40;
const spread = (from: number, to: number, steps: number): readonly number[] =>
  Array.from({ length: steps + 1 }, (_, index) => from + ((to - from) * index) / steps);

/**
 * Travels and racks that an axle can be brought to [mm]: for paths all along the travel, for envelopes its ends and middle.
 * Travel counts from where the car stands; an axle that is not steered has one rack, 0.
 */
export const reachOf = memoLast((bench: NonNullable<BenchState['history']>['present'], axle: AxleName) => {
  const { travel, rack } = motionRanges(bench.document, axle, standingRow(bench, axle));
  const [low, high] = travel.stops ?? [travel.min, travel.max];
  const [right, left] = rack ? (rack.stops ?? [rack.min, rack.max]) : [0, 0];
  return {
    path: spread(low, high, PATH_STEPS),
    straight: [0] as readonly number[],
    ends: [low, 0, high] as readonly number[],
    locks: right === left ? [0] : ([right, 0, left] as readonly number[]),
  };
});
