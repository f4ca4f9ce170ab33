import type { MotionRange, MotionRanges } from '../compute/motionRanges';
import { toDegrees } from '../../geometry/index';
import type { BenchPosition } from '../state/benchStore';

/** What play moves. */
export type RideKind = 'bump' | 'roll' | 'steer' | 'combined';
export const RIDE_KINDS = ['bump', 'roll', 'steer', 'combined'] as const satisfies readonly RideKind[];

/** One slow ride over a wave [ms]; where less movement is asked for, as many still pictures of a slower one. */
const PERIOD = 4200;
const STILL_PERIOD = 12_000;
const STILLS = 8;
/** The ride that greets: whole waves, so that it ends where the car stands [ms]. */
export const GREETING = 2 * PERIOD;
/** Bump and roll together use half of each, so that neither wheel goes past its damper's ends. */
const TOGETHER = 0.5;

/** How far a ride goes either way: mm, degrees, mm. */
export interface RideSpan {
  readonly travel: readonly [number, number];
  readonly roll: readonly [number, number];
  readonly rack: readonly [number, number] | null;
}

const endsOf = ({ min, max, stops }: MotionRange): readonly [number, number] => stops ?? [min, max];

/**
 * A ride goes to the ends of the dampers and of the rack. In roll one wheel rises as the other falls, by half the track times
 * the slope: that stays inside the dampers' ends too.
 * @param track - where the setup stands [mm]; null where it is not known
 */
export const rideSpan = ({ travel, roll, rack }: MotionRanges, track: number | null): RideSpan => {
  const ends = endsOf(travel);
  const reach = Math.min(-ends[0], ends[1]);
  const most = track === null ? Infinity : toDegrees(Math.atan2(2 * Math.max(0, reach), track));
  const [low, high] = endsOf(roll);
  return { travel: ends, roll: [Math.max(low, -most), Math.min(high, most)], rack: rack && endsOf(rack) };
};

const within = ([low, high]: readonly [number, number], wave: number, share: number): number => {
  const value = Number((share * wave * (wave >= 0 ? high : -low)).toFixed(3));
  return value === 0 ? 0 : value;
};

/**
 * Where the car is at a moment of a ride. What the ride does not move stays as it is.
 * @param elapsed - [ms]
 * @param isStill - less movement is asked for: the ride is shown in still pictures
 */
export const rideAt = (kind: RideKind, span: RideSpan, elapsed: number, isStill: boolean): Partial<BenchPosition> => {
  const part = isStill ? Math.floor((elapsed / STILL_PERIOD) * STILLS) / STILLS : elapsed / PERIOD;
  const wave = (turns: number): number => Math.sin(2 * Math.PI * turns);
  const rack = span.rack ? { rack: within(span.rack, wave(kind === 'combined' ? part / 2 : part), 1) } : {};
  switch (kind) {
    case 'bump':
      return { travel: within(span.travel, wave(part), 1) };
    case 'roll':
      return { rollDeg: within(span.roll, wave(part), 1) };
    case 'steer':
      return rack;
    case 'combined':
      return {
        travel: within(span.travel, wave(part), TOGETHER),
        rollDeg: within(span.roll, wave(part / 2), TOGETHER),
        ...rack,
      };
  }
};
