import type { AxleName, SideName } from '../car/document';
import type { AxleMechanism } from '../car/mechanism';
import { explainUnreachable } from '../corner/failure';
import { MOTION_WIDTH, SOLVED, type Motion } from '../corner/motion';
import { startTrack, trackCorner, type Track } from '../corner/solveCorner';
import { spanState } from '../readings/spanReadings';
import { damperStops } from '../readings/suspendedReadings';
import type { AssembledSide } from '../setup/assembleSide';

/** Positions each way of the grid that is looked at first. */
export const ENVELOPE_STEPS = 21;

/** Everywhere that one wheel of a setup can be: from the damper fully open to solid, and from lock to lock. Lengths in mm. */
export interface Envelope {
  readonly setup: string;
  readonly axle: AxleName;
  readonly side: SideName;
  /** wheel travel with the damper fully open, at the first touch of its bump rubber, and solid; touch null: not known */
  readonly open: number;
  readonly touch: number | null;
  readonly solid: number;
  readonly rackMin: number;
  readonly rackMax: number;
  /** the grid's travels and rack positions; one rack position where the axle is not steered */
  readonly travels: readonly number[];
  readonly racks: readonly number[];
  /** motion records, travel by travel */
  readonly motions: Float64Array;
  readonly isReached: Uint8Array;
  /** where the links do not close, with the reason; also the first travel past an end that the damper would have allowed */
  readonly unreachable: readonly Unreachable[];
}

export interface Unreachable {
  readonly travel: number;
  readonly rack: number;
  readonly message: string;
}

/** Why an envelope has no ends: what the file does not say. */
export interface NoEnvelope {
  readonly missing: string;
}

/**
 * The envelope of one corner. The ends of the travel are those of the damper at rack 0; without a damper those of `travel`.
 */
export function envelopeOf(axle: AxleMechanism, setup: string, side: AssembledSide): Envelope | NoEnvelope {
  const ends = travelEnds(axle, side);
  if ('missing' in ends) return ends;
  const [rackMin, rackMax] = axle.steering === null ? [0, 0] : (axle.steering.travel ?? [0, 0]);
  if (axle.steering !== null && axle.steering.travel === null)
    return { missing: `the rack's travel: give ${axle.axle}.steering.travel` };
  const travels = spaced(ends.open, ends.solid, ENVELOPE_STEPS);
  const racks = rackMin === rackMax ? [rackMin] : spaced(rackMin, rackMax, ENVELOPE_STEPS);
  const { unreachable, ...grid } = solveGrid(side, travels, racks);
  const { open, touch, solid, short } = ends;
  return {
    setup,
    axle: axle.axle,
    side: side.mechanism.side,
    open,
    touch,
    solid,
    rackMin,
    rackMax,
    travels,
    racks,
    ...grid,
    unreachable: [...short.map((travel) => unreachableAt(side, travel, 0)), ...unreachable],
  };
}

/** The words are made when somebody asks: they cost a thousand times the position. */
function unreachableAt(side: AssembledSide, travel: number, rack: number): Unreachable {
  let message: string | null = null;
  return {
    travel,
    rack,
    get message() {
      return (message ??= explainUnreachable(side.corner, travel, rack).message);
    },
  };
}

/** Ends of an envelope that are drawn in. Lengths in mm. */
export interface EnvelopeEnds {
  readonly travel: readonly [number, number];
  readonly rack: readonly [number, number];
}

/** The envelope with some of its ends drawn in, as a stop would. */
export function narrowEnvelope(envelope: Envelope, side: AssembledSide, ends: EnvelopeEnds): Envelope {
  const [open, solid] = ends.travel;
  const [rackMin, rackMax] = ends.rack;
  const travels = spaced(open, solid, ENVELOPE_STEPS);
  const racks = rackMin === rackMax ? [rackMin] : spaced(rackMin, rackMax, ENVELOPE_STEPS);
  return { ...envelope, open, solid, rackMin, rackMax, travels, racks, ...solveGrid(side, travels, racks) };
}

/** Numbers from first to last, both exact. */
function spaced(first: number, last: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? last : first + ((last - first) * i) / (count - 1)));
}

/** All positions of the grid, there and back, so that neighbours follow each other. */
function solveGrid(
  side: AssembledSide,
  travels: readonly number[],
  racks: readonly number[],
): Pick<Envelope, 'motions' | 'isReached' | 'unreachable'> {
  const count = travels.length * racks.length;
  const motions = new Float64Array(count * MOTION_WIDTH);
  const isReached = new Uint8Array(count);
  const unreachable: Unreachable[] = [];
  const track = startTrack(side.corner);
  travels.forEach((travel, row) => {
    for (let step = 0; step < racks.length; step++) {
      const column = row % 2 === 0 ? step : racks.length - 1 - step;
      const rack = racks[column];
      const index = row * racks.length + column;
      if (trackCorner(side.corner, track, travel, rack) === SOLVED) {
        isReached[index] = 1;
        motions.set(track.motion, index * MOTION_WIDTH);
      } else unreachable.push(unreachableAt(side, travel, rack));
    }
  });
  return { motions, isReached, unreachable };
}

