import { toDegrees, type AdjusterDocument } from '../../geometry/index';
import { nearestMark, nearestTenth, scaleOf } from '../compute/adjusterSteps';

/** A point of the drawing relative to its middle, in drawing units (120 across), y downward. */
export interface DialPoint {
  readonly x: number;
  readonly y: number;
}

const isRotary = (adjuster: AdjusterDocument): boolean =>
  adjuster.kind === 'eccentric-bolt' || adjuster.kind === 'offset-bushing' || adjuster.kind === 'clamp-eccentric';

/** Drawing units of pointer travel for one step of a part that slides. */
const UNITS_PER_STEP = 5;

/** Whether a part that slides is drawn standing: a perch on its thread, a stack of shims. */
const isUpright = (adjuster: AdjusterDocument): boolean =>
  adjuster.kind === 'perch' ||
  (adjuster.kind === 'slide' &&
    (adjuster.shims !== undefined || (adjuster.along !== 'spindle' && Math.abs(adjuster.along[2]) > 0.7)));

/** How much more across than along a part the hand has to go before that counts instead. */
const ACROSS = 2;

/**
 * How far a hand went along a part. To the right and upward are plus, both together add up; where they speak against each other the
 * way that the part slides counts, unless the hand clearly went the other.
 */
const alongPart = (right: number, up: number, upright: boolean): number => {
  if (right * up >= 0) return right + up;
  const [along, across] = upright ? [up, right] : [right, up];
  return Math.abs(across) > ACROSS * Math.abs(along) ? across : along;
};

const clockOf = ({ x, y }: DialPoint): number => toDegrees(Math.atan2(x, -y));

/** The smallest turn from one clock angle to another [degrees, −180…180]. */
const turnBetween = (from: number, to: number): number => ((((to - from + 180) % 360) + 360) % 360) - 180;

/**
 * The setting that a drag over the part asks for: rotary parts follow the hand about their centre, the others follow it upward
 * or to the right.
 * @param start - setting at pointer-down, in the file's unit
 * @param reversed - the drawing's clock runs against the setting's
 * @param fine - between marks, by tenths of one; else on the part's marks
 */
export const dragSetting = (
  adjuster: AdjusterDocument,
  start: number,
  from: DialPoint,
  to: DialPoint,
  reversed: 1 | -1,
  fine = false,
): number => {
  const nearest = fine ? nearestTenth : nearestMark;
  if (isRotary(adjuster)) return nearest(adjuster, start + reversed * turnBetween(clockOf(from), clockOf(to)));
  const moved = alongPart(to.x - from.x, from.y - to.y, isUpright(adjuster));
  return nearest(adjuster, start + (moved / UNITS_PER_STEP) * scaleOf(adjuster).step);
};
