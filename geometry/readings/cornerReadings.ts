import { frameChange, type GroundFrame } from '../axle/ground';
import { NO_INSTANT_CENTRE } from '../core/tolerances';
import { cross, dot, subtract, type Vector } from '../core/vector';
import type { Motion } from '../corner/motion';
import type { AssembledSide } from '../setup/assembleSide';
import type { CornerReadings } from './rows';
import { axisAtPlane, steeringAxis, type Axis, type NoAxis } from './steeringAxis';
import { camberOf, steerChange, steerOf, wheelStance, type WheelStance } from './wheelStance';

/** Readings of the wheel and of the steering axis; springs, damper and bar come from `suspendedReadings`. */
export type WheelReadings = Omit<CornerReadings, SuspendedKey | 'casterBySwing'>;
export type SuspendedKey =
  | 'springRatio'
  | 'springTravel'
  | 'springForce'
  | 'wheelRate'
  | 'damperRatio'
  | 'damperTravel'
  | 'bumpLeft'
  | 'solidLeft'
  | 'droopLeft'
  | 'barRatio'
  | 'barTwist';

/** What one corner gives at one pose: its readings, and what the axle's readings are made of (left-hand frame). */
export interface SolvedCorner {
  readonly readings: WheelReadings;
  readonly stance: WheelStance;
  readonly axis: Axis | NoAxis;
  /** where the axis meets the plane through C across n */
  readonly axisAtGround: Vector | null;
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

const positive = (value: number): number => (value === 0 ? 0 : value);

/**
 * All readings of the wheel and its steering axis at one pose.
 * @param ground - in the corner's own left-hand frame
 */
export function solvedCorner(side: AssembledSide, motion: Motion, ground: GroundFrame, datum: CornerDatum): SolvedCorner {
  const { corner } = side;
  const isLeft = corner.side === 'left';
  const stance = wheelStance(corner, motion, ground);
  const { spindle, centre, contact, centreVelocity, contactVelocity, turn, contactRise } = stance;
  const n = ground.normal;
  const steer = steerOf(spindle, ground);
  const lean = -dot(spindle, n);
  const spin = cross(turn, spindle);
  const axis = steeringAxis(corner, motion, n);
  const hasAxis = typeof axis !== 'string';
  const atGround = hasAxis ? axisAtPlane(axis, contact, n) : null;
  const atCentre = hasAxis ? axisAtPlane(axis, centre, n) : null;
  const heading = unitCross(spindle, n);
  const lateral = cross(n, heading);
  const toGround = atGround === null ? null : subtract(atGround, contact);
  const toCentre = atCentre === null ? null : subtract(atCentre, centre);
  const front = frontViewInstantCentre(contact, contactVelocity, turn);
  const side2 = sideViewInstantCentre(contact, contactVelocity, turn);
  const lateralSlope = dot(contactVelocity, ground.left) / contactRise;
  const longitudinalSlope = dot(contactVelocity, ground.ahead) / contactRise;
  const y = (value: number): number => positive(isLeft ? value : -value);
  const heightAt = side.mechanism.heightAt;
  const readings: WheelReadings = {
    camber: positive(Math.asin(lean)),
    camberToBody: positive(Math.asin(-spindle[2])),
    toe: positive(-steer),
    steerAngle: positive(isLeft ? steer : -steer),
    caster: hasAxis ? Math.atan2(-dot(axis.direction, ground.ahead), dot(axis.direction, n)) : null,
    kingpinInclination: hasAxis ? Math.atan2(-dot(axis.direction, ground.left), dot(axis.direction, n)) : null,
    mechanicalTrail: toGround === null ? null : dot(toGround, heading),
    scrubRadius: toGround === null ? null : -dot(toGround, lateral),
    trailAtWheelCentre: toCentre === null ? null : dot(toCentre, heading),
    scrubAtWheelCentre: toCentre === null ? null : -dot(toCentre, lateral),
    camberGain: -dot(spin, n) / Math.sqrt(1 - lean * lean),
    bumpSteer: -steerChange(spindle, spin, ground),
    frontViewInstantCentre: front === null ? null : [y(front[0]), front[1]],
    sideViewInstantCentre: side2,
    swingArmLength: front === null ? null : signedDistance(contact[1] - front[0], contact[2] - front[1]),
    sideViewSwingArmLength: side2 === null ? null : signedDistance(side2[0] - contact[0], contact[2] - side2[1]),
    wheelCentre: [centre[0], y(centre[1]), centre[2]],
    contactCentre: [contact[0], y(contact[1]), contact[2]],
    halfTrack: dot(subtract(contact, datum.groundPoint), ground.left),
    wheelbaseChange: positive(datum.longer * dot(subtract(contact, datum.standingContact), ground.ahead)),
    bodyHeight: heightAt === null ? null : dot(subtract(heightAt, contact), n),
    longitudinalSlopeContact: longitudinalSlope,
    longitudinalSlopeWheelCentre: dot(centreVelocity, ground.ahead) / dot(centreVelocity, n),
    lateralSlopeContact: lateralSlope,
    jackingPerLateral: positive(-lateralSlope),
    jackingPerLongitudinal: positive(-longitudinalSlope),
  };
  return { readings, stance, axis, axisAtGround: atGround };
}

function unitCross(a: Vector, b: Vector): Vector {
  const c = cross(a, b);
  const size = Math.sqrt(dot(c, c));
  return [c[0] / size, c[1] / size, c[2] / size];
}

/** Distance with the sign of its first part. */
const signedDistance = (first: number, second: number): number => (first < 0 ? -1 : 1) * Math.sqrt(first * first + second * second);

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
export function rollAnswer(solved: SolvedCorner, ground: GroundFrame, turnOfNormal: Vector, groundPoint: Vector): RollAnswer {
  const { spindle, contact, contactRise } = solved.stance;
  const travel = -dot(subtract(contact, groundPoint), turnOfNormal) / contactRise;
  const camber = camberOf(spindle, ground.normal);
  const bent = frameChange(ground, turnOfNormal);
  const a = -dot(spindle, ground.ahead);
  const b = dot(spindle, ground.left);
  const da = -dot(spindle, bent.ahead);
  const db = dot(spindle, bent.left);
  return {
    camber: solved.readings.camberGain * travel - dot(spindle, turnOfNormal) / Math.cos(camber),
    steer: -solved.readings.bumpSteer * travel + (b * da - a * db) / (a * a + b * b),
  };
}
