import { dot, mirror, subtract, type Vector } from '../core/vector';
import { fail, succeed, type Result } from '../core/result';
import { LEVEL, mirrorFrame, type GroundFrame } from '../axle/ground';
import { contactCentre, wheelStance } from '../readings/wheelStance';
import { knuckleDirection, wheelCentre } from '../corner/knucklePoint';
import { explainUnreachable, type Failure } from '../corner/failure';
import { SOLVED } from '../corner/motion';
import { trackCorner, type Track } from '../corner/solveCorner';
import type { AssembledSide } from './assembleSide';

/** Where the search for a wheel's height on the ground stops [mm]. */
const HEIGHT_STOP_MM = 1e-10;

/**
 * The axle's ground point: y = 0 on the straight line that joins the two contact centres at travel 0, rack 0, n = Z [mm, car frame].
 */
export function groundPointOf(left: AssembledSide, right: AssembledSide): Vector {
  const a = homeContact(left);
  const b = mirror(homeContact(right));
  const t = a[1] / (a[1] - b[1]);
  return [a[0] + t * (b[0] - a[0]), 0, a[2] + t * (b[2] - a[2])];
}

function homeContact(side: AssembledSide): Vector {
  const { corner } = side;
  return contactCentre(
    wheelCentre(corner.home),
    knuckleDirection(corner.home, corner.spindle),
    LEVEL.normal,
    corner.loadedRadius,
  );
}

/** The ground as one side sees it: a right-hand side in its mirrored frame. */
export const frameFor = (side: AssembledSide, frame: GroundFrame): GroundFrame =>
  side.corner.side === 'left' ? frame : mirrorFrame(frame);

/**
 * The travel at which the contact centre lies on the plane through `point` across the ground's normal.
 * @param frame - in the side's own frame
 * @param point - with y = 0, so the same in both frames [mm]
 * @returns travel from design [mm]; the track stands there
 */
export function solveHeight(
  side: AssembledSide,
  track: Track,
  frame: GroundFrame,
  point: Vector,
  rack: number,
): Result<number, Failure> {
  const { corner } = side;
  let travel = track.travel;
  let status = trackCorner(corner, track, travel, rack);
  if (status !== SOLVED) {
    // this travel is out of reach at this rack: begin where both are in the middle
    travel = 0;
    status = trackCorner(corner, track, travel, rack);
    if (status !== SOLVED) return fail(explainUnreachable(corner, travel, rack));
  }
  for (let i = 0; i < 60; i++) {
    const stance = wheelStance(corner, track.motion, frame);
    const miss = dot(subtract(stance.contact, point), frame.normal);
    if (miss < HEIGHT_STOP_MM && miss > -HEIGHT_STOP_MM) return succeed(travel);
    let step = -miss / stance.contactRise;
    while (trackCorner(corner, track, travel + step, rack) !== SOLVED) {
      if (Math.abs(step) < 1e-6) return fail(explainUnreachable(corner, travel - miss / stance.contactRise, rack));
      step *= 0.5;
    }
    travel += step;
  }
  return fail({
    kind: 'unreachable',
    side: corner.side,
    message: `The ${corner.side} wheel finds no travel at which it stands on the ground.`,
  });
}
