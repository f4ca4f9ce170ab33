import { MOTION_WIDTH, SOLVED, type Motion } from '../corner/motion';
import { trackCorner } from '../corner/solveCorner';
import type { AssembledSide } from '../setup/assembleSide';
import { trackAt, type Envelope } from './envelope';

/** A number of one corner at a pose; NaN where it has none there. @param rack - [mm] */
export type Measure = (motion: Motion, rack: number) => number;

/** The most that a measure is over an envelope, and where: travel from design and rack [mm]. */
export interface Extreme {
  readonly value: number;
  readonly travel: number;
  readonly rack: number;
  /** the pose there */
  readonly motion: Motion;
}

/** From how many places of the grid it is climbed. */
const STARTS = 4;
/** Smallest step of the climb [mm]: what it leaves of a smooth summit goes with its square. Ends of travel and lock are met exactly. */
const SMALLEST_STEP_MM = 1e-3;

/** The measure at every position of the grid; NaN where it cannot be reached, or where the measure has no value. */
export function onGrid({ motions, isReached, racks }: Envelope, measure: Measure): Float64Array {
  const values = new Float64Array(isReached.length).fill(NaN);
  for (let i = 0; i < isReached.length; i++)
    if (isReached[i] === 1)
      values[i] = measure(motions.subarray(i * MOTION_WIDTH, (i + 1) * MOTION_WIDTH), racks[i % racks.length]);
  return values;
}

/**
 * The greatest value over the envelope: the grid first, then a climb from its highest places between its positions.
 * @returns null where there is no value at all
 */
export const greatest = (side: AssembledSide, envelope: Envelope, measure: Measure): Extreme | null =>
  climb(side, envelope, measure, onGrid(envelope, measure));

export function least(side: AssembledSide, envelope: Envelope, measure: Measure): Extreme | null {
  const found = greatest(side, envelope, (motion, rack) => -measure(motion, rack));
  return found === null ? null : { ...found, value: 0 - found.value };
}

/** @param values - of `onGrid` */
export function climb(side: AssembledSide, envelope: Envelope, measure: Measure, values: Float64Array): Extreme | null {
  let best: Extreme | null = null;
  for (const index of summits(envelope, values)) {
    const found = climbFrom(side, envelope, measure, index, values[index]);
    if (best === null || found.value > best.value) best = found;
  }
  return best;
}

/** Places of the grid with nothing higher beside them, the highest first. */
function summits({ travels, racks }: Envelope, values: Float64Array): number[] {
  const columns = racks.length;
  const isSummit = (index: number): boolean => {
    const [row, column] = [Math.floor(index / columns), index % columns];
    for (let r = Math.max(0, row - 1); r <= Math.min(travels.length - 1, row + 1); r++)
      for (let c = Math.max(0, column - 1); c <= Math.min(columns - 1, column + 1); c++)
        if (values[r * columns + c] > values[index]) return false;
    return true;
  };
  const found: number[] = [];
  values.forEach((value, index) => {
    if (!Number.isNaN(value) && isSummit(index)) found.push(index);
  });
  // a plateau is one place
  return found.sort((a, b) => values[b] - values[a] || a - b).slice(0, STARTS);
}

function climbFrom(side: AssembledSide, envelope: Envelope, measure: Measure, index: number, start: number): Extreme {
  const { travels, racks, open, solid, rackMin, rackMax } = envelope;
  const columns = racks.length;
  const track = trackAt(envelope, Math.floor(index / columns), index % columns);
  let here: Extreme = { value: start, travel: track.travel, rack: track.rack, motion: track.motion.slice() };
  let stepTravel = (solid - open) / (travels.length - 1);
  let stepRack = columns === 1 ? 0 : (rackMax - rackMin) / (columns - 1);
  while (Math.max(stepTravel, stepRack) > SMALLEST_STEP_MM) {
    let next = here;
    for (let i = -1; i <= 1; i++)
      for (let j = -1; j <= 1; j++) {
        if ((i === 0 && j === 0) || (stepRack === 0 && j !== 0)) continue;
        const travel = Math.min(solid, Math.max(open, here.travel + i * stepTravel));
        const rack = Math.min(rackMax, Math.max(rackMin, here.rack + j * stepRack));
        if (travel === here.travel && rack === here.rack) continue;
        if (trackCorner(side.corner, track, travel, rack) !== SOLVED) continue;
        const value = measure(track.motion, rack);
        if (value > next.value) next = { value, travel, rack, motion: track.motion.slice() };
      }
    if (next === here) {
      stepTravel *= 0.5;
      stepRack *= 0.5;
    } else here = next;
  }
  return here;
}
