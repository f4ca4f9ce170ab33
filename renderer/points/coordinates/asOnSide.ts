import type { BroughtPoint, SideName, Vector } from '../../../geometry/index';

const across = ([x, y, z]: Vector): Vector => [x, y === 0 ? 0 : -y, z];

/** A point as a side has it: an average is kept on the left, and beside a row of the right it is read as its mirror image. */
export const asOnSide = (point: BroughtPoint, side: SideName): BroughtPoint =>
  point.side === side
    ? point
    : {
        ...point,
        at: across(point.at),
        replaces: point.replaces && across(point.replaces),
        change: point.change && across(point.change),
      };
