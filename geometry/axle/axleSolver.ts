import type { AxleName } from '../car/document';
import { fail, succeed, type Result } from '../core/result';
import { mirror, type Vector } from '../core/vector';
import type { Corner } from '../corner/corner';
import { explainUnreachable, type Failure } from '../corner/failure';
import { SOLVED } from '../corner/motion';
import { restartTrack, startTrack, trackCorner, type Track } from '../corner/solveCorner';
import { startSwing, type SwingTracks } from '../readings/casterBySwing';
import { wheelStance } from '../readings/wheelStance';
import type { PerSide, Position } from '../readings/rows';
import type { AssembledAxle, AssembledCar } from '../setup/assembleCar';
import type { AssembledSide } from '../setup/assembleSide';
import { frameFor, solveHeight } from '../setup/axleGround';
import { groundFrame, type GroundFrame } from './ground';

/** An axle with the tracks that follow it from position to position. Made once a sweep. */
export interface AxleSolver {
  readonly car: AssembledCar;
  readonly axle: AssembledAxle;
  readonly main: PerSide<Track>;
  /** the same positions with the rack centred: what steer angles are counted from */
  readonly straight: PerSide<Track>;
  readonly swing: PerSide<SwingTracks>;
  /** standing, rack 0, no roll */
  readonly standing: Standing;
}

/** What the readings of a setup are counted from. */
export interface Standing {
  readonly frame: GroundFrame;
  /** contact centres in each side's left-hand frame [mm] */
  readonly contact: PerSide<Vector>;
  readonly track: number;
}

export function axleSolver(car: AssembledCar, name: AxleName): Result<AxleSolver, Failure> {
  const axle = car[name];
  if (axle === null) throw new RangeError(`The car has no ${name} axle.`);
  const frame = groundFrame(car.pitch, 0);
  const left = trackWhereItStands(axle, 'left');
  if (left === null) return fail(explainUnreachable(axle.left.corner, axle.standing.left, 0));
  const contactLeft = wheelStance(axle.left.corner, left.motion, frame).contact;
  let right: Track | null = null;
  let contactRight = contactLeft;
  // of twins the right is asked for by few
  if (!axle.areTwins) {
    right = trackWhereItStands(axle, 'right');
    if (right === null) return fail(explainUnreachable(axle.right.corner, axle.standing.right, 0));
    contactRight = wheelStance(axle.right.corner, right.motion, frameFor(axle.right, frame)).contact;
  }
  const contact = { left: contactLeft, right: contactRight };
  return succeed(
    new TrackedAxle(car, axle, new MainTracks(axle, left, right), { frame, contact, track: trackOf(contact, frame) }),
  );
}

/** The track of the right-hand twin is made when somebody asks for it. */
class MainTracks implements PerSide<Track> {
  constructor(
    private readonly axle: AssembledAxle,
    readonly left: Track,
    private known: Track | null,
  ) {}

  get right(): Track {
    return (this.known ??= trackWhereItStands(this.axle, 'right') ?? startTrack(this.axle.right.corner));
  }
}

/** Most rows are asked with the rack centred, and few of them for the swing: those tracks are made when they are wanted. */
class TrackedAxle implements AxleSolver {
  private straightTracks: PerSide<Track> | null = null;
  private swingTracks: PerSide<SwingTracks> | null = null;

  constructor(
    readonly car: AssembledCar,
    readonly axle: AssembledAxle,
    readonly main: PerSide<Track>,
    readonly standing: Standing,
  ) {}

  get straight(): PerSide<Track> {
    return (this.straightTracks ??= ofBoth(this.axle, startTrack));
  }

  get swing(): PerSide<SwingTracks> {
    return (this.swingTracks ??= ofBoth(this.axle, startSwing));
  }
}

const ofBoth = <Made>({ left, right }: AssembledAxle, make: (corner: Corner) => Made): PerSide<Made> => ({
  left: make(left.corner),
  right: make(right.corner),
});

/**
 * A track where the wheel stands; null where it cannot. Where the pose is known it starts from there; of twins that is the
 * left's, and the solve gives it the rates of this side.
 */
function trackWhereItStands(axle: AssembledAxle, side: 'left' | 'right'): Track | null {
  const { corner } = axle[side];
  const { stood } = axle;
  const travel = axle.standing[side];
  const track: Track = stood === null ? startTrack(corner) : { motion: stood[side].slice(), travel, rack: 0 };
  return trackCorner(corner, track, travel, 0) === SOLVED ? track : null;
}

