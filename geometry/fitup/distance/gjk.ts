import { writeSupport, type Core } from './core';

/**
 * Distance of two convex cores, and the points of each that are nearest.
 * @see E. G. Gilbert, D. W. Johnson, S. S. Keerthi, "A fast procedure for computing the distance between complex objects in
 * three-dimensional space", IEEE J. Robotics and Automation 4 (1988) 193–203; from memory
 */
export interface Nearest {
  /** 0 where the cores meet [mm] */
  distance: number;
  /** what the true distance can be less, at most [mm] */
  bound: number;
  /** nearest point of the first core, from 0, and of the second, from 3; without meaning where they meet */
  readonly points: Float64Array;
}

export const nearest = (): Nearest => ({ distance: 0, bound: 0, points: new Float64Array(6) });

/** The two bounds of the distance have met when they differ by less [mm]. */
const CLOSED_MM = 1e-10;
/** Nearer than that, cores meet [mm]. */
const MEET_MM = 1e-11;
const MOST_STEPS = 200;

// A simplex of at most four differences of support points: difference, point of A, point of B, nine numbers each.
const WIDTH = 9;
const simplex = new Float64Array(4 * WIDTH);
const fresh = new Float64Array(WIDTH);
const weights = new Float64Array(4);
const trial = new Float64Array(4);
const kept = new Int32Array(4);
let count = 0;
const v = new Float64Array(3);

/**
 * @param out - takes distance, bound and points
 * @param enough - once the distance is known to be this at least, no more is asked [mm]
 */
export function solveNearest(a: Core, b: Core, out: Nearest, enough = Infinity): void {
  v[0] = a[1] - b[1];
  v[1] = a[2] - b[2];
  v[2] = a[3] - b[3];
  if (v[0] === 0 && v[1] === 0 && v[2] === 0) v[0] = 1;
  count = 0;
  writeDifference(a, b, v, simplex, 0);
  count = 1;
  weights[0] = 1;
  take();
  let lower = 0;
  let size = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    size = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    if (size < MEET_MM || count === 4) {
      out.distance = 0;
      out.bound = 0;
      return;
    }
    writeDifference(a, b, v, fresh, 0);
    const along = (v[0] * fresh[0] + v[1] * fresh[1] + v[2] * fresh[2]) / size;
    if (along > lower) lower = along;
    if (size - lower <= CLOSED_MM || lower >= enough || isKnown()) break;
    for (let i = 0; i < WIDTH; i++) simplex[count * WIDTH + i] = fresh[i];
    count += 1;
    const before = size;
    reduce();
    take();
    const after = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
    // rounding: no nearer any more
    if (!(after < before)) {
      size = Math.min(after, before);
      break;
    }
  }
  out.distance = Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
  out.bound = Math.max(0, out.distance - lower);
  const points = out.points;
  points.fill(0);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < 6; k++) points[k] += weights[i] * simplex[i * WIDTH + 3 + k];
  }
}

/** Support of A against `v` less that of B along it. */
function writeDifference(a: Core, b: Core, along: Float64Array, out: Float64Array, at: number): void {
  writeSupport(a, -along[0], -along[1], -along[2], out, at + 3);
  writeSupport(b, along[0], along[1], along[2], out, at + 6);
  for (let k = 0; k < 3; k++) out[at + k] = out[at + 3 + k] - out[at + 6 + k];
}

/** Whether the newest difference is one of the simplex already: then nothing is nearer. */
function isKnown(): boolean {
  for (let i = 0; i < count; i++) {
    const from = i * WIDTH;
    if (simplex[from] === fresh[0] && simplex[from + 1] === fresh[1] && simplex[from + 2] === fresh[2]) return true;
  }
  return false;
}

/** The point of the simplex that is nearest to the origin, from its weights. */
function take(): void {
  v.fill(0);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < 3; k++) v[k] += weights[i] * simplex[i * WIDTH + k];
  }
}

let bestSquare = 0;
let bestCount = 0;
const bestOf = new Int32Array(4);
const bestWeights = new Float64Array(4);

/**
 * Leaves of the simplex what its point nearest to the origin needs: of all faces, edges and corners the one whose own nearest
 * point lies within it and is nearest. Looking at all of them is slower than going by regions and does not fail on flat ones.
 */
