import { ackermannPercent, turningCircle } from '../axle/ackermann';
import { frontAnti, rearAnti } from '../axle/antiGeometry';
import type { AxleSetting } from '../axle/axleSetting';
import { trackOf, type AxleSolver, type Placed } from '../axle/axleSolver';
import { mirrorFrame, normalPerRoll } from '../axle/ground';
import { rideFrequency } from '../axle/loadTransfer';
import { rollCentre, type RollCentre } from '../axle/rollCentre';
import { frameFor } from '../setup/axleGround';
import { cross, mirror, type Vector } from '../core/vector';
import { rackTurn } from '../corner/knucklePoint';
import { rollAnswer, type SolvedCorner } from './cornerReadings';
import type { AxleReadings, CornerReadings, PerSide } from './rows';
import type { SuspendedState } from './suspendedReadings';
import { steerChange } from './wheelStance';

/** Steer angles with the rack centred, all else as it is, and the distance of the steering axes at the ground there. */
export interface Straight {
  /** in each side's left-hand frame: + outboard [rad] */
  readonly steer: PerSide<number>;
  /** [mm]; null where there is no axis */
  readonly axisTrack: number | null;
}

export interface AxleParts {
  /** load transfer null: it needs the other axle too */
  readonly own: AxleReadings;
  readonly rollCentre: RollCentre | null;
}

export function axleReadings(
  solver: AxleSolver,
  setting: AxleSetting,
  placed: Placed,
  corners: PerSide<SolvedCorner>,
  readings: PerSide<CornerReadings>,
  suspended: PerSide<SuspendedState>,
  straight: Straight | null,
  withRatio: boolean,
): AxleParts {
  const { left, right } = corners;
  const { frame, groundPoint } = placed;
  const contact = { left: left.stance.contact, right: right.stance.contact };
  const centre = rollCentre(
    [contact.left, mirror(contact.right)],
    [left.stance.contactVelocity, mirror(right.stance.contactVelocity)],
    frame,
    groundPoint,
  );
  const track = trackOf(contact, frame);
  const answers = rollAnswers(solver, placed, corners, readings);
  const steering = steeringReadings(solver, setting, placed, corners, readings, straight, withRatio);
  const anti = antiReadings(solver, setting, readings);
  const springs = rollStiffnessOfSprings(readings, suspended);
  const bar = rollStiffnessOfBar(setting, corners, readings, suspended);
  const hasBar = solver.axle.mechanism.bar !== null;
  // spelled out field by field: spreading objects costs more than all the arithmetic of the row
  const own: AxleReadings = {
    rollCentreHeight: centre === null ? null : centre.height,
    rollCentreOffset: centre === null ? null : centre.offset === 0 ? 0 : centre.offset,
    track,
    trackChange: track - solver.standing.track,
    totalToe: readings.left.toe + readings.right.toe,
    ackermann: steering.ackermann,
    steeringRatio: steering.steeringRatio,
    turningCircle: steering.turningCircle,
    camberCompensation: answers.camberCompensation,
    rollSteer: answers.rollSteer,
    antiDive: anti.antiDive,
    antiLiftBraking: anti.antiLiftBraking,
    antiLiftDrive: anti.antiLiftDrive,
    antiSquat: anti.antiSquat,
    springRollStiffness: springs,
    barRollStiffness: bar,
    rollStiffness: springs === null ? null : hasBar ? (bar === null ? null : springs + bar) : springs,
    rideFrequency: frequency(solver, setting, suspended),
    loadTransferGeometric: null,
    loadTransferElastic: null,
    loadTransferUnsprung: null,
  };
  return { own, rollCentre: centre };
}

