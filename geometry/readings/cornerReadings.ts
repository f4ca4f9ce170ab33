import { frameChange, type GroundFrame } from '../axle/ground';
import type { SideMechanism } from '../car/mechanism';
import { NO_INSTANT_CENTRE } from '../core/tolerances';
import { cross, dot, subtract, type Vector } from '../core/vector';
import type { Motion } from '../corner/motion';
import type { AssembledSide } from '../setup/assembleSide';
import type { CornerReadings } from './rows';
import { axisAtPlane, steeringAxis, type Axis, type NoAxis } from './steeringAxis';
import type { SuspendedState } from './suspendedReadings';
import { camberOf, steerChange, steerOf, wheelStance, type WheelStance } from './wheelStance';

/** What one corner is at one pose, before its readings are read off (left-hand frame). */
export interface SolvedCorner {
  readonly stance: WheelStance;
  /** steer angle in the corner's own frame [rad, + outboard] */
  readonly steer: number;
  readonly axis: Axis | NoAxis;
  /** where the axis meets the plane through C across n */
  readonly axisAtGround: Vector | null;
}

/** @param ground - in the corner's own left-hand frame */
export function solvedCorner(side: AssembledSide, motion: Motion, ground: GroundFrame): SolvedCorner {
  const { corner } = side;
  const stance = wheelStance(corner, motion, ground);
  const axis = steeringAxis(corner, motion, ground.normal);
  const axisAtGround = typeof axis === 'string' ? null : axisAtPlane(axis, stance.contact, ground.normal);
  return { stance, steer: steerOf(stance.spindle, ground), axis, axisAtGround };
}

/** What of the same setup standing, and of the axle, a corner's readings are counted from. */
export interface CornerDatum {
  /** contact centre standing, rack 0, no roll, left-hand frame [mm] */
  readonly standingContact: Vector;
  /** the axle's shifted ground point [mm] */
  readonly groundPoint: Vector;
  /** +1 at the front, −1 at the rear: which way the wheelbase grows */
  readonly longer: 1 | -1;
}

/** A number without the sign of a zero. */
const positive = (value: number): number => (value === 0 ? 0 : value);

/**
 * All readings of one corner at one pose. One object written out in one place: rows are made by the hundred thousand.
 * @param ground - in the corner's own left-hand frame
 * @param own - springs, damper and bar of this corner
 * @param bySwing - from `casterBySwing`, which solves poses of its own
 * @param barTwist - of this arm against the other [rad]
 */
export function cornerReadings(
  side: SideMechanism,
  solved: SolvedCorner,
  ground: GroundFrame,
  datum: CornerDatum,
  own: SuspendedState,
  bySwing: number | null,
  barTwist: number | null,
): CornerReadings {
  const { stance, steer, axis, axisAtGround } = solved;
  const isLeft = side.side === 'left';
  const { spindle, centre, contact, centreVelocity, contactVelocity, turn, contactRise } = stance;
  const n = ground.normal;
  const lean = -dot(spindle, n);
  const spin = cross(turn, spindle);
  const hasAxis = typeof axis !== 'string';
  const heading = unitCross(spindle, n);
  const lateral = cross(n, heading);
  const toGround = axisAtGround === null ? null : subtract(axisAtGround, contact);
  const toCentre = hasAxis ? subtract(axisAtPlane(axis, centre, n), centre) : null;
  const front = frontViewInstantCentre(contact, contactVelocity, turn);
  const sideView = sideViewInstantCentre(contact, contactVelocity, turn);
  const lateralSlope = dot(contactVelocity, ground.left) / contactRise;
  const longitudinalSlope = dot(contactVelocity, ground.ahead) / contactRise;
  const heightAt = side.heightAt;
  return {
    camber: positive(Math.asin(lean)),
    camberToBody: positive(Math.asin(-spindle[2])),
    toe: positive(-steer),
    steerAngle: positive(isLeft ? steer : -steer),
    caster: hasAxis ? Math.atan2(-dot(axis.direction, ground.ahead), dot(axis.direction, n)) : null,
    casterBySwing: bySwing,
    kingpinInclination: hasAxis ? Math.atan2(-dot(axis.direction, ground.left), dot(axis.direction, n)) : null,
    mechanicalTrail: toGround === null ? null : dot(toGround, heading),
    scrubRadius: toGround === null ? null : -dot(toGround, lateral),
    trailAtWheelCentre: toCentre === null ? null : dot(toCentre, heading),
    scrubAtWheelCentre: toCentre === null ? null : -dot(toCentre, lateral),
    camberGain: -dot(spin, n) / Math.sqrt(1 - lean * lean),
    bumpSteer: -steerChange(spindle, spin, ground),
    frontViewInstantCentre: front === null ? null : [positive(isLeft ? front[0] : -front[0]), front[1]],
    sideViewInstantCentre: sideView,
    swingArmLength: front === null ? null : signedDistance(contact[1] - front[0], contact[2] - front[1]),
    sideViewSwingArmLength: sideView === null ? null : signedDistance(sideView[0] - contact[0], contact[2] - sideView[1]),
    wheelCentre: [centre[0], positive(isLeft ? centre[1] : -centre[1]), centre[2]],
    contactCentre: [contact[0], positive(isLeft ? contact[1] : -contact[1]), contact[2]],
    halfTrack: dot(subtract(contact, datum.groundPoint), ground.left),
    wheelbaseChange: positive(datum.longer * dot(subtract(contact, datum.standingContact), ground.ahead)),
    bodyHeight: heightAt === null ? null : dot(subtract(heightAt, contact), n),
    longitudinalSlopeContact: longitudinalSlope,
    longitudinalSlopeWheelCentre: dot(centreVelocity, ground.ahead) / dot(centreVelocity, n),
    lateralSlopeContact: lateralSlope,
    jackingPerLateral: positive(-lateralSlope),
    jackingPerLongitudinal: positive(-longitudinalSlope),
    springRatio: own.springRatio,
    springTravel: own.springTravel,
    springForce: own.springForce,
    wheelRate: own.wheelRate,
    damperRatio: own.damperRatio,
    damperTravel: own.damperTravel,
    bumpLeft: own.bumpLeft,
    solidLeft: own.solidLeft,
    droopLeft: own.droopLeft,
    barRatio: own.bar === null ? null : own.bar.ratio,
    barTwist: barTwist === null ? null : positive(barTwist),
  };
}

