import { anyPerpendicular, cross, dot, length, reject, scale, subtract, unit, type Vector } from '../../core/vector';

/**
 * How the tilt of a joint is counted [rad].
 * - `bore`: the angle between the bolt and the axis of the bore, whichever way they point
 * - `rod`: the angle by which a rod that is free to turn about itself leaves the plane square to the bolt: asin|bolt · rod|
 */
export type TiltKind = 'bore' | 'rod';

/** Both are unit vectors. By both sine and cosine, so that no digits are lost near 0 and 90°. */
export function tiltBetween(kind: TiltKind, bolt: Vector, other: Vector): number {
  const along = Math.abs(dot(bolt, other));
  const across = length(cross(bolt, other));
  return kind === 'bore' ? Math.atan2(across, along) : Math.atan2(along, across);
}

export interface Clocked {
  /** unit vector */
  readonly bolt: Vector;
  /** greatest tilt with it [rad] */
  readonly tilt: number;
}

/** Tilts that differ by less are the same [rad]: a hundredth of what is promised. */
const SAME = 1e-6;
const MOST_ROUNDS = 40;

/**
 * The direction of the bolt with which the greatest tilt is least, over all directions that a bolt can have.
 *
 * The best for a few of the directions can only be too good: it is found exactly, the direction that is worst with it joins the
 * few, and where none is worse it is the best for all.
 * @param start - the direction that is worst with the present bolt
 * @param worstWith - the direction in which a bolt's tilt is greatest, over everything
 * @param roughly - the same over some of it, at less cost
 */
export function bestBolt(
  kind: TiltKind,
  present: Vector,
  start: Vector,
  worstWith: (bolt: Vector) => Vector,
  roughly: (bolt: Vector) => Vector = worstWith,
): Clocked {
  const few: Vector[] = [start];
  const now = { bolt: present, tilt: tiltBetween(kind, present, start) };
  let best: Clocked = now;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const bolt = bestForFew(kind, few, best.bolt);
    const promised = Math.max(...few.map((one) => tiltBetween(kind, bolt, one)));
    const rough = roughly(bolt);
    if (tiltBetween(kind, bolt, rough) > promised + SAME) {
      few.push(rough);
      continue;
    }
    const worst = worstWith(bolt);
    const tilt = tiltBetween(kind, bolt, worst);
    if (tilt < best.tilt) best = { bolt, tilt };
    if (tilt <= promised + SAME) break;
    few.push(worst);
  }
  // a bolt that does as well stays where it is
  if (now.tilt <= best.tilt + SAME) return now;
  return dot(best.bolt, present) < 0 ? { ...best, bolt: scale(best.bolt, -1) } : best;
}

/**
 * The best bolt for a few directions: of the places where one, two or three of them are worst alike, all tried.
 * @param near - of bolts that are equally good the nearest to this one
 */
function bestForFew(kind: TiltKind, few: readonly Vector[], near: Vector): Vector {
  let best: Vector = near;
  let least = Infinity;
  const look = (towards: Vector): void => {
    const size = length(towards);
    if (!(size > 1e-9)) return;
    const bolt = scale(towards, 1 / size);
    let worst = 0;
    for (const one of few) {
      worst = Math.max(worst, tiltBetween(kind, bolt, one));
      if (worst > least + 1e-12) return;
    }
    if (worst < least - 1e-12 || Math.abs(dot(bolt, near)) > Math.abs(dot(best, near))) {
      best = bolt;
      least = Math.min(least, worst);
    }
  };
  const add = (a: Vector, b: Vector, sign: number): Vector => subtract(a, scale(b, sign));
  if (kind === 'rod' && few.length === 1) {
    const square = reject(near, few[0]);
    look(length(square) > 1e-9 ? square : anyPerpendicular(few[0]));
    return best;
  }
  few.forEach((a, i) => {
    if (kind === 'bore') look(a);
    few.slice(0, i).forEach((b, j) => {
      if (kind === 'bore') [1, -1].forEach((sign) => look(add(a, b, sign)));
      else look(cross(a, b));
      for (const c of few.slice(0, j)) for (const s of [1, -1]) for (const t of [1, -1]) look(cross(add(a, b, s), add(a, c, t)));
    });
  });
  return unit(best);
}
