import type { Level } from './level';
import { found, type NearestSearch } from './nearestOf';
import type { PositionCell } from './positionTree';
import type { GrowingMesh } from './surface';
import { squared } from './squared';

const EDGE_KEY = 1 << 26;
const MOST_ROUNDS = 14;
const MOST_PUSHES = 40;
/** An edge is not cut below this share of the bound. */
const SMALLEST_EDGE = 0.1;

interface Cut {
  readonly a: number;
  readonly b: number;
  /** sum of the normals beside it */
  readonly normal: [number, number, number];
  readonly home: readonly PositionCell[];
  number: number;
}

/**
 * Cuts up what could reach into the swept space, or stands farther out than the bound, until nothing does. An edge is cut for both of
 * its triangles, so the mesh stays closed; new corners are moved to the level.
 * @param most - gives up where there are more triangles
 * @returns false where there are more
 */
export function refineMesh(mesh: GrowingMesh, level: Level, search: NearestSearch, most: number): boolean {
  const { positions } = mesh;
  const answer = found();
  let isDone = new Uint8Array(mesh.homes.length);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const cuts = new Map<number, Cut>();
    const mark = (a: number, b: number, home: readonly PositionCell[]): void => {
      const key = a < b ? a * EDGE_KEY + b : b * EDGE_KEY + a;
      if (!cuts.has(key)) cuts.set(key, { a, b, normal: [0, 0, 0], home, number: -1 });
    };
    mesh.homes.forEach((home, i) => {
      if (isDone[i] === 1) return;
      const fault = faultOf(mesh, i, home, level, search, answer);
      if (fault === null) {
        isDone[i] = 1;
        return;
      }
      for (const k of fault) mark(mesh.triangles[3 * i + k], mesh.triangles[3 * i + ((k + 1) % 3)], home);
    });
    if (cuts.size === 0) return true;
    if (mesh.homes.length + 2 * cuts.size > most) return false;
    const cutOf = (a: number, b: number): Cut | undefined => cuts.get(a < b ? a * EDGE_KEY + b : b * EDGE_KEY + a);
    mesh.homes.forEach((_home, i) => {
      const corners = mesh.triangles.slice(3 * i, 3 * i + 3);
      const marked = [0, 1, 2].map((k) => cutOf(corners[k], corners[(k + 1) % 3]));
      if (marked.every((cut) => cut === undefined)) return;
      const normal = normalOf(positions, corners);
      for (const cut of marked) if (cut !== undefined) for (let k = 0; k < 3; k++) cut.normal[k] += normal[k];
    });
    for (const cut of cuts.values()) {
      cut.number = positions.length / 3;
      positions.push(...pushedOut(positions, cut, level, search, answer));
    }
    const triangles: number[] = [];
    const homes: (readonly PositionCell[])[] = [];
    const done: number[] = [];
    mesh.homes.forEach((home, i) => {
      const corners = mesh.triangles.slice(3 * i, 3 * i + 3);
      const middles = [0, 1, 2].map((k) => cutOf(corners[k], corners[(k + 1) % 3])?.number ?? -1);
      const parts = cutTriangle(positions, corners, middles);
      for (const part of parts) {
        triangles.push(...part);
        homes.push(home);
        done.push(parts.length === 1 ? isDone[i] : 0);
      }
    });
    mesh.triangles = triangles;
    mesh.homes = homes;
    isDone = Uint8Array.from(done);
  }
  return true;
}

/** What edges of a triangle have to be cut: the longest where it stands too far out, all where it could reach in; null: none. */
function faultOf(
  mesh: GrowingMesh,
  index: number,
  home: readonly PositionCell[],
  level: Level,
  search: NearestSearch,
  answer: ReturnType<typeof found>,
): readonly number[] | null {
  const t = cornersOf(mesh, index);
  const edges = [0, 1, 2].map((k) => edgeLength(t, k));
  const longest = edges.indexOf(Math.max(...edges));
  if (edges[longest] < SMALLEST_EDGE * level.bound) return null;
  if (enclosingRadius(edges) > level.safeRadius && !search.isClear(home, t, level.grow)) return [0, 1, 2];
  const [x, y, z] = [0, 1, 2].map((k) => (t[k] + t[3 + k] + t[6 + k]) / 3);
  const most = level.grow + level.bound;
  search.find(home, x, y, z, most, most + edges[longest], answer);
  return answer.distance > most ? [longest] : null;
}

