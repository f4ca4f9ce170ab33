import type { AxleDocument, CarDocument } from '../../geometry/index';
import type { AxleName } from '../../geometry/index';
import { mmPerFileUnit } from '../units/fileLength';
import type { BenchReadings } from './answerBench';

/** How far one motion can go. Between `min` and `max` the rule is drawn, beyond `stops` it is hatched. */
export interface MotionRange {
  readonly min: number;
  readonly max: number;
  /** where a part meets its stop; null where the file does not say */
  readonly stops: readonly [number, number] | null;
}

export interface MotionRanges {
  /** wheel travel from standing [mm] */
  readonly travel: MotionRange;
  /** [degrees] */
  readonly roll: MotionRange;
  /** rack travel [mm]; null on an axle without steering */
  readonly rack: MotionRange | null;
}

/** Shown where the file has neither damper nor travel [mm]. */
const SKETCHED_TRAVEL = 80;
const ROLL_DEG = 4;
/** Shown where the file has a rack and not its travel [mm]. */
const SKETCHED_RACK = 60;
const ROUND_TO = 5;

const outward = (value: number): number => Math.sign(value) * Math.ceil(Math.abs(value) / ROUND_TO) * ROUND_TO;

const rangeTo = (low: number, high: number): MotionRange => ({ min: outward(low), max: outward(high), stops: [low, high] });

/** Least damper travel left either way over both sides, as wheel travel; null where the damper is not described. */
const damperRange = (standing: BenchReadings): MotionRange | null => {
  const way = (key: string): number | null => {
    const values = [standing.left, standing.right].map((side) => {
      const [left, ratio] = [side[key], side['damperRatio']];
      return typeof left === 'number' && typeof ratio === 'number' && ratio > 0 ? left / ratio : null;
    });
    return values.some((value) => value === null) ? null : Math.min(...(values as number[]));
  };
  const [bump, droop] = [way('solidLeft'), way('droopLeft')];
  return bump === null || droop === null || bump <= 0 || droop <= 0 ? null : rangeTo(-droop, bump);
};

const rackRange = (axle: AxleDocument, mm: number): MotionRange | null => {
  if (!axle.steering) return null;
  const { travel } = axle.steering;
  if (travel === undefined) return { min: -SKETCHED_RACK, max: SKETCHED_RACK, stops: null };
  const [low, high] = typeof travel === 'number' ? [-travel, travel] : travel;
  return rangeTo(low * mm, high * mm);
};

/**
 * How far bump, roll and steer go on an axle: by its damper from open to solid, by its `travel` where there is none.
 * @param standing - readings where the setup stands; null where they are not known
 */
export const motionRanges = (document: CarDocument, axleName: AxleName, standing: BenchReadings | null): MotionRanges => {
  const axle = document[axleName];
  const mm = mmPerFileUnit(document);
  const byDamper = standing && axle?.damper ? damperRange(standing) : null;
  const byFile = axle?.travel ? rangeTo(axle.travel[0] * mm, axle.travel[1] * mm) : null;
  return {
    travel: byDamper ?? byFile ?? { min: -SKETCHED_TRAVEL, max: SKETCHED_TRAVEL, stops: null },
    roll: { min: -ROLL_DEG, max: ROLL_DEG, stops: null },
    rack: axle ? rackRange(axle, mm) : null,
  };
};
