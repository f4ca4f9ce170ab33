import type { GroundFrame } from '../axle/ground';
import { add, cross, dot, scale, subtract, type Vector } from '../core/vector';
import type { Corner } from '../corner/corner';
import { knuckleDirection, travelTurn, travelVelocity, wheelCentre } from '../corner/knucklePoint';
import type { Motion } from '../corner/motion';

/** How the wheel stands on the ground, in the left-hand frame of its corner. */
export interface WheelStance {
  /** Unit vector along the spindle now, outboard. */
  readonly spindle: Vector;
  readonly centre: Vector;
  /** Contact centre C = W − r · unit(n − (n·s) s) [mm]. */
  readonly contact: Vector;
  /** Velocity per mm of travel of W, and of C fixed to the knuckle. */
  readonly centreVelocity: Vector;
  readonly contactVelocity: Vector;
  /** Angular velocity of the knuckle per mm of travel [rad/mm]. */
  readonly turn: Vector;
  /** v_n: rise of C over the ground per mm of travel. */
  readonly contactRise: number;
}

export function wheelStance(corner: Corner, motion: Motion, ground: GroundFrame): WheelStance {
  const spindle = knuckleDirection(motion, corner.spindle);
  const centre = wheelCentre(motion);
  const contact = contactCentre(centre, spindle, ground.normal, corner.loadedRadius);
  const centreVelocity = travelVelocity(motion);
  const turn = travelTurn(motion);
  const contactVelocity = add(centreVelocity, cross(turn, subtract(contact, centre)));
  return { spindle, centre, contact, centreVelocity, contactVelocity, turn, contactRise: dot(contactVelocity, ground.normal) };
}

/** C = W − r · unit(n − (n·s) s). */
export function contactCentre(centre: Vector, spindle: Vector, normal: Vector, radius: number): Vector {
  const lean = dot(normal, spindle);
  const up = subtract(normal, scale(spindle, lean));
  return subtract(centre, scale(up, radius / Math.sqrt(1 - lean * lean)));
}

/** Steer angle in the corner's left-hand frame [rad, + outboard]: the angle of the wheel's heading s × n from X̂ about n. */
export const steerOf = (spindle: Vector, ground: GroundFrame): number =>
  Math.atan2(-dot(spindle, ground.ahead), dot(spindle, ground.left));

/** Change of that steer angle when the spindle changes by `change`. */
export function steerChange(spindle: Vector, change: Vector, ground: GroundFrame): number {
  const a = -dot(spindle, ground.ahead);
  const b = dot(spindle, ground.left);
  return (b * -dot(change, ground.ahead) - a * dot(change, ground.left)) / (a * a + b * b);
}

/** asin(−s·n): inclination to the ground [rad, + top outboard] (ISO 8855). */
export const camberOf = (spindle: Vector, normal: Vector): number => Math.asin(-dot(spindle, normal));