const corner = new Float64Array(9);

function cornersOf({ positions, triangles }: GrowingMesh, index: number): Float64Array {
  for (let k = 0; k < 3; k++) for (let i = 0; i < 3; i++) corner[3 * k + i] = positions[3 * triangles[3 * index + k] + i];
  return corner;
}

function edgeLength(t: Float64Array, k: number): number {
  const next = (k + 1) % 3;
  return Math.sqrt([0, 1, 2].reduce((sum, i) => sum + squared(t[3 * k + i] - t[3 * next + i]), 0));
}

/** Radius of the least circle around a triangle of these edges. */
function enclosingRadius(edges: readonly number[]): number {
  const [a, b, c] = [...edges].sort((p, q) => q - p);
  if (a * a >= b * b + c * c) return 0.5 * a;
  const half = 0.5 * (a + b + c);
  return (a * b * c) / (4 * Math.sqrt(half * (half - a) * (half - b) * (half - c)));
}

function normalOf(positions: readonly number[], [a, b, c]: readonly number[]): readonly [number, number, number] {
  const at = (corner_: number, i: number): number => positions[3 * corner_ + i];
  const [ux, uy, uz] = [0, 1, 2].map((i) => at(b, i) - at(a, i));
  const [vx, vy, vz] = [0, 1, 2].map((i) => at(c, i) - at(a, i));
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > 0 ? [x / size, y / size, z / size] : [0, 0, 0];
}

/** The middle of an edge moved to the level: inwards straight at what is nearest, outwards away from it or off the surface. */
function pushedOut(
  positions: readonly number[],
  { a, b, normal, home }: Cut,
  level: Level,
  search: NearestSearch,
  answer: ReturnType<typeof found>,
): readonly [number, number, number] {
  const at: [number, number, number] = [0, 1, 2].map((i) => 0.5 * (positions[3 * a + i] + positions[3 * b + i])) as never;
  const size = Math.sqrt(squared(normal[0]) + squared(normal[1]) + squared(normal[2]));
  const goal = level.at + 0.5 * level.play;
  for (let push = 0; push < MOST_PUSHES; push++) {
    search.find(home, ...at, -Infinity, level.at + 1e3, answer);
    const { distance, gradient } = answer;
    if (distance >= level.at && distance <= level.at + level.play) return at;
    const isDeep = distance < 0.3 * level.at || push > MOST_PUSHES / 2;
    const by = goal - distance;
    for (let i = 0; i < 3; i++) at[i] += by * (by > 0 && isDeep && size > 0 ? normal[i] / size : gradient[i]);
  }
  return at;
}

/** A triangle with some of its edges cut: as many parts as cuts and one more. */
function cutTriangle(positions: readonly number[], corners: readonly number[], middles: readonly number[]): number[][] {
  const count = middles.filter((middle) => middle >= 0).length;
  if (count === 0) return [[...corners]];
  if (count === 3) {
    const [a, b, c] = corners;
    const [ab, bc, ca] = middles;
    return [
      [a, ab, ca],
      [ab, b, bc],
      [ca, bc, c],
      [ab, bc, ca],
    ];
  }
  // turned so that the first edge is the one that is cut, or the last the one that is not
  const turn = count === 1 ? middles.findIndex((middle) => middle >= 0) : (middles.findIndex((middle) => middle < 0) + 1) % 3;
  const [a, b, c] = [0, 1, 2].map((k) => corners[(turn + k) % 3]);
  const [ab, bc] = [0, 1].map((k) => middles[(turn + k) % 3]);
  if (count === 1)
    return [
      [a, ab, c],
      [ab, b, c],
    ];
  const apart = (p: number, q: number): number =>
    [0, 1, 2].reduce((sum, i) => sum + squared(positions[3 * p + i] - positions[3 * q + i]), 0);
  // the rest is a, ab, bc, c
  return apart(a, bc) <= apart(ab, c)
    ? [
        [ab, b, bc],
        [a, ab, bc],
        [a, bc, c],
      ]
    : [
        [ab, b, bc],
        [a, ab, c],
        [ab, bc, c],
      ];
}
