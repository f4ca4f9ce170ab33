import { turnQuaternion } from '../core/rotation';
import { CONTINUATION_SMALLEST_MM, CONTINUATION_STEP_MM, CONTINUATION_TURN } from '../core/tolerances';
import type { Corner } from './corner';
import { blendKernels, closeMultiLink, multiLinkZeroHeight, worstMiss } from './multiLinkKernel';
import {
  CENTRE,
  FOLD,
  RACK_TURN,
  RACK_VELOCITY,
  SOLVED,
  SOLVER_STATE,
  TRAVEL_TURN,
  TRAVEL_VELOCITY,
  type Motion,
  type SolveStatus,
} from './motion';

const trial = new Float64Array(28);
/** what walks from design when a direct step does not do */
const walker = new Float64Array(28);

/** One step of a continuation: predicted along the twists, closed by Newton, kept only if the knuckle turned little. `motion` is left alone on failure. */
function step(k: Float64Array, motion: Motion, dTravel: number, dRack: number, height: number, rack: number): boolean {
  const ox = motion[TRAVEL_TURN] * dTravel + motion[RACK_TURN] * dRack;
  const oy = motion[TRAVEL_TURN + 1] * dTravel + motion[RACK_TURN + 1] * dRack;
  const oz = motion[TRAVEL_TURN + 2] * dTravel + motion[RACK_TURN + 2] * dRack;
  const predicted = Math.sqrt(ox * ox + oy * oy + oz * oz);
  if (!(predicted < CONTINUATION_TURN)) return false;
  trial.set(motion);
  trial[CENTRE] += motion[TRAVEL_VELOCITY] * dTravel + motion[RACK_VELOCITY] * dRack;
  trial[CENTRE + 1] += motion[TRAVEL_VELOCITY + 1] * dTravel + motion[RACK_VELOCITY + 1] * dRack;
  turnQuaternion(trial, SOLVER_STATE, ox, oy, oz);
  const corrected = closeMultiLink(k, trial, height, rack);
  // a correction as large as the prediction itself means that the prediction said nothing: another branch may have been caught
  if (corrected < 0 || corrected > 0.2 * CONTINUATION_TURN) return false;
  motion.set(trial);
  return true;
}

/** How far a continuation came: at = 1 is the whole way. */
export interface Walk {
  readonly arrived: boolean;
  readonly travel: number;
  readonly rack: number;
}

/**
 * Follows the linkage along a straight line in (travel, rack), halving the step where the knuckle turns fast.
 * @param motion - starts at (fromTravel, fromRack), ends at the last position reached
 */
export function walkMultiLink(
  k: Float64Array,
  motion: Motion,
  fromTravel: number,
  fromRack: number,
  toTravel: number,
  toRack: number,
  largestStep: number,
): Walk {
  const zero = multiLinkZeroHeight(k);
  const reach = Math.max(Math.abs(toTravel - fromTravel), Math.abs(toRack - fromRack));
  if (reach === 0) return { arrived: true, travel: toTravel, rack: toRack };
  const smallest = CONTINUATION_SMALLEST_MM / reach;
  let size = Math.min(1, largestStep / reach);
  let at = 0;
  let travel = fromTravel;
  let rack = fromRack;
  while (at < 1) {
    const next = at + size > 1 - 1e-9 ? 1 : at + size;
    const nextTravel = next === 1 ? toTravel : fromTravel + next * (toTravel - fromTravel);
    const nextRack = next === 1 ? toRack : fromRack + next * (toRack - fromRack);
    if (step(k, motion, nextTravel - travel, nextRack - rack, zero + nextTravel, nextRack)) {
      at = next;
      travel = nextTravel;
      rack = nextRack;
      size = Math.min(size * 2, largestStep / reach);
    } else {
      size *= 0.5;
      if (size < smallest) return { arrived: false, travel, rack };
    }
  }
  return { arrived: true, travel: toTravel, rack: toRack };
}

