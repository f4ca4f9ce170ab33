import { add, anyPerpendicular, cross, length, scale, subtract, unit, type Vector } from '../../core/vector';
import type { Placement } from '../placement';

/**
 * A convex core: what is left of a shape when its rounding is taken off (a capsule is a segment and a radius). Flat, 13 numbers:
 * kind, centre, then three vectors.
 *
 * | kind | vectors |
 * | --- | --- |
 * | point | – |
 * | segment | half of it |
 * | triangle | its corners from the centre |
 * | box | three half edges |
 * | cylinder | half of the axis; two radii, square to it and to each other. Half of the axis may be zero: a disc |
 * | hull | of four cores, which follow from 4: all that lies between them. 56 numbers |
 */
export type Core = Float64Array;

export const CORE_WIDTH = 13;
export const POINT = 0;
export const SEGMENT = 1;
export const TRIANGLE = 2;
export const BOX = 3;
export const CYLINDER = 4;
export const HULL = 5;
export const HULL_OF = 4;
export const HULL_WIDTH = 4 + HULL_OF * CORE_WIDTH;

function core(kind: number, centre: Vector, vectors: readonly Vector[]): Core {
  const out = new Float64Array(CORE_WIDTH);
  out[0] = kind;
  out.set(centre, 1);
  vectors.forEach((vector, index) => out.set(vector, 4 + 3 * index));
  return out;
}

export const pointCore = (at: Vector): Core => core(POINT, at, []);

/** A segment without length is a point. */
export function segmentCore(from: Vector, to: Vector): Core {
  const half = scale(subtract(to, from), 0.5);
  return length(half) > 0 ? core(SEGMENT, scale(add(from, to), 0.5), [half]) : pointCore(from);
}

export function triangleCore(a: Vector, b: Vector, c: Vector): Core {
  const centre = scale(add(add(a, b), c), 1 / 3);
  return core(TRIANGLE, centre, [subtract(a, centre), subtract(b, centre), subtract(c, centre)]);
}

export const boxCore = (centre: Vector, halves: readonly [Vector, Vector, Vector]): Core => core(BOX, centre, halves);

/** With flat ends; from = to is a disc, which needs its axis said. */
export function cylinderCore(from: Vector, to: Vector, radius: number, axis: Vector = unit(subtract(to, from))): Core {
  const first = anyPerpendicular(axis);
  const half = scale(subtract(to, from), 0.5);
  return core(CYLINDER, scale(add(from, to), 0.5), [half, scale(first, radius), scale(cross(axis, first), radius)]);
}

/** Makes a hull of the cores that have been written from 4. */
export function writeHullHead(hull: Core): void {
  hull[0] = HULL;
  for (let i = 1; i < 4; i++) {
    let sum = 0;
    for (let from = 4; from < HULL_WIDTH; from += CORE_WIDTH) sum += hull[from + i];
    hull[i] = sum / HULL_OF;
  }
}

/** Writes a core, no hull, where a placement puts it. */
export function placeCore(m: Placement, shape: Core, out: Core): void {
  out[0] = shape[0];
  const x = shape[1];
  const y = shape[2];
  const z = shape[3];
  out[1] = m[0] * x + m[1] * y + m[2] * z + m[9];
  out[2] = m[3] * x + m[4] * y + m[5] * z + m[10];
  out[3] = m[6] * x + m[7] * y + m[8] * z + m[11];
  const last = LAST_VECTOR[shape[0]];
  for (let i = 4; i < last; i += 3) {
    const u = shape[i];
    const v = shape[i + 1];
    const w = shape[i + 2];
    out[i] = m[0] * u + m[1] * v + m[2] * w;
    out[i + 1] = m[3] * u + m[4] * v + m[5] * w;
    out[i + 2] = m[6] * u + m[7] * v + m[8] * w;
  }
}

const LAST_VECTOR = [4, 7, 13, 13, 13];

/** Radius of a ball about the centre that holds the core [mm]. */
export function coreReach(shape: Core): number {
  const square = (from: number): number =>
    shape[from] * shape[from] + shape[from + 1] * shape[from + 1] + shape[from + 2] * shape[from + 2];
  switch (shape[0]) {
    case POINT:
      return 0;
    case SEGMENT:
      return Math.sqrt(square(4));
    case TRIANGLE:
      return Math.sqrt(Math.max(square(4), square(7), square(10)));
    case BOX:
      return Math.sqrt(square(4) + square(7) + square(10));
    default:
      return Math.sqrt(square(4) + square(7));
  }
}

const ofOne = new Float64Array(3);

/** Writes the point of a core that lies farthest along (x, y, z), which need not be a unit vector. */
export function writeSupport(shape: Core, x: number, y: number, z: number, out: Float64Array, at: number): void {
  if (shape[0] !== HULL) {
    writeSupportFrom(shape, 0, x, y, z, out, at);
    return;
  }
  let most = -Infinity;
  for (let from = 4; from < HULL_WIDTH; from += CORE_WIDTH) {
    writeSupportFrom(shape, from, x, y, z, ofOne, 0);
    const along = ofOne[0] * x + ofOne[1] * y + ofOne[2] * z;
    if (along <= most) continue;
    most = along;
    out[at] = ofOne[0];
    out[at + 1] = ofOne[1];
    out[at + 2] = ofOne[2];
  }
}

/** The core that starts at `from`. */
function writeSupportFrom(shape: Core, from: number, x: number, y: number, z: number, out: Float64Array, at: number): void {
  let px = shape[from + 1];
  let py = shape[from + 2];
  let pz = shape[from + 3];
  const first = from + 4;
  switch (shape[from]) {
    case POINT:
      break;
    case TRIANGLE: {
      let best = first;
      let most = -Infinity;
      for (let i = first; i < first + 9; i += 3) {
        const along = shape[i] * x + shape[i + 1] * y + shape[i + 2] * z;
        if (along > most) {
          most = along;
          best = i;
        }
      }
      px += shape[best];
      py += shape[best + 1];
      pz += shape[best + 2];
      break;
    }
    case CYLINDER: {
      const end = shape[first] * x + shape[first + 1] * y + shape[first + 2] * z < 0 ? -1 : 1;
      const a = shape[first + 3] * x + shape[first + 4] * y + shape[first + 5] * z;
      const b = shape[first + 6] * x + shape[first + 7] * y + shape[first + 8] * z;
      const size = Math.sqrt(a * a + b * b);
      const ca = size > 0 ? a / size : 1;
      const cb = size > 0 ? b / size : 0;
      px += end * shape[first] + ca * shape[first + 3] + cb * shape[first + 6];
      py += end * shape[first + 1] + ca * shape[first + 4] + cb * shape[first + 7];
      pz += end * shape[first + 2] + ca * shape[first + 5] + cb * shape[first + 8];
      break;
    }
    default: {
      const last = from + LAST_VECTOR[shape[from]];
      for (let i = first; i < last; i += 3) {
        const end = shape[i] * x + shape[i + 1] * y + shape[i + 2] * z < 0 ? -1 : 1;
        px += end * shape[i];
        py += end * shape[i + 1];
        pz += end * shape[i + 2];
      }
    }
  }
  out[at] = px;
  out[at + 1] = py;
  out[at + 2] = pz;
}
