import { add, dot, length, reject, scale, subtract, unit, type Vector } from '../../core/vector';
import { addWrenches, wrenchAt } from './balance';
import type { CarriedLoad } from './carriedLoad';
import type { Bending } from './linkRow';

/** A force on a beam. @see LinkEnd for the units */
export interface BeamForce {
  readonly at: Vector;
  readonly force: Vector;
  readonly moment: Vector | null;
  readonly place: string;
}

/**
 * The greatest bending moment of a beam: it is cut beside everything that bears on it, and what acts on the far piece is taken
 * about the cut. Between two forces the moment is straight, so it is greatest at one of them.
 * @param far - the end from which the pieces are counted
 * @param forces - all of them, reactions at the ends too
 * @param about - unit vector square to the line: only bending about it counts; null: any bending
 */
export function greatestBending(near: Vector, far: Vector, forces: readonly BeamForce[], about: Vector | null = null): Bending {
  const along = unit(subtract(far, near));
  const reach = (at: Vector): number => dot(subtract(at, near), along);
  const most = forces.reduce((sum, { force }) => sum + length(force), 0);
  let best: Bending = { moment: 0, at: near, place: forces[0]?.place ?? '' };
  for (const { at, place } of forces) {
    const cut = add(near, scale(along, reach(at)));
    for (const beyond of [1, -1]) {
      // a hair beside the cut: whatever bears there is on the far piece or it is not
      const from = reach(at) + beyond * 1e-6;
      const piece = addWrenches(
        forces
          .filter((one) => reach(one.at) > from)
          .flatMap((one) => [
            wrenchAt(one.force, one.at, cut),
            ...(one.moment === null ? [] : [{ force: [0, 0, 0] as Vector, moment: one.moment }]),
          ]),
      ).moment;
      const moment = about === null ? length(reject(piece, along)) : Math.abs(dot(piece, about));
      // what is left of sums that cancel is no bending
      if (moment > best.moment && moment > 1e-9 * most) best = { moment, at: cut, place };
    }
  }
  return best;
}

/** What a carried load does to the beam that it sits on. */
export const placeOf = ({ link, at, force }: CarriedLoad): BeamForce => ({ at, force, moment: null, place: link });