function reduce(): void {
  bestSquare = Infinity;
  const all = (1 << count) - 1;
  // the newest is always part of it: without it the simplex would be the one before, which was not near enough
  const newest = 1 << (count - 1);
  for (let set = newest; set <= all; set++) {
    if ((set & newest) === 0) continue;
    lookAt(set);
  }
  for (let i = 0; i < bestCount; i++) {
    const from = bestOf[i] * WIDTH;
    if (bestOf[i] !== i) simplex.copyWithin(i * WIDTH, from, from + WIDTH);
    weights[i] = bestWeights[i];
  }
  count = bestCount;
}

function lookAt(set: number): void {
  let n = 0;
  for (let i = 0; i < count; i++) if (set & (1 << i)) kept[n++] = i;
  if (!writeWeights(n)) return;
  let square = 0;
  for (let k = 0; k < 3; k++) {
    let sum = 0;
    for (let i = 0; i < n; i++) sum += trial[i] * simplex[kept[i] * WIDTH + k];
    square += sum * sum;
  }
  if (n === 4) square = 0;
  if (square < bestSquare) {
    bestSquare = square;
    bestCount = n;
    for (let i = 0; i < n; i++) {
      bestOf[i] = kept[i];
      bestWeights[i] = trial[i];
    }
  }
}

/** Weights of the point nearest to the origin in the plane, line or space of the kept corners; false where it lies outside them. */
function writeWeights(n: number): boolean {
  if (n === 1) {
    trial[0] = 1;
    return true;
  }
  const o = kept[0] * WIDTH;
  const p = kept[1] * WIDTH;
  const ox = simplex[o];
  const oy = simplex[o + 1];
  const oz = simplex[o + 2];
  const px = simplex[p] - ox;
  const py = simplex[p + 1] - oy;
  const pz = simplex[p + 2] - oz;
  const pp = px * px + py * py + pz * pz;
  const po = -(px * ox + py * oy + pz * oz);
  if (n === 2) {
    if (!(pp > 0)) return false;
    const t = po / pp;
    trial[0] = 1 - t;
    trial[1] = t;
    return t > 0 && t < 1;
  }
  const q = kept[2] * WIDTH;
  const qx = simplex[q] - ox;
  const qy = simplex[q + 1] - oy;
  const qz = simplex[q + 2] - oz;
  const nx = py * qz - pz * qy;
  const ny = pz * qx - px * qz;
  const nz = px * qy - py * qx;
  const qq = qx * qx + qy * qy + qz * qz;
  const flatness = nx * nx + ny * ny + nz * nz;
  if (n === 3) {
    if (!(flatness > 1e-24 * pp * qq)) return false;
    // barycentric by areas: with the foot of the perpendicular, s = ((−o) × q)·n / n², t = (p × (−o))·n / n²
    const s = (nx * (qy * oz - qz * oy) + ny * (qz * ox - qx * oz) + nz * (qx * oy - qy * ox)) / flatness;
    const t = (nx * (oy * pz - oz * py) + ny * (oz * px - ox * pz) + nz * (ox * py - oy * px)) / flatness;
    trial[0] = 1 - s - t;
    trial[1] = s;
    trial[2] = t;
    return s > 0 && t > 0 && s + t < 1;
  }
  const r = kept[3] * WIDTH;
  const rx = simplex[r] - ox;
  const ry = simplex[r + 1] - oy;
  const rz = simplex[r + 2] - oz;
  const volume = nx * rx + ny * ry + nz * rz;
  const rr = rx * rx + ry * ry + rz * rz;
  if (!(volume * volume > 1e-24 * flatness * rr)) return false;
  const c = -(nx * ox + ny * oy + nz * oz) / volume;
  const a = -(ox * (qy * rz - qz * ry) + oy * (qz * rx - qx * rz) + oz * (qx * ry - qy * rx)) / volume;
  const b = -(ox * (ry * pz - rz * py) + oy * (rz * px - rx * pz) + oz * (rx * py - ry * px)) / volume;
  trial[0] = 1 - a - b - c;
  trial[1] = a;
  trial[2] = b;
  trial[3] = c;
  return a > 0 && b > 0 && c > 0 && a + b + c < 1;
}
