import { dot, type Vector } from '../core/vector';
import type { GroundFrame } from './ground';

/** A roll centre: height over the line joining the contact centres, offset along Ŷ from the axle's ground point [mm]. */
export interface RollCentre {
  readonly height: number;
  readonly offset: number;
  /** along Ŷ and n [mm, car coordinates]: where it is drawn */
  readonly across: number;
  readonly up: number;
}

/** Farther away than this the two lines count as parallel [mm]. */
const FARTHEST_MM = 1e7;

/**
 * The roll centre of an axle.
 *
 * Through each contact centre, laid along X̂ into the plane of Ŷ and n, runs the line at right angles to the velocity of that
 * contact centre per mm of travel; the two lines meet at the roll centre. On a symmetrical pose the height is
 * half track · v_y / v_z, with v_y + outboard.
 *
 * @param contacts - left and right contact centre, car coordinates [mm]
 * @param velocities - of the two, fixed to their knuckles, per mm of their own wheel's travel
 * @param groundPoint - the axle's shifted ground point [mm]
 * @returns null when the lines are parallel
 * @see the construction in W. F. Milliken & D. L. Milliken, Race Car Vehicle Dynamics, 1995, ch. 17; from memory
 */
export function rollCentre(
  contacts: readonly [Vector, Vector],
  velocities: readonly [Vector, Vector],
  frame: GroundFrame,
  groundPoint: Vector,
): RollCentre | null {
  const { left, normal } = frame;
  const yl = dot(contacts[0], left);
  const zl = dot(contacts[0], normal);
  const yr = dot(contacts[1], left);
  const zr = dot(contacts[1], normal);
  const vyl = dot(velocities[0], left);
  const vzl = dot(velocities[0], normal);
  const vyr = dot(velocities[1], left);
  const vzr = dot(velocities[1], normal);
  const dy = yl - yr;
  const dz = zl - zr;
  // (p − c)·v = 0 for both lines, counted from the middle of the two contact centres: so the mirrored car gives the mirrored
  // numbers to the last bit, and a far origin costs no digits
  const a = 0.5 * dy * vyl + 0.5 * dz * vzl;
  const b = -(0.5 * dy * vyr + 0.5 * dz * vzr);
  const determinant = vyl * vzr - vyr * vzl;
  if (determinant === 0) return null;
  const y = (a * vzr - b * vzl) / determinant;
  const z = (vyl * b - vyr * a) / determinant;
  if (!(Math.abs(y) < FARTHEST_MM && Math.abs(z) < FARTHEST_MM)) return null;
  const height = (z * dy - y * dz) / Math.sqrt(dy * dy + dz * dz);
  const across = 0.5 * (yl + yr) + y;
  return { height, offset: across - dot(groundPoint, left), across, up: 0.5 * (zl + zr) + z };
}
