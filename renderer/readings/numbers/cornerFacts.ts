import { MOTION_WIDTH, solvePoses, type AxleName, type SideName, type Vector } from '../../../geometry/index';
import type { BenchRow } from '../../compute/answerBench';
import type { UnitWriter } from './unitWriter';
import { cross, dot, less, mirror, plus, times, unit } from './vectors';

type AssembledAxle = NonNullable<BenchRow['car']['front']>;

/** Directions of the ground: its normal, the car's X laid into it, and outboard of the corner. */
export interface Ground {
  readonly normal: Vector;
  readonly ahead: Vector;
  readonly outboard: Vector;
}

/** One corner at one pose, in its own left-hand frame: what the formulas' letters stand for. */
export interface CornerFacts extends Ground {
  readonly spindle: Vector;
  readonly centre: Vector;
  readonly contact: Vector;
  readonly radius: number;
  /** heading of the wheel, and across it */
  readonly heading: Vector;
  readonly across: Vector;
  /** per mm of travel: velocities of W and C [mm/mm], angular velocity [rad/mm] */
  readonly centreVelocity: Vector;
  readonly contactVelocity: Vector;
  readonly turn: Vector;
  /** angular velocity per mm of rack, travel held [rad/mm] */
  readonly rackTurn: Vector;
  readonly rise: number;
}

/** Places in the motion record: see "The motion record" in the guide to the geometry's code. */
const CENTRE = 9;
const TRAVEL_VELOCITY = 12;
const TRAVEL_TURN = 15;
const RACK_TURN = 21;

/** n = (−sin β; cos β sin ρ; cos β cos ρ) makes X̂ and Ŷ. */
export const groundOf = (normal: Vector, side: SideName): Ground => {
  const own = side === 'left' ? normal : mirror(normal);
  const ahead = unit(less([1, 0, 0], times(own, own[0])));
  return { normal: own, ahead, outboard: cross(own, ahead) };
};

/** @param travel - of this wheel from design [mm] @returns null where the corner does not reach there */
export const cornerAt = (
  axle: AssembledAxle,
  side: SideName,
  travel: number,
  rack: number,
  normal: Vector,
): CornerFacts | null => {
  const { corner } = axle[side];
  const poses = solvePoses(corner, { travel: Float64Array.of(travel), rack: Float64Array.of(rack) });
  if (poses.status[0] !== 0 || poses.motions.length < MOTION_WIDTH) return null;
  const record = (at: number): Vector => [poses.motions[at] ?? 0, poses.motions[at + 1] ?? 0, poses.motions[at + 2] ?? 0];
  const ground = groundOf(normal, side);
  const n = ground.normal;
  const spindle: Vector = [dot(record(0), corner.spindle), dot(record(3), corner.spindle), dot(record(6), corner.spindle)];
  const centre = record(CENTRE);
  const contact = less(centre, times(unit(less(n, times(spindle, dot(n, spindle)))), corner.loadedRadius));
  const heading = unit(cross(spindle, n));
  const [centreVelocity, turn] = [record(TRAVEL_VELOCITY), record(TRAVEL_TURN)];
  const contactVelocity = plus(centreVelocity, cross(turn, less(contact, centre)));
  return {
    ...ground,
    spindle,
    centre,
    contact,
    radius: corner.loadedRadius,
    heading,
    across: cross(n, heading),
    centreVelocity,
    contactVelocity,
    turn,
    rackTurn: record(RACK_TURN),
    rise: dot(contactVelocity, n),
  };
};

/** The question that a formula is written for. */
export interface Shown {
  readonly row: BenchRow;
  /** the wheel that a reading of one wheel is written for */
  readonly side: SideName;
  /** writes numbers in the units chosen */
  readonly writer: UnitWriter;
  readonly axleName: AxleName;
  /** the name of the setup on the bench */
  readonly setup: string;
  /** wheel travel from standing [mm], roll [degrees], rack [mm] */
  readonly position: { readonly travel: number; readonly rollDeg: number; readonly rack: number };
}

export const axleOf = ({ row, axleName }: Shown): AssembledAxle | null => row.car[axleName];

/** A corner of the axle as it is shown, or with its own travel a little on. */
export const factsOf = (shown: Shown, side: SideName, by = 0): CornerFacts | null => {
  const axle = axleOf(shown);
  const { placed, rack } = shown.row;
  return axle && cornerAt(axle, side, placed.travel[side] + by, rack, placed.ground.normal);
};

/** The same corner in the car's coordinates: a right-hand one is mirrored back, and its turns go the other way about. */
const inCar = (facts: CornerFacts, side: SideName): CornerFacts => {
  if (side === 'left') return facts;
  const turned = (turn: Vector): Vector => times(mirror(turn), -1);
  return {
    normal: mirror(facts.normal),
    ahead: mirror(facts.ahead),
    outboard: mirror(facts.outboard),
    spindle: mirror(facts.spindle),
    centre: mirror(facts.centre),
    contact: mirror(facts.contact),
    radius: facts.radius,
    heading: mirror(facts.heading),
    across: mirror(facts.across),
    centreVelocity: mirror(facts.centreVelocity),
    contactVelocity: mirror(facts.contactVelocity),
    turn: turned(facts.turn),
    rackTurn: turned(facts.rackTurn),
    rise: facts.rise,
  };
};

/** The wheel that the formula is written for, in the car's coordinates. */
export const wheelFacts = (shown: Shown): CornerFacts | null => {
  const facts = factsOf(shown, shown.side);
  return facts && inCar(facts, shown.side);
};

/** A reading of the row as a number; null where it has none. */
export const readingIn = (row: BenchRow, owner: 'left' | 'right' | 'both' | 'wholeCar', key: string): number | null => {
  const value = row[owner][key];
  return typeof value === 'number' ? value : null;
};
