import { add, anyPerpendicular, cross, dot, length, scale, subtract, unit, type Vector } from '../../core/vector';
import { writeSupport, type Core } from './core';

/** How far the second core has to go along a way, a unit vector, to be free of the first: no less than the depth [mm]. */
export const widthAlong = (a: Core, b: Core, way: Vector): number => dot(supportAlong(a, b, way).at, way);

/** The shortest way that parts two convex cores which meet. */
export interface Depth {
  /** length of that way [mm]; 0 where they only touch, or where both are flat in one plane */
  readonly depth: number;
  /** what the true depth can be more, at most [mm] */
  readonly bound: number;
  /** unit vector: the second core, moved by depth along it, is free of the first */
  readonly way: Vector;
  /** a point of each, at the place where they are deepest in each other */
  readonly points: readonly [Vector, Vector];
}

interface Vertex {
  readonly at: Vector;
  readonly onA: Vector;
  readonly onB: Vector;
}

interface Face {
  readonly corners: readonly [Vertex, Vertex, Vertex];
  readonly normal: Vector;
  readonly distance: number;
}

/** The two bounds of the depth have met when they differ by less [mm]; a curved core is given up at the second. */
const CLOSED_MM = 1e-6;
const MOST_FACES = 400;
/** What is thinner than that counts as flat [mm]. */
const FLAT_MM = 1e-9;

const scratch = new Float64Array(6);

function supportAlong(a: Core, b: Core, way: Vector): Vertex {
  writeSupport(a, way[0], way[1], way[2], scratch, 0);
  writeSupport(b, -way[0], -way[1], -way[2], scratch, 3);
  const onA: Vector = [scratch[0], scratch[1], scratch[2]];
  const onB: Vector = [scratch[3], scratch[4], scratch[5]];
  return { at: subtract(onA, onB), onA, onB };
}

/**
 * How deep two cores that meet are in each other: the polytope of support differences around the origin is grown at the face
 * that is nearest to it, until that face is one of the whole difference.
 * @see G. van den Bergen, "Proximity queries and penetration depth computation on 3D game objects" (2001), from memory
 */
export function solveDepth(a: Core, b: Core): Depth {
  const start = tetrahedronIn(a, b);
  if ('flat' in start) return start.flat;
  let faces = start.faces;
  // Slivers whose normal is rounding: nothing can be grown on them, and none of them is a face of the whole difference.
  const slivers = new Set<Face>();
  for (;;) {
    let nearest: Face | null = null;
    for (const face of faces) {
      if (!slivers.has(face) && (nearest === null || face.distance < nearest.distance)) nearest = face;
    }
    nearest ??= faces[0];
    const next = supportAlong(a, b, nearest.normal);
    const over = dot(next.at, nearest.normal) - nearest.distance;
    if (!(over > CLOSED_MM)) return depthOf(nearest, Math.max(0, over));
    if (faces.length > MOST_FACES || slivers.size === faces.length) return narrowest(a, b, faces);
    const grown = grow(faces, next);
    if (grown === null) slivers.add(nearest);
    else faces = grown;
  }
}

/**
 * The way out that a descent finds from the narrowest of the faces: for a polytope that rounding has spoilt. Any way out is
 * long enough, so what is found is never too little.
 */
function narrowest(a: Core, b: Core, faces: readonly Face[]): Depth {
  const along = (way: Vector): number => widthAlong(a, b, way);
  let way = faces[0].normal;
  let width = Infinity;
  for (const { normal } of faces) {
    const found = along(normal);
    if (found < width) [way, width] = [normal, found];
  }
  for (let step = 0.1; step > CLOSED_MM;) {
    const side = anyPerpendicular(way);
    const tried = [side, scale(side, -1), cross(way, side), cross(side, way)].map((by) => unit(add(way, scale(by, step))));
    const widths = tried.map(along);
    const best = widths.indexOf(Math.min(...widths));
    if (widths[best] < width) [way, width] = [tried[best], widths[best]];
    else step *= 0.5;
  }
  const { onA, onB } = supportAlong(a, b, way);
  return { depth: width, bound: width, way, points: [onA, onB] };
}

/** Depth along the normal of a face; the points by the weights of the origin's foot on it. */
function depthOf({ corners: [p, q, r], normal, distance }: Face, bound: number): Depth {
  const foot = scale(normal, distance);
  const area = (u: Vector, v: Vector): number => dot(cross(u, v), normal);
  const whole = area(subtract(q.at, p.at), subtract(r.at, p.at));
  const wp = area(subtract(q.at, foot), subtract(r.at, foot)) / whole;
  const wq = area(subtract(r.at, foot), subtract(p.at, foot)) / whole;
  const mix = (u: Vector, v: Vector, w: Vector): Vector => add(add(scale(u, wp), scale(v, wq)), scale(w, 1 - wp - wq));
  return {
    depth: Math.max(0, distance),
    bound,
    way: normal,
    points: [mix(p.onA, q.onA, r.onA), mix(p.onB, q.onB, r.onB)],
  };
}

