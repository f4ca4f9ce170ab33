import type { SideName } from '../../car/document';
import { add, scale } from '../../core/vector';
import type { PaperPlane } from './plane';
import type { Outline } from './section';

/**
 * Outlines that are of one side of the car, out of a section of both: those that lie all on the other side are left to that side's
 * own template. Where any of them crosses the car's centre line every one stays, since what is a hole of which is not asked.
 */
export function ofSide(outlines: readonly Outline[], plane: PaperPlane, side: SideName): readonly Outline[] {
  const sense = side === 'left' ? 1 : -1;
  const across = ([x, y]: readonly [number, number]): number =>
    sense * add(plane.point, add(scale(plane.right, x), scale(plane.up, y)))[1];
  const isOwn = outlines.map(({ points }) => points.some((point) => across(point) > 0));
  const isOther = outlines.map(({ points }) => points.some((point) => across(point) <= 0));
  if (isOwn.some((own, i) => own && isOther[i])) return outlines;
  return outlines.filter((_, i) => isOwn[i]);
}
