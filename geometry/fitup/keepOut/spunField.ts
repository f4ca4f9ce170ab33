import { add, anyPerpendicular, cross, dot, length, scale, subtract, type Vector } from '../../core/vector';
import { BOX, CYLINDER, POINT, SEGMENT, type Core } from '../distance/core';
import type { Solid, Spin } from '../shapes/solid';
import { writeMean, type Field } from './field';
import { squared } from './squared';

/**
 * One piece of what a solid sweeps when it turns about an axis, in the half plane of the axis: along it and away from it [mm].
 * A box along and away, or a segment, with a radius around it.
 */
interface Section {
  readonly u: number;
  readonly w: number;
  /** half of a segment; zero for a box */
  readonly du: number;
  readonly dw: number;
  /** half edges of a box along and away; zero for a segment */
  readonly halfU: number;
  readonly halfW: number;
  readonly round: number;
}

/** How much a ring's outline may be off where a skew line is cut into pieces for it [mm]. */
const CHORD_MM = 2e-3;
/** Sides of what stands for a circle that turns askew, around it. */
const SIDES = 128;

/**
 * The distance to a body of revolution: that of its section, which is convex piece by piece. Towards the axis the distance away from
 * it is bounded by its greatest over the points, away from the axis by its tangent plane.
 */
export function spunField(solid: Solid, { at, axis }: Spin, fine: number): Field {
  const sections = sectionsOf(solid, { at, axis }, fine);
  const [ax, ay, az] = axis;
  const mean = new Float64Array(3);
  const slope = new Float64Array(2);
  // where a point is: along the axis, and away from it
  let u = 0;
  let w = 0;
  let [ex, ey, ez] = anyPerpendicular(axis);
  const look = (x: number, y: number, z: number): void => {
    const [px, py, pz] = [x - at[0], y - at[1], z - at[2]];
    u = px * ax + py * ay + pz * az;
    const [qx, qy, qz] = [px - u * ax, py - u * ay, pz - u * az];
    w = Math.sqrt(qx * qx + qy * qy + qz * qz);
    if (w > 0) [ex, ey, ez] = [qx / w, qy / w, qz / w];
  };
  return {
    ball: solid.ball,
    isConvex: false,
    round: Math.min(...sections.map(({ round }) => round)),
    within: Math.max(...sections.map(({ round, halfU, halfW }) => round + Math.min(halfU, halfW))),
    distance: (x, y, z, out) => {
      look(x, y, z);
      let best = Infinity;
      for (const section of sections) {
        if (tooFar(section, u, best)) continue;
        const distance = sectionDistance(section, u, w, slope);
        if (distance >= best) continue;
        best = distance;
        out[0] = slope[0] * ax + slope[1] * ex;
        out[1] = slope[0] * ay + slope[1] * ey;
        out[2] = slope[0] * az + slope[1] * ez;
      }
      return best;
    },
    least: (patch, count) => {
      writeMean(patch, count, mean);
      look(mean[0], mean[1], mean[2]);
      const [u0, w0] = [u, w];
      const [fx, fy, fz] = [ex, ey, ez];
      const tries = Math.min(count, MOST_POINTS);
      let reach = 0;
      for (let i = 0; i < tries; i++) {
        const [x, y, z] = [patch[3 * i], patch[3 * i + 1], patch[3 * i + 2]];
        look(x, y, z);
        alongs[i] = u - u0;
        aways[i] = w - w0;
        tangents[i] = (x - mean[0]) * fx + (y - mean[1]) * fy + (z - mean[2]) * fz;
        reach = Math.max(reach, Math.abs(alongs[i]) + Math.abs(aways[i]));
      }
      let best = Infinity;
      for (const section of sections) {
        if (tooFar(section, u0, best + reach)) continue;
        const distance = sectionDistance(section, u0, w0, slope);
        const radial = slope[1] >= 0 ? tangents : aways;
        let change = Infinity;
        for (let i = 0; i < tries; i++) {
          const along = slope[0] * alongs[i] + slope[1] * radial[i];
          if (along < change) change = along;
        }
        if (distance + change < best) best = distance + change;
      }
      return best;
    },
  };
}