function unitCross(a: Vector, b: Vector): Vector {
  const c = cross(a, b);
  const size = Math.sqrt(dot(c, c));
  return [c[0] / size, c[1] / size, c[2] / size];
}

/** Distance with the sign of its first part. */
const signedDistance = (first: number, second: number): number =>
  (first < 0 ? -1 : 1) * Math.sqrt(first * first + second * second);

/** y = C.y − v_z/ω_x, z = C.z + v_y/ω_x in the car's plane x = C.x; null beyond 10 km. */
export function frontViewInstantCentre(contact: Vector, velocity: Vector, turn: Vector): [number, number] | null {
  if (Math.abs(turn[0]) < NO_INSTANT_CENTRE) return null;
  return [contact[1] - velocity[2] / turn[0], contact[2] + velocity[1] / turn[0]];
}

/** x = C.x + v_z/ω_y, z = C.z − v_x/ω_y in the car's plane y = C.y; null beyond 10 km. */
export function sideViewInstantCentre(contact: Vector, velocity: Vector, turn: Vector): [number, number] | null {
  if (Math.abs(turn[1]) < NO_INSTANT_CENTRE) return null;
  return [contact[0] + velocity[2] / turn[1], contact[2] - velocity[0] / turn[1]];
}

/** How a wheel answers to a roll of the body at the same heave, per rad [left-hand frame]. */
export interface RollAnswer {
  readonly camber: number;
  /** + outboard */
  readonly steer: number;
}

/**
 * Derivatives by roll: the ground turns by dn, and the wheel travels so that its contact centre stays on it:
 * dz = −(C − g)·dn / v_n. (Moving the lowest point along the tyre changes its height by nothing to first order.)
 */
export function rollAnswer(
  solved: SolvedCorner,
  readings: CornerReadings,
  ground: GroundFrame,
  turnOfNormal: Vector,
  groundPoint: Vector,
): RollAnswer {
  const { spindle, contact, contactRise } = solved.stance;
  const travel = -dot(subtract(contact, groundPoint), turnOfNormal) / contactRise;
  const camber = camberOf(spindle, ground.normal);
  const bent = frameChange(ground, turnOfNormal);
  const a = -dot(spindle, ground.ahead);
  const b = dot(spindle, ground.left);
  const da = -dot(spindle, bent.ahead);
  const db = dot(spindle, bent.left);
  return {
    camber: readings.camberGain * travel - dot(spindle, turnOfNormal) / Math.cos(camber),
    steer: -readings.bumpSteer * travel + (b * da - a * db) / (a * a + b * b),
  };
}
