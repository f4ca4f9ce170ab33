import { ARM_STEP, NEWTON_STOP_MM } from '../core/tolerances';
import type { Corner } from './corner';
import { PAST_ARC_END, SOLVED, SOLVER_STATE, CENTRE, type Motion, type SolveStatus } from './motion';
import {
  evaluateStrut,
  strutHeight,
  strutShortfall,
  strutSlope,
  strutSlopeSign,
  strutZeroHeight,
  writeStrutMotion,
} from './strutKernel';

/** Step of the bracketing search [rad of the lower arm]. */
const SEARCH_STEP = 0.02;
/** The arm is followed this far either way from design [rad]. */
const SEARCH_SPAN = 1.6;

/**
 * Pose of a strut corner at one travel and rack, from a neighbour.
 *
 * Newton on the one scalar left, height(θ) = wanted; every step needs the analytic slope only. A step that is long, meets
 * a place where the linkage cannot close, or ends on the far side of the arc hands over to `searchStrut`, whose answer
 * depends on the position alone.
 *
 * @param motion - record of a solved neighbour; holds the new pose when SOLVED comes back, and is left alone otherwise
 * @param travel - wheel-centre height over design [mm]
 * @param rack - [mm]
 */
export function trackStrut(
  corner: Pick<Corner, 'kernel'>,
  motion: Motion,
  travel: number,
  rack: number,
  fromTravel: number,
  fromRack: number,
): SolveStatus {
  const k = corner.kernel;
  const wanted = strutZeroHeight(k) + travel;
  let theta =
    motion[SOLVER_STATE] + motion[SOLVER_STATE + 1] * (travel - fromTravel) + motion[SOLVER_STATE + 2] * (rack - fromRack);
  for (let i = 0; i < 8; i++) {
    if (evaluateStrut(k, theta, rack) !== SOLVED) break;
    const miss = strutHeight() - wanted;
    if (miss < NEWTON_STOP_MM && miss > -NEWTON_STOP_MM) {
      if (strutSlope() * strutSlopeSign(k) <= 0 || Math.abs(theta) > SEARCH_SPAN) break;
      writeStrutMotion(k, theta, motion);
      return SOLVED;
    }
    const step = miss / strutSlope();
    if (!(step < ARM_STEP && step > -ARM_STEP)) break;
    theta -= step;
  }
  return searchStrut(k, wanted, rack, motion).status;
}

export interface StrutSearch {
  readonly status: SolveStatus;
  /** Nearest height that can be reached [mm over design]; null where nothing can. */
  readonly nearestTravel: number | null;
  /** mm that are missing: of tie rod, of strut, or of travel. */
  readonly missingMm: number;
}

const isOnBranch = (k: Float64Array, theta: number, rack: number): boolean =>
  evaluateStrut(k, theta, rack) === SOLVED && strutSlope() * strutSlopeSign(k) > 0;

/**
 * The same pose by bracketing. Reachable is what lies on the design's branch: the stretch of θ around design (or, where
 * design itself is out of reach at this rack, the nearest one either way) in which the linkage closes and the wheel still
 * rises with the arm as it does at design.
 */
export function searchStrut(k: Float64Array, wanted: number, rack: number, motion: Motion): StrutSearch {
  const starts = isOnBranch(k, 0, rack) ? [0] : nearestStarts(k, rack);
  if (starts.length === 0) {
    const status = evaluateStrut(k, 0, rack);
    return { status: status === SOLVED ? PAST_ARC_END : status, nearestTravel: null, missingMm: strutShortfall(k, 0, rack) };
  }
  let nearest: StrutSearch | null = null;
  for (const start of starts) {
    const end = searchStretch(k, wanted, rack, start, motion);
    if (end.status === SOLVED) return end;
    if (nearest === null || end.missingMm < nearest.missingMm) nearest = end;
  }
  return nearest!;
}

