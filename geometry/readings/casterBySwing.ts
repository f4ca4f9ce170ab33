import type { GroundFrame } from '../axle/ground';
import { toRadians } from '../core/angle';
import { cross, dot } from '../core/vector';
import type { Corner } from '../corner/corner';
import { knuckleDirection, rackTurn, travelTurn } from '../corner/knucklePoint';
import { SOLVED } from '../corner/motion';
import { startTrack, trackCorner, type Track } from '../corner/solveCorner';
import { camberOf, steerChange, steerOf } from './wheelStance';

/** Steer angle either way of a caster gauge's swing [rad]. */
export const SWING = toRadians(20);
/** Within this of the steer angle [rad] the rest is taken to first order: what that leaves out is its square. */
const NEAR = 2e-6;

/** A track that stays near one end of the swing, so that a sweep finds it again at once. */
export interface SwingTrack {
  readonly track: Track;
  /** how the rack must follow the travel to hold the steer angle there */
  rackPerTravel: number;
}

export interface SwingTracks {
  readonly outward: SwingTrack;
  readonly inward: SwingTrack;
}

const startEnd = (corner: Corner): SwingTrack => ({ track: startTrack(corner), rackPerTravel: 0 });
export const startSwing = (corner: Corner): SwingTracks => ({ outward: startEnd(corner), inward: startEnd(corner) });

/** Camber of the wheel at equal steer angles either way of straight ahead, travel held [rad]. */
export interface SwungCambers {
  /** with the wheel's front turned outboard */
  readonly outward: number;
  readonly inward: number;
}

/**
 * What a camber gauge shows at both ends of a swing.
 * @param swing - steer angle either way [rad]
 * @returns null where the rack does not bring the wheel that far
 */
export function swungCambers(
  corner: Corner,
  tracks: SwingTracks,
  travel: number,
  ground: GroundFrame,
  swing: number,
): SwungCambers | null {
  const outward = camberAtSteer(corner, tracks.outward, travel, swing, ground);
  if (outward === null) return null;
  const inward = camberAtSteer(corner, tracks.inward, travel, -swing, ground);
  return inward === null ? null : { outward, inward };
}

/** (camber out − camber in) / (2 sin δ) [rad]. */
export const casterOfSwing = ({ outward, inward }: SwungCambers, swing: number): number =>
  (outward - inward) / (2 * Math.sin(swing));

/**
 * Caster as a gauge shows it: (camber with the wheel's front turned outboard by δ − inboard by δ) / (2 sin δ), travel held.
 * @returns [rad], or null where the rack does not bring the wheel that far
 * @see D. B. January, Steering Geometry and Caster Measurement, SAE 850219, 1985, for the measurement
 */
export function casterBySwing(corner: Corner, tracks: SwingTracks, travel: number, ground: GroundFrame): number | null {
  const cambers = swungCambers(corner, tracks, travel, ground, SWING);
  return cambers === null ? null : casterOfSwing(cambers, SWING);
}

/** Newton on the rack: the knuckle's twist per mm of rack gives the slope. @param steer - [rad, + outboard] */
function camberAtSteer(corner: Corner, end: SwingTrack, travel: number, steer: number, ground: GroundFrame): number | null {
  const { track } = end;
  let rack = track.rack + end.rackPerTravel * (travel - track.travel);
  for (let i = 0; i < 25; i++) {
    if (trackCorner(corner, track, travel, rack) !== SOLVED) {
      if (Math.abs(rack) < 1e-3) return null;
      rack *= 0.5;
      continue;
    }
    const { motion } = track;
    const spindle = knuckleDirection(motion, corner.spindle);
    const miss = steerOf(spindle, ground) - steer;
    const byRack = cross(rackTurn(motion), spindle);
    const slope = steerChange(spindle, byRack, ground);
    if (miss < NEAR && miss > -NEAR) {
      end.rackPerTravel = -steerChange(spindle, cross(travelTurn(motion), spindle), ground) / slope;
      const camber = camberOf(spindle, ground.normal);
      // d camber = −(ds·n) / cos camber, for the little rack that is still missing
      return camber + (dot(byRack, ground.normal) / Math.cos(camber)) * (miss / slope);
    }
    rack -= miss / slope;
  }
  return null;
}
