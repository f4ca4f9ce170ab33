import { MOTION_WIDTH, SOLVED } from '../../corner/motion';
import { trackCorner } from '../../corner/solveCorner';
import { barSense } from '../../readings/axleRow';
import { barState } from '../../readings/barReadings';
import type { FitUpCorner } from '../corners';
import { trackAt, type Envelope } from '../envelope';

/**
 * How far the bar is twisted with each wheel anywhere in its own travel and one position of the rack [rad]: this arm's turn from
 * design less the other's, + with this wheel the more bumped.
 */
export interface BarTwist {
  readonly least: number;
  readonly greatest: number;
  /** travel of this wheel and of the other, and rack, at each [mm] */
  readonly at: { readonly least: TwistPlace; readonly greatest: TwistPlace };
}

interface TwistPlace {
  readonly travel: number;
  readonly other: number;
  readonly rack: number;
}

/** Smallest step of the climb [mm]. */
const SMALLEST_STEP_MM = 1e-3;

/** Null without a bar, or where no position of it is known. */
export function barTwist(own: FitUpCorner, other: FitUpCorner): BarTwist | null {
  if (own.envelope === null || other.envelope === null || own.side.parts.bar === null || other.side.parts.bar === null)
    return null;
  const [most, fewest] = [climb(own, other, 1), climb(own, other, -1)];
  if (most === null || fewest === null) return null;
  return {
    least: fewest.value,
    greatest: most.value,
    at: { least: fewest.place, greatest: most.place },
  };
}

/** Turn of the arm at every position of a corner's grid, + with the wheel bumped; NaN where it has none. */
function turns({ side, envelope }: FitUpCorner): Float64Array {
  const { motions, isReached, racks } = envelope!;
  const bar = side.parts.bar!;
  const sense = barSense(bar);
  return Float64Array.from(isReached, (reached, i) => {
    if (reached === 0) return NaN;
    const motion = motions.subarray(i * MOTION_WIDTH, (i + 1) * MOTION_WIDTH);
    const state = barState(bar, side.corner, motion, racks[i % racks.length]);
    return state === null ? NaN : sense * state.turn;
  });
}

/** From the best of the grid, with both wheels and the rack moved. @param sense - 1: to the greatest, −1: to the least */
function climb(own: FitUpCorner, other: FitUpCorner, sense: 1 | -1): { value: number; place: TwistPlace } | null {
  const [mine, its] = [own.envelope!, other.envelope!];
  const [a, b] = [turns(own), turns(other)];
  let best = -Infinity;
  let start: readonly [number, number, number] = [0, 0, 0];
  for (let column = 0; column < mine.racks.length; column++) {
    const [up, down] = [extreme(mine, a, column, sense), extreme(its, b, column, -sense)];
    if (up === null || down === null) continue;
    const value = sense * (a[up * mine.racks.length + column] - b[down * its.racks.length + column]);
    if (value > best) [best, start] = [value, [up, down, column]];
  }
  if (best === -Infinity) return null;
  const tracks = [trackAt(mine, start[0], start[2]), trackAt(its, start[1], start[2])] as const;
  const turnOf = (corner: FitUpCorner, which: 0 | 1, travel: number, rack: number): number => {
    const { side } = corner;
    const track = tracks[which];
    if (trackCorner(side.corner, track, travel, rack) !== SOLVED) return NaN;
    const state = barState(side.parts.bar!, side.corner, track.motion, rack);
    return state === null ? NaN : barSense(side.parts.bar!) * state.turn;
  };
  let here: TwistPlace = { travel: tracks[0].travel, other: tracks[1].travel, rack: tracks[0].rack };
  const within = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
  const span = Math.max(mine.solid - mine.open, its.solid - its.open, mine.rackMax - mine.rackMin);
  for (let step = span / mine.travels.length; step > SMALLEST_STEP_MM; step *= 0.5)
    for (let isBetter = true; isBetter;) {
      isBetter = false;
      for (const [i, j, k] of STEPS) {
        const next = {
          travel: within(here.travel + i * step, mine.open, mine.solid),
          other: within(here.other + j * step, its.open, its.solid),
          rack: within(here.rack + k * step, mine.rackMin, mine.rackMax),
        };
        const value = sense * (turnOf(own, 0, next.travel, next.rack) - turnOf(other, 1, next.other, next.rack));
        if (value > best) [best, here, isBetter] = [value, next, true];
      }
    }
  return { value: sense * best, place: here };
}

/** The row of a column in which the turn is most that way. */
function extreme({ travels, racks }: Envelope, values: Float64Array, column: number, sense: number): number | null {
  let best: number | null = null;
  for (let row = 0; row < travels.length; row++) {
    const value = sense * values[row * racks.length + column];
    if (!Number.isNaN(value) && (best === null || value > sense * values[best * racks.length + column])) best = row;
  }
  return best;
}

/** Every way in which the two wheels and the rack can be moved together. */
const STEPS: readonly (readonly [number, number, number])[] = [-1, 0, 1].flatMap((i) =>
  [-1, 0, 1].flatMap((j) => [-1, 0, 1].map((k) => [i, j, k] as const)),
);
