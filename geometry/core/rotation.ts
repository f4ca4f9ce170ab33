import type { Vector } from './vector';

/**
 * Turns `v` about the unit vector `axis` by `angle` [rad], right-hand rule.
 * @see O. Rodrigues' rotation formula (1840), v cos a + (k × v) sin a + k (k·v)(1 − cos a); from memory
 */
export function turnAbout(v: Vector, axis: Vector, angle: number): Vector {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const [kx, ky, kz] = axis;
  const along = (kx * v[0] + ky * v[1] + kz * v[2]) * (1 - c);
  return [
    v[0] * c + (ky * v[2] - kz * v[1]) * s + kx * along,
    v[1] * c + (kz * v[0] - kx * v[2]) * s + ky * along,
    v[2] * c + (kx * v[1] - ky * v[0]) * s + kz * along,
  ];
}

/**
 * Writes the rotation matrix of a unit quaternion (w, x, y, z).
 * @param q - quaternion from index `from`
 * @param out - row-major matrix from index 0
 */
export function writeRotation(q: Float64Array, from: number, out: Float64Array): void {
  const w = q[from];
  const x = q[from + 1];
  const y = q[from + 2];
  const z = q[from + 3];
  out[0] = 1 - 2 * (y * y + z * z);
  out[1] = 2 * (x * y - w * z);
  out[2] = 2 * (x * z + w * y);
  out[3] = 2 * (x * y + w * z);
  out[4] = 1 - 2 * (x * x + z * z);
  out[5] = 2 * (y * z - w * x);
  out[6] = 2 * (x * z - w * y);
  out[7] = 2 * (y * z + w * x);
  out[8] = 1 - 2 * (x * x + y * y);
}

/** Turns the quaternion at `from` by the small rotation vector (x, y, z) [rad], to first order, and normalises it. */
export function turnQuaternion(q: Float64Array, from: number, ox: number, oy: number, oz: number): void {
  const w = q[from];
  const x = q[from + 1];
  const y = q[from + 2];
  const z = q[from + 3];
  ox *= 0.5;
  oy *= 0.5;
  oz *= 0.5;
  const a = w - ox * x - oy * y - oz * z;
  const b = x + ox * w + oy * z - oz * y;
  const c = y + oy * w + oz * x - ox * z;
  const d = z + oz * w + ox * y - oy * x;
  const n = 1 / Math.sqrt(a * a + b * b + c * c + d * d);
  q[from] = a * n;
  q[from + 1] = b * n;
  q[from + 2] = c * n;
  q[from + 3] = d * n;
}