const MOST_POINTS = 16;
const alongs = new Float64Array(MOST_POINTS);
const aways = new Float64Array(MOST_POINTS);
const tangents = new Float64Array(MOST_POINTS);

const tooFar = (section: Section, u: number, best: number): boolean =>
  Math.abs(u - section.u) - section.halfU - Math.abs(section.du) - section.round >= best;

function sectionDistance(section: Section, u: number, w: number, slope: Float64Array): number {
  const { du, dw, halfU, halfW, round } = section;
  let pu = u - section.u;
  let pw = w - section.w;
  const square = du * du + dw * dw;
  if (square > 0) {
    const share = Math.min(1, Math.max(-1, (pu * du + pw * dw) / square));
    pu -= share * du;
    pw -= share * dw;
  } else if (halfU > 0 && halfW > 0 && Math.abs(pu) <= halfU && Math.abs(pw) <= halfW) {
    const [deepU, deepW] = [Math.abs(pu) - halfU, Math.abs(pw) - halfW];
    slope[0] = deepU >= deepW ? Math.sign(pu) : 0;
    slope[1] = deepU >= deepW ? 0 : Math.sign(pw);
    return Math.max(deepU, deepW) - round;
  } else {
    pu = pu > halfU ? pu - halfU : pu < -halfU ? pu + halfU : 0;
    pw = pw > halfW ? pw - halfW : pw < -halfW ? pw + halfW : 0;
  }
  const size = Math.sqrt(pu * pu + pw * pw);
  slope[0] = size > 0 ? pu / size : 0;
  slope[1] = size > 0 ? pw / size : 0;
  return size - round;
}

function sectionsOf(solid: Solid, spin: Spin, fine: number): Section[] {
  if (solid.kind === 'mesh')
    return stationsOf(solid.mesh.triangles, solid.mesh.isClosed ? solid.mesh.search.holds : null, spin, fine);
  return solid.cores.flatMap((core, i) => sectionsOfCore(core, solid.rounds[i], spin, fine));
}

const POINT_SECTION = { du: 0, dw: 0, halfU: 0, halfW: 0 };

function sectionsOfCore(core: Core, round: number, spin: Spin, fine: number): Section[] {
  const vector = (from: number): Vector => [core[from], core[from + 1], core[from + 2]];
  const centre = vector(1);
  switch (core[0]) {
    case POINT: {
      const [u, w] = inHalfPlane(centre, spin);
      return [{ ...POINT_SECTION, u, w, round }];
    }
    case SEGMENT:
      return lineSections(subtract(centre, vector(4)), add(centre, vector(4)), round, spin);
    case BOX: {
      const flat = inPlaneBox(centre, [vector(4), vector(7), vector(10)], round, spin);
      return flat ?? stationsOf(boxTriangles(centre, vector(4), vector(7), vector(10)), insideBox(core), spin, fine);
    }
    case CYLINDER: {
      const sides = cylinderTriangles(centre, vector(4), vector(7), vector(10));
      return stationsOf(sides, insideCylinder(core), spin, fine);
    }
    default:
      throw new RangeError(`sectionsOfCore: a core of kind ${core[0]} has no section`);
  }
}

function inHalfPlane(point: Vector, { at, axis }: Spin): readonly [number, number] {
  const off = subtract(point, at);
  const along = dot(off, axis);
  return [along, length(subtract(off, scale(axis, along)))];
}

/** What a segment sweeps: the curve that it draws in the half plane, in pieces short enough to be straight. */
function lineSections(from: Vector, to: Vector, round: number, spin: Spin, depth = 0): Section[] {
  const [u0, w0] = inHalfPlane(from, spin);
  const [u1, w1] = inHalfPlane(to, spin);
  const middle = scale(add(from, to), 0.5);
  const [um, wm] = inHalfPlane(middle, spin);
  const sag = Math.abs(0.5 * (w0 + w1) - wm) + Math.abs(0.5 * (u0 + u1) - um);
  if (sag > CHORD_MM && depth < 12)
    return [...lineSections(from, middle, round, spin, depth + 1), ...lineSections(middle, to, round, spin, depth + 1)];
  const straight = { u: 0.5 * (u0 + u1), w: 0.5 * (w0 + w1), du: 0.5 * (u1 - u0), dw: 0.5 * (w1 - w0), halfU: 0, halfW: 0 };
  return [{ ...straight, round: depth === 0 && sag < 1e-9 ? round : round + CHORD_MM }];
}

