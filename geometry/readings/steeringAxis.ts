import { add, cross, dot, length, scale, subtract, type Vector } from '../core/vector';
import type { Corner } from '../corner/corner';
import { knucklePoint, rackTurn, rackVelocity, travelTurn, travelVelocity, wheelCentre } from '../corner/knucklePoint';
import type { Motion } from '../corner/motion';

/** A line: a point on it [mm] and its unit direction, upwards along the ground's normal. */
export interface Axis {
  readonly point: Vector;
  readonly direction: Vector;
}

/** Why a corner has no steering axis. */
export type NoAxis = 'no-steering-rod' | 'no-pure-turn' | 'parallel-to-ground';

/**
 * The line about which the knuckle can purely turn with the travel left free.
 *
 * On a strut it is the line from ball joint to top; where pairs of rods share their outer points it is the line through those
 * two joints. Otherwise it is virtual: with ξs the twist per mm of the steering rod and ξt per mm of travel, ξs + λ ξt is a
 * pure turn where ω·v = 0, a quadratic in λ; of its two lines the one nearer to the ground's normal.
 *
 * @param normal - of the ground, in the corner's frame
 */
export function steeringAxis(corner: Corner, motion: Motion, normal: Vector): Axis | NoAxis {
  const axis = jointAxis(corner, motion) ?? virtualAxis(corner, motion, normal);
  if (typeof axis === 'string') return axis;
  const rise = dot(axis.direction, normal);
  if (Math.abs(rise) < 1e-9) return 'parallel-to-ground';
  return rise > 0 ? axis : { point: axis.point, direction: scale(axis.direction, -1) };
}

/** The line through the two real joints of a strut or a double wishbone; null where the axis is virtual. */
function jointAxis(corner: Corner, motion: Motion): Axis | null {
  const joints = realJoints(corner, motion);
  if (joints === null) return null;
  const [lower, upper] = joints;
  const along = subtract(upper, lower);
  return { point: lower, direction: scale(along, 1 / length(along)) };
}

function realJoints(corner: Corner, motion: Motion): readonly [Vector, Vector] | null {
  const { guide, rods } = corner.linkage;
  if (guide !== null) return [knucklePoint(corner, motion, rods[0].outer), guide.top];
  const pairs = corner.sharedJoints;
  return pairs === null ? null : [knucklePoint(corner, motion, pairs[0]), knucklePoint(corner, motion, pairs[1])];
}

/**
 * The two outer points that pairs of rods share, when the fifth rod is the one that steers; null otherwise.
 * @param steerRod - index of the steering rod
 */
export function sharedJointsOf(rods: Corner['linkage']['rods'], steerRod: number): readonly [Vector, Vector] | null {
  if (rods.length !== 5 || steerRod < 0) return null;
  const rest = rods.filter((_, i) => i !== steerRod);
  const same = (a: Vector, b: Vector): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
  const partner = rest.findIndex((rod, i) => i > 0 && same(rod.outer, rest[0].outer));
  if (partner < 0) return null;
  const [other, another] = rest.filter((_, i) => i !== 0 && i !== partner);
  return same(other.outer, another.outer) && !same(other.outer, rest[0].outer) ? [rest[0].outer, other.outer] : null;
}

function virtualAxis(corner: Corner, motion: Motion, normal: Vector): Axis | NoAxis {
  if (corner.steerRod < 0) return 'no-steering-rod';
  const vt = travelVelocity(motion);
  const wt = travelTurn(motion);
  const vs = rackVelocity(motion);
  const ws = rackTurn(motion);
  // (ωs + λωt)·(vs + λvt) = 0
  const a = dot(wt, vt);
  const b = dot(ws, vt) + dot(wt, vs);
  const c = dot(ws, vs);
  let nearest: Axis | null = null;
  for (const lambda of quadraticRoots(a, b, c)) {
    const w = add(ws, scale(wt, lambda));
    const v = add(vs, scale(vt, lambda));
    const sizeSq = dot(w, w);
    if (!(sizeSq > 0)) continue;
    const axis = { point: add(wheelCentre(motion), scale(cross(w, v), 1 / sizeSq)), direction: scale(w, 1 / Math.sqrt(sizeSq)) };
    if (nearest === null || Math.abs(dot(axis.direction, normal)) > Math.abs(dot(nearest.direction, normal))) nearest = axis;
  }
  return nearest ?? 'no-pure-turn';
}

/** Real roots of a x² + b x + c, without the loss of digits of the school formula; none when there are none. */
export function quadraticRoots(a: number, b: number, c: number): number[] {
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  const q = -0.5 * (b + (b < 0 ? -1 : 1) * Math.sqrt(discriminant));
  const roots: number[] = [];
  if (a !== 0) roots.push(q / a);
  if (q !== 0) roots.push(c / q);
  return roots;
}

/** Where the axis meets the plane through `point` across `normal`. */
export function axisAtPlane(axis: Axis, point: Vector, normal: Vector): Vector {
  const along = dot(subtract(point, axis.point), normal) / dot(axis.direction, normal);
  return add(axis.point, scale(axis.direction, along));
}