/** Track = (C_left − C_right)·Ŷ [mm]. @param contact - each in its side's left-hand frame */
export function trackOf(contact: PerSide<Vector>, frame: GroundFrame): number {
  const { left, right } = contact;
  return (left[0] - right[0]) * frame.left[0] + (left[1] + right[1]) * frame.left[1] + (left[2] - right[2]) * frame.left[2];
}

/** Where the wheels are asked to be, and the ground they are judged against. */
export interface Placed {
  readonly frame: GroundFrame;
  /** the axle's shifted ground point [mm] */
  readonly groundPoint: Vector;
  readonly rack: number;
  readonly roll: number;
  readonly travel: PerSide<number>;
}

/**
 * Brings the given tracks of an axle to a position. With roll, the travel is heave and each wheel's travel is searched for at
 * the given rack; without, the wheels are at standing + travel and nothing is searched.
 * @param isOne - of twins in a place that is the same for both: the left alone is moved
 * @throws RangeError when something is not finite, the rack is moved on an unsteered axle, or roll comes with unequal travels
 */
export function placeTracks(
  solver: AxleSolver,
  tracks: PerSide<Track>,
  position: Position,
  isOne = false,
): Result<Placed, Failure> {
  const placed = place(solver, tracks, position, isOne);
  if (!placed.ok) {
    // one side may have moved and the other not: what comes next must not depend on which was asked first
    restartTrack(solver.axle.left.corner, tracks.left);
    if (!isOne) restartTrack(solver.axle.right.corner, tracks.right);
  }
  return placed;
}

/** Whether a position is the same for both wheels. */
export const isSameForBoth = ({ travel = 0, rack = 0, roll = 0 }: Position): boolean =>
  rack === 0 && roll === 0 && (typeof travel === 'number' || travel.left === travel.right);

function place(solver: AxleSolver, tracks: PerSide<Track>, position: Position, isOne: boolean): Result<Placed, Failure> {
  const { axle, car } = solver;
  const { rack = 0, roll = 0 } = position;
  const fromStanding = perSide(position.travel ?? 0);
  if (!(
    Number.isFinite(rack) &&
    Number.isFinite(roll) &&
    Number.isFinite(fromStanding.left) &&
    Number.isFinite(fromStanding.right)
  )) {
    throw new RangeError(
      `Position: travel ${fromStanding.left}, ${fromStanding.right}, rack ${rack}, roll ${roll}; all must be finite.`,
    );
  }
  if (rack !== 0 && !axle.left.corner.isSteered)
    throw new RangeError(`The ${axle.axle} axle is not steered: rack must be 0, not ${rack}.`);
  const frame = roll === 0 ? solver.standing.frame : groundFrame(car.pitch, roll);
  if (roll === 0) {
    const travel = { left: axle.standing.left + fromStanding.left, right: axle.standing.right + fromStanding.right };
    if (trackCorner(axle.left.corner, tracks.left, travel.left, rack) !== SOLVED)
      return fail(withAxle(explainUnreachable(axle.left.corner, travel.left, rack), axle));
    if (!isOne && trackCorner(axle.right.corner, tracks.right, travel.right, rack) !== SOLVED)
      return fail(withAxle(explainUnreachable(axle.right.corner, travel.right, rack), axle));
    const heave = 0.5 * (fromStanding.left + fromStanding.right);
    return succeed({ frame, groundPoint: shiftedGround(axle, heave), rack, roll, travel });
  }
  if (fromStanding.left !== fromStanding.right)
    throw new RangeError(
      `With roll the travel is heave, one number: not ${fromStanding.left} left and ${fromStanding.right} right.`,
    );
  const groundPoint = shiftedGround(axle, fromStanding.left);
  const left = solveHeight(axle.left, tracks.left, frameFor(axle.left, frame), groundPoint, rack);
  if (!left.ok) return fail(withAxle(left.failure, axle));
  const right = solveHeight(axle.right, tracks.right, frameFor(axle.right, frame), groundPoint, rack);
  if (!right.ok) return fail(withAxle(right.failure, axle));
  return succeed({ frame, groundPoint, rack, roll, travel: { left: left.value, right: right.value } });
}

const withAxle = (failure: Failure, axle: AssembledAxle): Failure => ({ axle: axle.axle, ...failure });

const shiftedGround = (axle: AssembledAxle, heave: number): Vector => [
  axle.groundPoint[0],
  0,
  axle.groundPoint[2] + heave - (axle.rideHeight ?? 0),
];

export const perSide = (value: number | PerSide<number>): PerSide<number> =>
  typeof value === 'number' ? { left: value, right: value } : value;

/** A point or direction of a side in car coordinates. */
export const inCar = (side: AssembledSide, v: Vector): Vector => (side.corner.side === 'left' ? v : mirror(v));
