import { cross, length, scale, unit, type Vector } from '../../core/vector';
import { BOX, CYLINDER, POINT, SEGMENT, TRIANGLE, type Core } from '../distance/core';
import type { Gradient } from './field';

/**
 * Distance from a point to a convex core; less than 0 inside: how deep [mm]. Writes its gradient, 0 where there is none. Convex.
 */
export type CoreDistance = (x: number, y: number, z: number, gradient: Gradient) => number;

/** The distance from points to one core, in closed form. */
export function coreDistance(core: Core): CoreDistance {
  const centre: Vector = [core[1], core[2], core[3]];
  const vector = (from: number): Vector => [core[from], core[from + 1], core[from + 2]];
  switch (core[0]) {
    case POINT:
      return segmentDistance(centre, [0, 0, 0]);
    case SEGMENT:
      return segmentDistance(centre, vector(4));
    case BOX:
      return boxDistance(centre, [vector(4), vector(7), vector(10)]);
    case CYLINDER:
      return cylinderDistance(centre, vector(4), vector(7), vector(10));
    case TRIANGLE: {
      const corner = (from: number): Vector => [core[from] + centre[0], core[from + 1] + centre[1], core[from + 2] + centre[2]];
      const corners = Float64Array.from([...corner(4), ...corner(7), ...corner(10)]);
      return (x, y, z, gradient) => triangleDistance(corners, 0, x, y, z, gradient);
    }
    default:
      throw new RangeError(`coreDistance: a core of kind ${core[0]} has no distance of its own`);
  }
}

function write(gradient: Gradient, x: number, y: number, z: number): number {
  const size = Math.sqrt(x * x + y * y + z * z);
  const by = size > 0 ? 1 / size : 0;
  gradient[0] = x * by;
  gradient[1] = y * by;
  gradient[2] = z * by;
  return size;
}

function segmentDistance([cx, cy, cz]: Vector, half: Vector): CoreDistance {
  const size = length(half);
  const [ax, ay, az] = size > 0 ? unit(half) : half;
  return (x, y, z, gradient) => {
    const u = x - cx;
    const v = y - cy;
    const w = z - cz;
    const along = Math.min(size, Math.max(-size, u * ax + v * ay + w * az));
    return write(gradient, u - along * ax, v - along * ay, w - along * az);
  };
}

/** Half edges square to each other; one or two of them may be zero. */
function boxDistance([cx, cy, cz]: Vector, halves: readonly [Vector, Vector, Vector]): CoreDistance {
  const sizes = halves.map(length);
  const [a, b, c] = boxAxes(halves, sizes);
  const [sa, sb, sc] = sizes;
  return (x, y, z, gradient) => {
    const u = x - cx;
    const v = y - cy;
    const w = z - cz;
    const ua = u * a[0] + v * a[1] + w * a[2];
    const ub = u * b[0] + v * b[1] + w * b[2];
    const uc = u * c[0] + v * c[1] + w * c[2];
    const pa = past(ua, sa);
    const pb = past(ub, sb);
    const pc = past(uc, sc);
    if (pa === 0 && pb === 0 && pc === 0) {
      const [da, db, dc] = [Math.abs(ua) - sa, Math.abs(ub) - sb, Math.abs(uc) - sc];
      const nearest = Math.max(da, db, dc);
      const [axis, along] = nearest === da ? [a, ua] : nearest === db ? [b, ub] : [c, uc];
      writeAxis(gradient, axis, along);
      return nearest;
    }
    return write(
      gradient,
      pa * a[0] + pb * b[0] + pc * c[0],
      pa * a[1] + pb * b[1] + pc * c[1],
      pa * a[2] + pb * b[2] + pc * c[2],
    );
  };
}

function writeAxis(gradient: Gradient, axis: Vector, along: number): void {
  const sense = along < 0 ? -1 : 1;
  for (let i = 0; i < 3; i++) gradient[i] = sense * axis[i];
}

const past = (along: number, size: number): number => (along > size ? along - size : along < -size ? along + size : 0);

/** Three unit vectors: a half edge without length stands square to the other two. */
function boxAxes(halves: readonly [Vector, Vector, Vector], sizes: readonly number[]): readonly [Vector, Vector, Vector] {
  const [a, b, c] = halves.map((half, i) => (sizes[i] > 0 ? unit(half) : null));
  if (a && b) return [a, b, c ?? cross(a, b)];
  if (b && c) return [cross(b, c), b, c];
  if (a && c) return [a, cross(c, a), c];
  throw new RangeError('boxAxes: two half edges have no length');
}

/** Flat ends; half of the axis may be zero: a disc. */
function cylinderDistance([cx, cy, cz]: Vector, half: Vector, first: Vector, second: Vector): CoreDistance {
  const size = length(half);
  const radius = length(first);
  const [ax, ay, az] = size > 0 ? unit(half) : unit(cross(scale(first, 1 / radius), scale(second, 1 / radius)));
  return (x, y, z, gradient) => {
    const u = x - cx;
    const v = y - cy;
    const w = z - cz;
    const along = u * ax + v * ay + w * az;
    const px = u - along * ax;
    const py = v - along * ay;
    const pz = w - along * az;
    const out = Math.sqrt(px * px + py * py + pz * pz);
    const off = past(along, size);
    const over = out > radius ? (out - radius) / out : 0;
    if (off === 0 && over === 0) {
      const [end, rim] = [Math.abs(along) - size, out - radius];
      if (end >= rim) writeAxis(gradient, [ax, ay, az], along);
      else write(gradient, px, py, pz);
      return Math.max(end, rim);
    }
    return write(gradient, off * ax + over * px, off * ay + over * py, off * az + over * pz);
  };
}

/**
 * Distance from a point to the triangle whose corners start at `at` [mm]; writes its gradient.
 * @see C. Ericson, "Real-Time Collision Detection", 2005, section 5.1.5 (closest point on triangle); from memory
 */
export function triangleDistance(t: Float64Array, at: number, x: number, y: number, z: number, gradient: Gradient): number {
  const [ax, ay, az] = [t[at], t[at + 1], t[at + 2]];
  const [ux, uy, uz] = [t[at + 3] - ax, t[at + 4] - ay, t[at + 5] - az];
  const [vx, vy, vz] = [t[at + 6] - ax, t[at + 7] - ay, t[at + 8] - az];
  const [px, py, pz] = [x - ax, y - ay, z - az];
  const to = (s: number, r: number): number => write(gradient, px - s * ux - r * vx, py - s * uy - r * vy, pz - s * uz - r * vz);
  const d1 = ux * px + uy * py + uz * pz;
  const d2 = vx * px + vy * py + vz * pz;
  if (d1 <= 0 && d2 <= 0) return to(0, 0);
  const [qx, qy, qz] = [px - ux, py - uy, pz - uz];
  const d3 = ux * qx + uy * qy + uz * qz;
  const d4 = vx * qx + vy * qy + vz * qz;
  if (d3 >= 0 && d4 <= d3) return to(1, 0);
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) return to(d1 / (d1 - d3), 0);
  const [rx, ry, rz] = [px - vx, py - vy, pz - vz];
  const d5 = ux * rx + uy * ry + uz * rz;
  const d6 = vx * rx + vy * ry + vz * rz;
  if (d6 >= 0 && d5 <= d6) return to(0, 1);
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) return to(0, d2 / (d2 - d6));
  const va = d3 * d6 - d5 * d4;
  if (va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) {
    const share = (d4 - d3) / (d4 - d3 + d5 - d6);
    return to(1 - share, share);
  }
  const whole = va + vb + vc;
  return to(vb / whole, vc / whole);
}