/** The nearest angles either side of design at which the linkage closes on its branch. */
function nearestStarts(k: Float64Array, rack: number): number[] {
  const starts: number[] = [];
  for (const direction of [1, -1]) {
    for (let theta = SEARCH_STEP; theta <= SEARCH_SPAN; theta += SEARCH_STEP) {
      if (isOnBranch(k, direction * theta, rack)) {
        starts.push(direction * theta);
        break;
      }
    }
  }
  return starts;
}

/** Walks from `start` towards the wanted height until it is passed or the branch ends; then closes in. */
function searchStretch(k: Float64Array, wanted: number, rack: number, start: number, motion: Motion): StrutSearch {
  evaluateStrut(k, start, rack);
  let near = start;
  let nearMiss = strutHeight() - wanted;
  // design height at design: no search could find it better
  if (Math.abs(nearMiss) < NEWTON_STOP_MM) return found(k, start, motion);
  const direction = (nearMiss > 0 ? -1 : 1) * strutSlopeSign(k);
  for (;;) {
    const far = near + direction * SEARCH_STEP;
    if (Math.abs(far) > SEARCH_SPAN) return pastEnd(k, wanted, PAST_ARC_END, near, rack);
    if (!isOnBranch(k, far, rack)) return closeAtEdge(k, wanted, rack, near, far, nearMiss, motion);
    const farMiss = strutHeight() - wanted;
    if (farMiss === 0 || farMiss > 0 !== nearMiss > 0) return closeIn(k, wanted, rack, near, far, nearMiss, motion);
    near = far;
    nearMiss = farMiss;
  }
}

/** The branch ends between `good` and `bad`: halve to the edge, and see whether the wanted height came before it. */
function closeAtEdge(
  k: Float64Array,
  wanted: number,
  rack: number,
  good: number,
  bad: number,
  goodMiss: number,
  motion: Motion,
): StrutSearch {
  let inside = good;
  let outside = bad;
  for (let i = 0; i < 60 && Math.abs(outside - inside) > 1e-15; i++) {
    const middle = 0.5 * (inside + outside);
    if (isOnBranch(k, middle, rack)) {
      if (strutHeight() - wanted > 0 !== goodMiss > 0) return closeIn(k, wanted, rack, inside, middle, goodMiss, motion);
      inside = middle;
    } else outside = middle;
  }
  const status = evaluateStrut(k, outside, rack);
  return pastEnd(k, wanted, status === SOLVED ? PAST_ARC_END : status, inside, rack);
}

function pastEnd(k: Float64Array, wanted: number, status: SolveStatus, edge: number, rack: number): StrutSearch {
  evaluateStrut(k, edge, rack);
  const height = strutHeight();
  return { status, nearestTravel: height - strutZeroHeight(k), missingMm: Math.abs(wanted - height) };
}

/** The angle just evaluated is the answer. */
function found(k: Float64Array, theta: number, motion: Motion): StrutSearch {
  writeStrutMotion(k, theta, motion);
  return { status: SOLVED, nearestTravel: motion[CENTRE + 2] - strutZeroHeight(k), missingMm: 0 };
}

/** Newton inside a bracket, halving where it leaves. Both ends are on the branch and the wanted height lies between them. */
function closeIn(
  k: Float64Array,
  wanted: number,
  rack: number,
  near: number,
  far: number,
  nearMiss: number,
  motion: Motion,
): StrutSearch {
  let inside = near;
  let outside = far;
  let theta = 0.5 * (near + far);
  for (let i = 0; i < 200; i++) {
    if (!isOnBranch(k, theta, rack)) {
      outside = theta;
      theta = 0.5 * (inside + outside);
      continue;
    }
    const miss = strutHeight() - wanted;
    const slope = strutSlope();
    if (Math.abs(miss) < NEWTON_STOP_MM || Math.abs(outside - inside) < 1e-15) {
      return found(k, theta, motion);
    }
    if (miss > 0 === nearMiss > 0) inside = theta;
    else outside = theta;
    const next = theta - miss / slope;
    const isBetween = (next - inside) * (next - outside) < 0;
    theta = isBetween ? next : 0.5 * (inside + outside);
  }
  return pastEnd(k, wanted, PAST_ARC_END, inside, rack);
}