/** The three ways from design to a position: together, travel first, rack first. */
export function pathsTo(travel: number, rack: number): readonly (readonly (readonly [number, number])[])[] {
  if (travel === 0 || rack === 0) return [[[travel, rack]]];
  return [
    [[travel, rack]],
    [
      [travel, 0],
      [travel, rack],
    ],
    [
      [0, rack],
      [travel, rack],
    ],
  ];
}

/**
 * Pose of a multi-link corner at one travel and rack, from a neighbour.
 *
 * Far poses are reached by continuation, for a direct Newton step past a fold converges cleanly to a knuckle that is turned
 * round with the same residual and the same sign of the determinant. A position is unreachable only after every path from
 * design has failed.
 *
 * @param motion - record of a solved neighbour at (fromTravel, fromRack); holds the new pose when SOLVED comes back, and is left alone otherwise
 */
export function trackMultiLink(
  corner: Corner,
  motion: Motion,
  travel: number,
  rack: number,
  fromTravel: number,
  fromRack: number,
): SolveStatus {
  const k = corner.kernel;
  const largest = largestStepOf(corner);
  const dTravel = travel - fromTravel;
  const dRack = rack - fromRack;
  if (Math.abs(dTravel) <= largest && Math.abs(dRack) <= largest) {
    if (step(k, motion, dTravel, dRack, multiLinkZeroHeight(k) + travel, rack)) return SOLVED;
  }
  for (const path of pathsTo(travel, rack)) {
    walker.set(corner.home);
    let fromT = 0;
    let fromR = 0;
    let arrived = true;
    for (const [toT, toR] of path) {
      arrived &&= walkMultiLink(k, walker, fromT, fromR, toT, toR, largest).arrived;
      fromT = toT;
      fromR = toR;
    }
    if (arrived) {
      motion.set(walker);
      return SOLVED;
    }
  }
  return FOLD;
}

/**
 * Closes a corner at a travel, rack centred, from the pose of a corner that is nearly the same.
 * @param motion - that pose; holds the corner's own when SOLVED comes back, and is left alone otherwise
 */
export function closeMultiLinkNear(k: Float64Array, motion: Motion, travel: number): SolveStatus {
  trial.set(motion);
  const turned = closeMultiLink(k, trial, multiLinkZeroHeight(k) + travel, 0, 1);
  if (turned < 0 || turned > CONTINUATION_TURN) return FOLD;
  motion.set(trial);
  return SOLVED;
}

/** Continuation steps grow with the car, so that a model at a tenth or ten times the size takes the same path. */
export const largestStepOf = (corner: { readonly loadedRadius: number }): number =>
  (CONTINUATION_STEP_MM * corner.loadedRadius) / 300;

/**
 * Assembles a linkage with its adjusters: follows the design pose while rods and points move from design to their settings.
 * @param start - the knuckle at design, closed
 * @param motion - takes the record
 * @returns motion record at travel 0, rack 0; or how far along (0…1) the linkage could still be put together, and by how
 * much its links then miss what is asked [mm]
 */
export function assembleMultiLink(
  design: Float64Array,
  adjusted: Float64Array,
  start: Motion,
  motion: Motion = new Float64Array(28),
): Motion | { readonly reached: number; readonly missingMm: number } {
  motion.set(start);
  let at = 0;
  let size = 1;
  while (at < 1) {
    const next = Math.min(1, at + size);
    const k = next === 1 ? adjusted : blendKernels(design, adjusted, next);
    trial.set(motion);
    const turned = closeMultiLink(k, trial, multiLinkZeroHeight(k), 0);
    if (turned >= 0 && turned < CONTINUATION_TURN) {
      motion.set(trial);
      at = next;
      size *= 2;
    } else {
      size *= 0.5;
      if (size < 1e-4) return { reached: at, missingMm: worstMiss(adjusted, motion) };
    }
  }
  return motion;
}