/** Camber compensation of the outer wheel (the one on the low side; at roll 0 the mean of both) and roll steer. */
function rollAnswers(
  solver: AxleSolver,
  placed: Placed,
  corners: PerSide<SolvedCorner>,
  readings: PerSide<CornerReadings>,
): { camberCompensation: number; rollSteer: number } {
  const turn = normalPerRoll(solver.car.pitch, placed.roll);
  const leftFrame = placed.frame;
  const rightFrame = mirrorFrame(placed.frame);
  const left = rollAnswer(corners.left, readings.left, leftFrame, turn, placed.groundPoint);
  const right = rollAnswer(corners.right, readings.right, rightFrame, mirror(turn), placed.groundPoint);
  // + roll lifts the left side: the right wheel is then the outer one
  const asRight = 1 - right.camber;
  const asLeft = 1 + left.camber;
  const camberCompensation = placed.roll > 0 ? asRight : placed.roll < 0 ? asLeft : 0.5 * (asLeft + asRight);
  return { camberCompensation, rollSteer: 0.5 * (left.steer - right.steer) };
}

type SteeringReadings = Pick<AxleReadings, 'ackermann' | 'steeringRatio' | 'turningCircle'>;
const NO_STEERING: SteeringReadings = { ackermann: null, steeringRatio: null, turningCircle: null };

function steeringReadings(
  solver: AxleSolver,
  setting: AxleSetting,
  placed: Placed,
  corners: PerSide<SolvedCorner>,
  readings: PerSide<CornerReadings>,
  straight: Straight | null,
  withRatio: boolean,
): SteeringReadings {
  const { axle } = solver;
  const steering = axle.mechanism.steering;
  if (steering === null) return NO_STEERING;
  // a positive number whichever way the rack lies: the steering wheel is coupled so that left is left
  const perTurn = steering.perTurn;
  if (placed.rack === 0) {
    if (!withRatio) return NO_STEERING;
    const slope = steerPerRack(solver, placed, corners);
    return {
      ackermann: null,
      turningCircle: null,
      steeringRatio: perTurn === null || slope === 0 ? null : Math.abs((2 * Math.PI) / perTurn / slope),
    };
  }
  if (straight === null) return NO_STEERING;
  const left = readings.left.steerAngle - straight.steer.left;
  const right = readings.right.steerAngle + straight.steer.right;
  const mean = 0.5 * (left + right);
  const wheelbase = setting.wheelbase;
  const steeringRatio = perTurn === null || mean === 0 ? null : Math.abs((2 * Math.PI * placed.rack) / perTurn / mean);
  if (wheelbase === null) return { ackermann: null, turningCircle: null, steeringRatio };
  const ackermann = straight.axisTrack === null ? null : ackermannPercent(left, right, straight.axisTrack, wheelbase);
  const tyreWidth = axle.left.wheel.tyreWidth;
  const outer = mean > 0 ? readings.right.steerAngle : readings.left.steerAngle;
  const circle = axle.axle !== 'front' || tyreWidth === null || outer === 0 ? null : turningCircle(outer, wheelbase, tyreWidth);
  return { ackermann, turningCircle: circle, steeringRatio };
}

/** d (mean steer angle) / d rack at this position [rad/mm]; with roll the travels are held. */
function steerPerRack(solver: AxleSolver, placed: Placed, corners: PerSide<SolvedCorner>): number {
  const slope = (side: 'left' | 'right'): number => {
    const { spindle } = corners[side].stance;
    return steerChange(spindle, cross(rackTurn(solver.main[side].motion), spindle), frameFor(solver.axle[side], placed.frame));
  };
  return 0.5 * (slope('left') - slope('right'));
}

type AntiReadings = Pick<AxleReadings, 'antiDive' | 'antiLiftBraking' | 'antiLiftDrive' | 'antiSquat'>;

const NO_ANTI: AntiReadings = { antiDive: null, antiLiftBraking: null, antiLiftDrive: null, antiSquat: null };

