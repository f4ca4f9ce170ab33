import type { SideName } from '../../../geometry/index';

/** A plane that is given for the left, on a side: mirrored to the right, as parts are. @param plane - point and normal */
export const planeOnSide = (plane: readonly number[], side: SideName): readonly number[] =>
  side === 'left' ? plane : plane.map((value, index) => (index === 1 || index === 4 ? -value + 0 : value));