/** A face seen from inside, with its normal outwards; null where its corners are on a line. */
function faceOf(p: Vertex, q: Vertex, r: Vertex, inside: Vector): Face | null {
  const raw = cross(subtract(q.at, p.at), subtract(r.at, p.at));
  const size = length(raw);
  if (!(size > 0)) return null;
  const normal = scale(raw, 1 / size);
  return dot(normal, subtract(p.at, inside)) < 0
    ? { corners: [p, r, q], normal: scale(normal, -1), distance: -dot(normal, p.at) }
    : { corners: [p, q, r], normal, distance: dot(normal, p.at) };
}

/** The polytope with one more vertex: what sees it is taken away, and the hole closed with it. Null where rounding spoils that. */
function grow(faces: readonly Face[], next: Vertex): Face[] | null {
  const left: Face[] = [];
  const edges = new Map<string, readonly [Vertex, Vertex]>();
  const number = new Map<Vertex, number>();
  const numberOf = (vertex: Vertex): number => {
    const known = number.get(vertex);
    if (known !== undefined) return known;
    number.set(vertex, number.size);
    return number.size - 1;
  };
  for (const face of faces) {
    // a face in one plane with the vertex goes too: it would leave a hole with an edge on one line with it
    if (dot(face.normal, next.at) - face.distance <= -FLAT_MM) {
      left.push(face);
      continue;
    }
    const [p, q, r] = face.corners;
    for (const [from, to] of [
      [p, q],
      [q, r],
      [r, p],
    ] as const) {
      // an edge between two faces that go is no edge of the hole
      const back = `${numberOf(to)} ${numberOf(from)}`;
      if (!edges.delete(back)) edges.set(`${numberOf(from)} ${numberOf(to)}`, [from, to]);
    }
  }
  for (const [from, to] of edges.values()) {
    const raw = cross(subtract(to.at, from.at), subtract(next.at, from.at));
    const size = length(raw);
    if (!(size > 0)) return null;
    const normal = scale(raw, 1 / size);
    left.push({ corners: [from, to, next], normal, distance: dot(normal, from.at) });
  }
  return left;
}

/** Four support differences that have the origin among them, or the answer where the difference of the cores is flat there. */
function tetrahedronIn(a: Core, b: Core): { readonly faces: Face[] } | { readonly flat: Depth } {
  const first = supportAlong(a, b, [1, 0, 0]);
  const second = farthest(a, b, first.at, [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]);
  const line = subtract(second.at, first.at);
  if (!(length(line) > FLAT_MM)) return { flat: flat(first, [1, 0, 0]) };
  const along = scale(line, 1 / length(line));
  const side = anyPerpendicular(along);
  const third = farthest(a, b, first.at, [side, cross(along, side)], along);
  const across = cross(along, subtract(third.at, first.at));
  if (!(length(across) > FLAT_MM)) return { flat: flat(first, side) };
  const normal = scale(across, 1 / length(across));
  const fourth = farthest(a, b, first.at, [normal]);
  if (!(Math.abs(dot(normal, subtract(fourth.at, first.at))) > FLAT_MM)) return { flat: flat(first, normal) };
  return enclose(a, b, [first, second, third, fourth]);
}

/** Both cores lie in one plane there: they part by nothing along its normal. */
const flat = ({ onA, onB }: Vertex, way: Vector): Depth => ({ depth: 0, bound: 0, way, points: [onA, onB] });

/** Of the differences along some directions, both ways, the one farthest from a point (square to `along`, where it is given). */
function farthest(a: Core, b: Core, from: Vector, ways: readonly Vector[], along: Vector | null = null): Vertex {
  let best: Vertex | null = null;
  let most = -1;
  for (const way of ways) {
    for (const sense of [1, -1]) {
      const vertex = supportAlong(a, b, scale(way, sense));
      const gap = subtract(vertex.at, from);
      const far = along === null ? Math.abs(dot(gap, way)) : length(cross(along, gap));
      if (far > most) {
        most = far;
        best = vertex;
      }
    }
  }
  return best!;
}

/** Grows a tetrahedron until the origin is in it. Where rounding keeps it out, the cores touch, and the nearest face says where. */
function enclose(
  a: Core,
  b: Core,
  corners: readonly [Vertex, Vertex, Vertex, Vertex],
): { readonly faces: Face[] } | { readonly flat: Depth } {
  const [p, q, r, s] = corners;
  const inside = scale(add(add(p.at, q.at), add(r.at, s.at)), 0.25);
  const made = [faceOf(p, q, r, inside), faceOf(p, q, s, inside), faceOf(p, r, s, inside), faceOf(q, r, s, inside)];
  let faces = made.filter((face) => face !== null);
  for (let step = 0; step < MOST_FACES; step++) {
    let outside: Face | null = null;
    for (const face of faces) if (face.distance < 0 && (outside === null || face.distance < outside.distance)) outside = face;
    if (outside === null) return { faces };
    const next = supportAlong(a, b, outside.normal);
    const reached = dot(next.at, outside.normal);
    if (reached <= 0 || reached - outside.distance <= FLAT_MM) return { flat: flat(next, outside.normal) };
    const grown = grow(faces, next);
    if (grown === null) return { flat: flat(next, outside.normal) };
    faces = grown;
  }
  return { faces };
}