/** A rectangle of no thickness that lies in a plane with the axis, along it and on one side of it. */
function inPlaneBox(centre: Vector, halves: readonly Vector[], round: number, spin: Spin): Section[] | null {
  const [u, w] = inHalfPlane(centre, spin);
  const flat = halves.filter((half) => length(half) > 0);
  if (flat.length !== 2 || w === 0) return null;
  const out = scale(subtract(subtract(centre, spin.at), scale(spin.axis, u)), 1 / w);
  const along = flat.find((half) => length(cross(half, spin.axis)) <= 1e-9 * length(half));
  const away = flat.find((half) => length(cross(half, out)) <= 1e-9 * length(half));
  if (along === undefined || away === undefined || length(away) > w) return null;
  return [{ u, w, du: 0, dw: 0, halfU: length(along), halfW: length(away), round }];
}

/**
 * What triangles sweep, station by station along the axis: from their least to their greatest radius there.
 * @param holds - whether a point is inside; where the axis is, the ring has no hole
 */
function stationsOf(triangles: Float64Array, holds: ((point: Vector) => boolean) | null, spin: Spin, fine: number): Section[] {
  const e1 = anyPerpendicular(spin.axis);
  const e2 = cross(spin.axis, e1);
  const local = new Float64Array(triangles.length);
  let [min, max] = [Infinity, -Infinity];
  for (let i = 0; i < triangles.length; i += 3) {
    const off = subtract([triangles[i], triangles[i + 1], triangles[i + 2]], spin.at);
    local.set([dot(off, spin.axis), dot(off, e1), dot(off, e2)], i);
    min = Math.min(min, local[i]);
    max = Math.max(max, local[i]);
  }
  const count = Math.max(1, Math.min(MOST_STATIONS, Math.ceil((max - min) / fine)));
  const step = (max - min) / count;
  const inner = new Float64Array(count).fill(Infinity);
  const outer = new Float64Array(count).fill(-1);
  for (let i = 0; i < local.length; i += 9) {
    const us = [local[i], local[i + 3], local[i + 6]];
    const first = step > 0 ? Math.floor((Math.min(...us) - min) / step) : 0;
    const last = step > 0 ? Math.floor((Math.max(...us) - min) / step) : 0;
    for (let k = Math.max(0, Math.min(count - 1, first)); k <= Math.min(count - 1, last); k++) {
      const polygon = clipped(local.subarray(i, i + 9), min + k * step, min + (k + 1) * step);
      if (polygon.length === 0) continue;
      inner[k] = Math.min(inner[k], leastRadius(polygon));
      for (const [v, w] of polygon) outer[k] = Math.max(outer[k], Math.sqrt(v * v + w * w));
    }
  }
  const made: Section[] = [];
  for (let k = 0; k < count; k++) {
    if (outer[k] < 0) continue;
    const u = min + (k + 0.5) * step;
    if (holds?.(add(spin.at, scale(spin.axis, u))) === true) inner[k] = 0;
    made.push({
      u,
      w: 0.5 * (inner[k] + outer[k]),
      du: 0,
      dw: 0,
      halfU: 0.5 * step,
      halfW: 0.5 * (outer[k] - inner[k]),
      round: 0,
    });
  }
  return made;
}

const MOST_STATIONS = 4000;

