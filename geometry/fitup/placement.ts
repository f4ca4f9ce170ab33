import type { Vector } from '../core/vector';

/**
 * Where a rigid body stands: a point p of it at design is now at R p + t. Twelve numbers: R row-major from 0, t [mm] from 9.
 * Flat, because a search looks at hundreds of thousands of them.
 */
export type Placement = Float64Array;
export const PLACEMENT_WIDTH = 12;

export function atDesign(): Placement {
  const place = new Float64Array(PLACEMENT_WIDTH);
  place[0] = place[4] = place[8] = 1;
  return place;
}

/** Where a point at design is now [mm]. */
export const placed = (m: Placement, p: Vector): Vector => [
  m[0] * p[0] + m[1] * p[1] + m[2] * p[2] + m[9],
  m[3] * p[0] + m[4] * p[1] + m[5] * p[2] + m[10],
  m[6] * p[0] + m[7] * p[1] + m[8] * p[2] + m[11],
];

/** Where a direction at design points now. */
export const turned = (m: Placement, v: Vector): Vector => [
  m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
  m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
  m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
];

/** What direction at design points along `v` now. */
export const turnedBack = (m: Placement, v: Vector): Vector => [
  m[0] * v[0] + m[3] * v[1] + m[6] * v[2],
  m[1] * v[0] + m[4] * v[1] + m[7] * v[2],
  m[2] * v[0] + m[5] * v[1] + m[8] * v[2],
];

/** Writes the placement of `b` as `a` sees it: a⁻¹ b. */
export function writeRelative(a: Placement, b: Placement, out: Placement): void {
  for (let row = 0; row < 3; row++) {
    const x = a[row];
    const y = a[3 + row];
    const z = a[6 + row];
    for (let column = 0; column < 3; column++) out[3 * row + column] = x * b[column] + y * b[3 + column] + z * b[6 + column];
    out[9 + row] = x * (b[9] - a[9]) + y * (b[10] - a[10]) + z * (b[11] - a[11]);
  }
}

/** Writes a turn about a point: R p + (at − R at), moved so that the design point `from` is now at `to`. */
export function anchor(m: Placement, from: Vector, to: Vector): void {
  for (let row = 0; row < 3; row++)
    m[9 + row] = to[row] - (m[3 * row] * from[0] + m[3 * row + 1] * from[1] + m[3 * row + 2] * from[2]);
}

/**
 * Writes the least rotation that turns the unit vector e0 into e: c I + [k] + k kᵀ/(1 + c), k = e0 × e, c = e0·e.
 * The two may not be opposite.
 */
export function writeLeastTurn(e0: Vector, e: Vector, out: Placement): void {
  const kx = e0[1] * e[2] - e0[2] * e[1];
  const ky = e0[2] * e[0] - e0[0] * e[2];
  const kz = e0[0] * e[1] - e0[1] * e[0];
  const c = e0[0] * e[0] + e0[1] * e[1] + e0[2] * e[2];
  const f = 1 / (1 + c);
  out[0] = c + kx * kx * f;
  out[1] = kx * ky * f - kz;
  out[2] = kx * kz * f + ky;
  out[3] = ky * kx * f + kz;
  out[4] = c + ky * ky * f;
  out[5] = ky * kz * f - kx;
  out[6] = kz * kx * f - ky;
  out[7] = kz * ky * f + kx;
  out[8] = c + kz * kz * f;
}

/** Writes the turn by `angle` [rad, right hand] about the unit vector `axis`. */
export function writeTurn(axis: Vector, angle: number, out: Placement): void {
  const [x, y, z] = axis;
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const v = 1 - c;
  out[0] = c + x * x * v;
  out[1] = x * y * v - z * s;
  out[2] = x * z * v + y * s;
  out[3] = y * x * v + z * s;
  out[4] = c + y * y * v;
  out[5] = y * z * v - x * s;
  out[6] = z * x * v - y * s;
  out[7] = z * y * v + x * s;
  out[8] = c + z * z * v;
}

/**
 * How far a point of a body can have moved between two placements, at most: the movement of the centre and the chord that
 * the farthest point swings through [mm].
 * @param centre - of a ball around the body, at design
 * @param reach - its radius [mm]
 */
export function movedAtMost(a: Placement, b: Placement, centre: Vector, reach: number): number {
  let square = 0;
  let trace = 0;
  for (let row = 0; row < 3; row++) {
    const i = 3 * row;
    const by =
      (b[i] - a[i]) * centre[0] + (b[i + 1] - a[i + 1]) * centre[1] + (b[i + 2] - a[i + 2]) * centre[2] + b[9 + row] - a[9 + row];
    square += by * by;
    for (let column = 0; column < 3; column++) {
      const apart = b[i + column] - a[i + column];
      trace += apart * apart;
    }
  }
  // |Ra − Rb| as sum of squares is 8 sin²(θ/2): the chord of a unit arm square to the axis is 2 sin(θ/2)
  return Math.sqrt(square) + reach * Math.sqrt(0.5 * trace);
}

/**
 * The same for a body that stands still while the other moves, as the other sees it: of two bodies the one with the smaller ball
 * gives the closer bound.
 * @param a - where the other stands, as the still one sees it, before; `b`: after
 */
export function seenMovedAtMost(a: Placement, b: Placement, centre: Vector, reach: number): number {
  const [ax, ay, az] = [centre[0] - a[9], centre[1] - a[10], centre[2] - a[11]];
  const [bx, by, bz] = [centre[0] - b[9], centre[1] - b[10], centre[2] - b[11]];
  let square = 0;
  let trace = 0;
  for (let column = 0; column < 3; column++) {
    const moved =
      b[column] * bx + b[3 + column] * by + b[6 + column] * bz - (a[column] * ax + a[3 + column] * ay + a[6 + column] * az);
    square += moved * moved;
    for (let i = column; i < 9; i += 3) trace += (b[i] - a[i]) * (b[i] - a[i]);
  }
  return Math.sqrt(square) + reach * Math.sqrt(0.5 * trace);
}

/** Where the first stands, as the second sees it. */
export function inverse(m: Placement): Placement {
  const out = new Float64Array(PLACEMENT_WIDTH);
  for (let row = 0; row < 3; row++) for (let column = 0; column < 3; column++) out[3 * row + column] = m[3 * column + row];
  for (let row = 0; row < 3; row++) out[9 + row] = -(out[3 * row] * m[9] + out[3 * row + 1] * m[10] + out[3 * row + 2] * m[11]);
  return out;
}

/** Writes a b: first b, then a. */
export function writeProduct(a: Placement, b: Placement, out: Placement): void {
  for (let row = 0; row < 3; row++) {
    const x = a[3 * row];
    const y = a[3 * row + 1];
    const z = a[3 * row + 2];
    for (let column = 0; column < 3; column++) out[3 * row + column] = x * b[column] + y * b[3 + column] + z * b[6 + column];
    out[9 + row] = x * b[9] + y * b[10] + z * b[11] + a[9 + row];
  }
}
