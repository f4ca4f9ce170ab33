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
  const moved = to.x - from.x - (to.y - from.y);
  return nearest(adjuster, start + (moved / UNITS_PER_STEP) * scaleOf(adjuster).step);
};
