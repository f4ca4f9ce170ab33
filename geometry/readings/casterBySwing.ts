import type { GroundFrame } from '../axle/ground';
import { toRadians } from '../core/angle';
import { cross } from '../core/vector';
import type { Corner } from '../corner/corner';
import { knuckleDirection, rackTurn } from '../corner/knucklePoint';
import { SOLVED } from '../corner/motion';
import { startTrack, trackCorner, type Track } from '../corner/solveCorner';
import { camberOf, steerChange, steerOf } from './wheelStance';

/** Steer angle either way of a caster gauge's swing [rad]. */
export const SWING = toRadians(20);
/** The steer angle is met within this [rad]. */
const SWING_STOP = 1e-12;

/** Two tracks that stay near the ends of the swing, so that a sweep finds them again at once. */
export interface SwingTracks {
  readonly outward: Track;
  readonly inward: Track;
}

export const startSwing = (corner: Corner): SwingTracks => ({ outward: startTrack(corner), inward: startTrack(corner) });

/**
 * Caster as a gauge shows it: (camber with the wheel's front turned outboard by δ − inboard by δ) / (2 sin δ), travel held.
 * @returns [rad], or null where the rack does not bring the wheel that far
 * @see D. B. January, Steering Geometry and Caster Measurement, SAE 850219, 1985, for the measurement
 */
export function casterBySwing(corner: Corner, tracks: SwingTracks, travel: number, ground: GroundFrame): number | null {
  const outward = camberAtSteer(corner, tracks.outward, travel, SWING, ground);
  if (outward === null) return null;
  const inward = camberAtSteer(corner, tracks.inward, travel, -SWING, ground);
  return inward === null ? null : (outward - inward) / (2 * Math.sin(SWING));
}

/** Newton on the rack: the knuckle's twist per mm of rack gives the slope. @param steer - [rad, + outboard] */
function camberAtSteer(corner: Corner, track: Track, travel: number, steer: number, ground: GroundFrame): number | null {
  // where the last call left the rack is where this one finds it, near enough
  let rack = track.rack;
  for (let i = 0; i < 25; i++) {
    if (trackCorner(corner, track, travel, rack) !== SOLVED) {
      if (rack === 0) return null;
      rack *= 0.5;
      continue;
    }
    const spindle = knuckleDirection(track.motion, corner.spindle);
    const miss = steerOf(spindle, ground) - steer;
    if (miss < SWING_STOP && miss > -SWING_STOP) return camberOf(spindle, ground.normal);
    rack -= miss / steerChange(spindle, cross(rackTurn(track.motion), spindle), ground);
  }
  return null;
}
