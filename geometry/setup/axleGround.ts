import { dot, mirror, subtract, type Vector } from '../core/vector';
import { fail, succeed, type Result } from '../core/result';
import { HEIGHT_STOP_MM } from '../core/tolerances';
import { LEVEL, mirrorFrame, type GroundFrame } from '../axle/ground';
import { contactCentre, wheelStance } from '../readings/wheelStance';
import { knuckleDirection, wheelCentre } from '../corner/knucklePoint';
import { explainUnreachable, type Failure } from '../corner/failure';
import { SOLVED } from '../corner/motion';
import { trackCorner, type Track } from '../corner/solveCorner';
import type { AssembledSide } from './assembleSide';
import { withMinus } from '../words/minus';

/** Where else the search begins when design height is out of reach at this rack: so many places either way, so far apart [loaded radii]. */
const STARTS = 16;
const START_SPACING = 0.05;
/** A step of the search below this leads nowhere [mm]. */
const SMALLEST_STEP_MM = 1e-9;

/**
 * The axle's ground point: y = 0 on the straight line that joins the two contact centres at travel 0, rack 0, n = Z [mm, car frame].
 */
export function groundPointOf(left: AssembledSide, right: AssembledSide): Vector {
  const a = homeContact(left);
  const b = mirror(homeContact(right));
  // products and sums that commute: the mirrored car has the same point to the last bit
  const width = a[1] - b[1];
  return [(b[0] * a[1] - a[0] * b[1]) / width, 0, (b[2] * a[1] - a[2] * b[1]) / width];
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
  const start = reachableStart(corner, track, rack);
  if (start === null) return fail(explainUnreachable(corner, 0, rack));
  let travel = start;
  let stance = wheelStance(corner, track.motion, frame);
  let miss = dot(subtract(stance.contact, point), frame.normal);
  for (let i = 0; i < 60; i++) {
    if (miss < HEIGHT_STOP_MM && miss > -HEIGHT_STOP_MM) return succeed(travel);
    const wanted = -miss / stance.contactRise;
    let step = wanted;
    // a step that cannot be reached, or that leads away, is halved: past the end of the travel, or where the contact turns back
    for (;;) {
      const isReached = trackCorner(corner, track, travel + step, rack) === SOLVED;
      if (isReached) {
        stance = wheelStance(corner, track.motion, frame);
        const next = dot(subtract(stance.contact, point), frame.normal);
        if (Math.abs(next) < Math.abs(miss)) {
          miss = next;
          travel += step;
          break;
        }
      }
      step *= 0.5;
      if (Math.abs(step) < SMALLEST_STEP_MM) {
        const end = explainUnreachable(corner, travel + wanted, rack);
        return fail({ ...end, ...noHeight(side, travel, miss) });
      }
    }
  }
  return fail({
    ...noHeight(side, travel, miss),
    limitedBy: explainUnreachable(corner, travel - miss / stance.contactRise, rack).limitedBy,
  });
}

/** A travel that the corner reaches at this rack: the track's own, design, or the nearest to it either way that is tried. */
function reachableStart(corner: AssembledSide['corner'], track: Track, rack: number): number | null {
  if (trackCorner(corner, track, track.travel, rack) === SOLVED) return track.travel;
  const spacing = START_SPACING * corner.loadedRadius;
  for (let i = 0; i <= 2 * STARTS; i++) {
    const travel = (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * spacing;
    if (trackCorner(corner, track, travel, rack) === SOLVED) return travel;
  }
  return null;
}

const noHeight = ({ corner }: AssembledSide, travel: number, miss: number): Failure => ({
  kind: 'unreachable',
  side: corner.side,
  message: `The ${corner.side} wheel finds no travel at which it stands on the ground: at ${withMinus(Number(travel.toFixed(1)))} mm from design its contact centre is still ${Math.abs(miss).toFixed(3)} mm ${miss > 0 ? 'above' : 'below'} it.`,
  missingMm: Math.abs(miss),
});
