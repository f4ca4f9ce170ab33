import { add, subtract, type Vector } from '../../core/vector';
import { BOX, POINT, SEGMENT, type Core } from '../distance/core';
import type { Piece } from '../pieces';
import type { Spin } from '../shapes/solid';
import { fieldOfSolid } from './field';

/**
 * Whether a piece is all within a filled tyre that moves as it does, as the inside of a rim is: it adds nothing to what is swept, and a
 * skin without thickness would ask for a very fine lattice.
 */
export const isHidden = (piece: Piece, others: readonly Piece[]): boolean => others.some((other) => isWithin(piece, other));

function isWithin({ solid, carrier }: Piece, other: Piece): boolean {
  if (solid.kind !== 'round' || solid.cover !== null || other.solid.kind !== 'round' || other.solid.cover === null) return false;
  if (carrier !== other.carrier || !isAbout(solid.spin, other.solid.spin)) return false;
  const hull = fieldOfSolid(other.solid, 0);
  const gradient = new Float64Array(3);
  return solid.cores.every((core, i) => {
    const corners = cornersOf(core);
    return corners !== null && corners.every(([x, y, z]) => hull.distance(x, y, z, gradient) <= -solid.rounds[i]);
  });
}

/** A hull about an axis holds what something sweeps about that axis where it holds the thing. */
const isAbout = (spin: Spin | null, hull: Spin | null): boolean =>
  spin === null || (hull !== null && isSame(spin.at, hull.at) && isSame(spin.axis, hull.axis));

const isSame = (a: Vector, b: Vector): boolean => a.every((value, i) => value === b[i]);

/** Points whose hull a core is; null where it has no corners. */
function cornersOf(core: Core): readonly Vector[] | null {
  const vector = (from: number): Vector => [core[from], core[from + 1], core[from + 2]];
  const froms = core[0] === POINT ? [] : core[0] === SEGMENT ? [4] : core[0] === BOX ? [4, 7, 10] : null;
  if (froms === null) return null;
  return froms.reduce<readonly Vector[]>(
    (made, from) => made.flatMap((point) => [add(point, vector(from)), subtract(point, vector(from))]),
    [vector(1)],
  );
}