/** A track that stands at a position of the grid. */
export function trackAt(envelope: Envelope, row: number, column: number): Track {
  const from = (row * envelope.racks.length + column) * MOTION_WIDTH;
  const motion: Motion = envelope.motions.slice(from, from + MOTION_WIDTH);
  return { motion, travel: envelope.travels[row], rack: envelope.racks[column] };
}

interface Ends extends Pick<Envelope, 'open' | 'touch' | 'solid'> {
  /** travels past an end at which the links gave out before the damper did */
  readonly short: readonly number[];
}

function travelEnds(axle: AxleMechanism, side: AssembledSide): Ends | NoEnvelope {
  const { damper } = axle;
  if (damper !== null && side.parts.damper !== null) {
    const stops = damperStops(damper, side.parts.damper.designLength);
    if (stops.open !== null && stops.solid !== null) {
      const [open, solid] = [stopAt(side, stops.open), stopAt(side, stops.solid)];
      return {
        open: open.travel,
        touch: stops.touch === null ? null : travelWhere(side, stops.touch),
        solid: solid.travel,
        short: [open, solid].flatMap(({ missed }) => (missed === null ? [] : [missed])),
      };
    }
  }
  if (axle.travel !== null) return { open: axle.travel[0], touch: null, solid: axle.travel[1], short: [] };
  return {
    missing: `the ends of the travel: give ${axle.axle}.damper its stroke and droopStopAt (or open and closed), or ${axle.axle}.travel`,
  };
}

const STEP_MM = 4;
const MOST_STEPS = 200;

/**
 * Wheel travel at which the damper has gone a way [mm]; where the links do not reach it, the last travel that they do.
 * The search follows the wheel from design, so that no other branch is caught.
 */
export const travelWhere = (side: AssembledSide, damperTravel: number): number => stopAt(side, damperTravel).travel;

interface Stop {
  readonly travel: number;
  /** a travel past it that the links do not reach, where they give out before the damper is there */
  readonly missed: number | null;
}

function stopAt(side: AssembledSide, damperTravel: number): Stop {
  const { corner, parts, adjustment } = side;
  const track = startTrack(corner);
  const goneAt = (): number =>
    parts.damper!.designLength - spanState(parts.damper!, corner, track.motion, 0, null).length + adjustment.strutBody;
  let gone = goneAt();
  const arrived = (travel: number): Stop => ({ travel, missed: null });
  if (gone === damperTravel) return arrived(0);
  const sense = damperTravel > gone ? 1 : -1;
  // outwards in steps until it is passed
  let before = 0;
  let goneBefore = gone;
  for (let i = 0; i < MOST_STEPS; i++) {
    const travel = before + sense * STEP_MM;
    if (trackCorner(corner, track, travel, 0) !== SOLVED) return lastReached(side, track, before, travel);
    gone = goneAt();
    if (sense * (gone - damperTravel) >= 0)
      return arrived(between(side, track, goneAt, damperTravel, [before, goneBefore], [travel, gone]));
    // a damper that is not compressed any more by bump has no stop there
    if (sense * (gone - goneBefore) <= 0) return arrived(before);
    before = travel;
    goneBefore = gone;
  }
  return arrived(before);
}

type Sample = readonly [number, number];

/** Regula falsi within the step that passed it, and bisection where that stalls; to the last bits. */
function between(side: AssembledSide, track: Track, goneAt: () => number, wanted: number, from: Sample, to: Sample): number {
  let [low, lowGone] = from;
  let [high, highGone] = to;
  for (let i = 0; i < 80 && Math.abs(high - low) > 1e-11; i++) {
    const straight = low + ((high - low) * (wanted - lowGone)) / (highGone - lowGone);
    const middle = i % 3 === 2 ? 0.5 * (low + high) : straight;
    trackCorner(side.corner, track, middle, 0);
    const gone = goneAt();
    if (Math.abs(gone - wanted) < 1e-11) return middle;
    if (gone - wanted > 0 === lowGone - wanted > 0) [low, lowGone] = [middle, gone];
    else [high, highGone] = [middle, gone];
  }
  return 0.5 * (low + high);
}

/** The last travel that closes between one that does and one that does not [mm], to a thousandth. */
function lastReached(side: AssembledSide, track: Track, reached: number, missed: number): Stop {
  let [inside, outside] = [reached, missed];
  while (Math.abs(outside - inside) > 1e-3) {
    const middle = 0.5 * (inside + outside);
    if (trackCorner(side.corner, track, middle, 0) === SOLVED) inside = middle;
    else outside = middle;
  }
  return { travel: inside, missed: outside };
}