function antiReadings(solver: AxleSolver, setting: AxleSetting, readings: PerSide<CornerReadings>): AntiReadings {
  const { body } = solver.car.mechanism;
  const wheelbase = setting.wheelbase;
  const height = body.centreOfGravityHeight;
  if (wheelbase === null || height === null) return NO_ANTI;
  const isFront = solver.axle.axle === 'front';
  const anti = isFront ? frontAnti : rearAnti;
  const mean = (key: 'longitudinalSlopeContact' | 'longitudinalSlopeWheelCentre'): number =>
    0.5 * (readings.left[key] + readings.right[key]);
  const share = (front: number | null): number | null => (front === null ? null : isFront ? front : 1 - front);
  const braking = share(body.brakeFrontShare);
  const drive = share(body.driveFrontShare);
  const brakingAnti = braking === null ? null : anti(mean('longitudinalSlopeContact'), { share: braking, wheelbase, height });
  const driveAnti =
    drive === null || drive === 0 ? null : anti(mean('longitudinalSlopeWheelCentre'), { share: drive, wheelbase, height });
  return {
    antiDive: isFront ? brakingAnti : null,
    antiLiftBraking: isFront ? null : brakingAnti,
    antiLiftDrive: isFront ? driveAnti : null,
    antiSquat: isFront ? null : driveAnti,
  };
}

/** Σ k y², with k the rate at the contact and y the half track: N·mm/rad ÷ 1000. */
function rollStiffnessOfSprings(readings: PerSide<CornerReadings>, suspended: PerSide<SuspendedState>): number | null {
  const { left, right } = suspended;
  if (left.contactRate === null || right.contactRate === null) return null;
  const yl = readings.left.halfTrack;
  const yr = readings.right.halfTrack;
  return (left.contactRate * yl * yl + right.contactRate * yr * yr) / 1000;
}

/**
 * The bar's ends move against each other: K = rate · (r_l y_l / v_l + r_r y_r / v_r)². On a symmetrical pose this is
 * 2 · rate · ratio² at each wheel: twice what one wheel alone would feel.
 */
function rollStiffnessOfBar(
  setting: AxleSetting,
  corners: PerSide<SolvedCorner>,
  readings: PerSide<CornerReadings>,
  suspended: PerSide<SuspendedState>,
): number | null {
  const { left, right } = setting.barRate;
  if (left === null || right === null || suspended.left.bar === null || suspended.right.bar === null) return null;
  const reach = (side: 'left' | 'right'): number =>
    (suspended[side].bar!.ratio * readings[side].halfTrack) / corners[side].stance.contactRise;
  const stretch = reach('left') + reach('right');
  // two arms of unlike holes act in series about one bar: the mean of their compliances
  const rate = left === right ? left : left === 0 || right === 0 ? 0 : 2 / (1 / left + 1 / right);
  return (rate * stretch * stretch) / 1000;
}

/** A rate at the contact with the tyre in series, where the file gives its rate [N/mm]. */
const onTyre = (rate: number, tyre: number | null): number => (tyre === null ? rate : (rate * tyre) / (rate + tyre));

function frequency({ axle }: AxleSolver, { own }: AxleSetting, suspended: PerSide<SuspendedState>): number | null {
  const { left, right } = suspended;
  if (own === null || left.contactRate === null || right.contactRate === null) return null;
  const rate = onTyre(left.contactRate, axle.left.wheel.tyreRate) + onTyre(right.contactRate, axle.right.wheel.tyreRate);
  const mass = own.sprung.left + own.sprung.right;
  return rate > 0 && mass > 0 ? rideFrequency(rate, mass) : null;
}

/** Steering axes at the ground with the rack centred: t = (G_left − G_right)·Ŷ. */
export function axisTrackOf(corners: PerSide<SolvedCorner>, left: Vector): number | null {
  const l = corners.left.axisAtGround;
  const r = corners.right.axisAtGround;
  if (l === null || r === null) return null;
  const rCar = mirror(r);
  return (l[0] - rCar[0]) * left[0] + (l[1] - rCar[1]) * left[1] + (l[2] - rCar[2]) * left[2];
}
