import type { AssembledAxle } from '../../setup/assembleCar';
import type { Piece } from '../pieces';

/**
 * Whether the right wheel goes, with the rack turned over, wherever the left one does in the mirror: points, settings and wheels
 * are alike, and the rack runs straight across, as far one way as the other.
 */
export function isMirrorImage({ areTwins, mechanism, left, right, setup }: AssembledAxle): boolean {
  const { steering } = mechanism;
  const barHole = setup?.barHole;
  return (
    areTwins &&
    JSON.stringify(left.wheel.document) === JSON.stringify(right.wheel.document) &&
    (typeof barHole !== 'object' || barHole.left === barHole.right) &&
    (steering === null || (isAcross(steering.axis) && isCentred(steering.travel)))
  );
}

const isAcross = ([x, , z]: readonly number[]): boolean => x === 0 && z === 0;
const isCentred = (travel: readonly [number, number] | null): boolean => travel === null || travel[0] === -travel[1];

/** A part of one side only has no mirror image. */
export const hasMirrorImage = ({ part }: Piece): boolean => part?.only !== true;