/** What of a triangle lies between two stations, seen along the axis. */
function clipped(t: Float64Array, from: number, to: number): (readonly [number, number])[] {
  let corners: Vector[] = [0, 3, 6].map((i) => [t[i], t[i + 1], t[i + 2]]);
  for (const [station, sense] of [
    [from, 1],
    [to, -1],
  ] as const) {
    const kept: Vector[] = [];
    corners.forEach((corner, i) => {
      const next = corners[(i + 1) % corners.length];
      const [a, b] = [sense * (corner[0] - station), sense * (next[0] - station)];
      if (a >= 0) kept.push(corner);
      if (a >= 0 !== b >= 0) kept.push(add(corner, scale(subtract(next, corner), a / (a - b))));
    });
    corners = kept;
  }
  return corners.map(([, v, w]) => [v, w]);
}

/** Least distance of a flat polygon from the axis, seen along it. */
function leastRadius(polygon: readonly (readonly [number, number])[]): number {
  let least = Infinity;
  let [lefts, rights] = [0, 0];
  polygon.forEach(([v, w], i) => {
    const [v1, w1] = polygon[(i + 1) % polygon.length];
    const [dv, dw] = [v1 - v, w1 - w];
    const square = dv * dv + dw * dw;
    const share = square > 0 ? Math.min(1, Math.max(0, -(v * dv + w * dw) / square)) : 0;
    least = Math.min(least, Math.sqrt(squared(v + share * dv) + squared(w + share * dw)));
    const turn = v * w1 - w * v1;
    if (turn > 0) lefts += 1;
    if (turn < 0) rights += 1;
  });
  return polygon.length > 2 && (lefts === 0 || rights === 0) && lefts + rights > 0 ? 0 : least;
}

function boxTriangles(centre: Vector, a: Vector, b: Vector, c: Vector): Float64Array {
  const corner = (i: number, j: number, k: number): Vector => add(centre, add(scale(a, i), add(scale(b, j), scale(c, k))));
  const faces: Vector[][] = [];
  for (const s of [-1, 1]) {
    faces.push([corner(s, -1, -1), corner(s, 1, -1), corner(s, 1, 1), corner(s, -1, 1)]);
    faces.push([corner(-1, s, -1), corner(1, s, -1), corner(1, s, 1), corner(-1, s, 1)]);
    faces.push([corner(-1, -1, s), corner(1, -1, s), corner(1, 1, s), corner(-1, 1, s)]);
  }
  return Float64Array.from(faces.flatMap(([p, q, r, s]) => [p, q, r, p, r, s]).flat());
}

/** A prism around the cylinder, as near as its sides are many. */
function cylinderTriangles(centre: Vector, half: Vector, first: Vector, second: Vector): Float64Array {
  const out = 1 / Math.cos(Math.PI / SIDES);
  const rim = (i: number): Vector => {
    const angle = (2 * Math.PI * i) / SIDES;
    return add(centre, add(scale(first, out * Math.cos(angle)), scale(second, out * Math.sin(angle))));
  };
  const made: Vector[] = [];
  for (let i = 0; i < SIDES; i++) {
    const [p, q] = [rim(i), rim(i + 1)];
    const [low, high] = [subtract(centre, half), add(centre, half)];
    const [p0, q0, p1, q1] = [subtract(p, half), subtract(q, half), add(p, half), add(q, half)];
    made.push(p0, q0, q1, p0, q1, p1, low, q0, p0, high, p1, q1);
  }
  return Float64Array.from(made.flat());
}

const insideBox =
  (core: Core) =>
  (point: Vector): boolean =>
    [4, 7, 10].every((from) => withinHalf(core, from, point));

function withinHalf(core: Core, from: number, point: Vector): boolean {
  const half: Vector = [core[from], core[from + 1], core[from + 2]];
  return Math.abs(dot(subtract(point, [core[1], core[2], core[3]]), half)) <= dot(half, half);
}

const insideCylinder =
  (core: Core) =>
  (point: Vector): boolean => {
    if (!withinHalf(core, 4, point)) return false;
    const off = subtract(point, [core[1], core[2], core[3]]);
    const share = (from: number): number => {
      const v: Vector = [core[from], core[from + 1], core[from + 2]];
      return dot(off, v) / dot(v, v);
    };
    return squared(share(7)) + squared(share(10)) <= 1;
  };
