import type { ActiveCube } from './lattice';
import type { GrowingMesh } from './surface';
import { squared } from './squared';

const EDGE_KEY = 1 << 26;

/** An edge that is cut, for both of its triangles. */
export interface Cut {
  readonly a: number;
  readonly b: number;
  /** sum of the normals beside it */
  readonly normal: [number, number, number];
  readonly home: ActiveCube;
  number: number;
}

/**
 * What is known of a triangle: nothing yet, that it is done with, or that it may reach inside and is not cut up any more. How far it
 * stands out is told by its middle.
 */
export const OPEN = 0;
export const DONE = 1;
export const LEFT = 2;

/** The same for an edge from either end. */
export const keyOf = (a: number, b: number): number => (a < b ? a * EDGE_KEY + b : b * EDGE_KEY + a);

/** Corners of a mesh that an edge which is cut ends at: most triangles have none, and need no more to be asked. */
function endsOf({ positions }: GrowingMesh, cuts: ReadonlyMap<number, Cut>): Uint8Array {
  const ends = new Uint8Array(positions.length / 3);
  for (const { a, b } of cuts.values()) ends[a] = ends[b] = 1;
  return ends;
}

/** Gives every cut the normals of the triangles beside it. */
export function addNormals(mesh: GrowingMesh, cuts: ReadonlyMap<number, Cut>): void {
  const { positions: p, triangles: t } = mesh;
  const ends = endsOf(mesh, cuts);
  for (let i = 0; i < t.length; i += 3) {
    if (ends[t[i]] + ends[t[i + 1]] + ends[t[i + 2]] < 2) continue;
    let normal: readonly [number, number, number] | null = null;
    for (let k = 0; k < 3; k++) {
      const cut = cuts.get(keyOf(t[i + k], t[i + ((k + 1) % 3)]));
      if (cut === undefined) continue;
      normal ??= normalOf(p, t[i], t[i + 1], t[i + 2]);
      for (let n = 0; n < 3; n++) cut.normal[n] += normal[n];
    }
  }
}

function normalOf(p: readonly number[], a: number, b: number, c: number): readonly [number, number, number] {
  const [ux, uy, uz] = [0, 1, 2].map((i) => p[3 * b + i] - p[3 * a + i]);
  const [vx, vy, vz] = [0, 1, 2].map((i) => p[3 * c + i] - p[3 * a + i]);
  const [x, y, z] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.sqrt(x * x + y * y + z * z);
  return size > 0 ? [x / size, y / size, z / size] : [0, 0, 0];
}

/**
 * Cuts every triangle beside a cut: the first of its parts takes its place, the others come last. What is known of the triangles that
 * stay whole stays.
 */
export function cutAll(
  mesh: GrowingMesh,
  cuts: ReadonlyMap<number, Cut>,
  states: Uint8Array<ArrayBuffer>,
  middles: Float64Array<ArrayBuffer>,
): [Uint8Array<ArrayBuffer>, Float64Array<ArrayBuffer>] {
  const { positions, triangles: t, homes } = mesh;
  const ends = endsOf(mesh, cuts);
  const numberOf = (a: number, b: number): number => cuts.get(keyOf(a, b))?.number ?? -1;
  const count = states.length;
  for (let i = 0; i < count; i++) {
    const [a, b, c] = [t[3 * i], t[3 * i + 1], t[3 * i + 2]];
    if (ends[a] + ends[b] + ends[c] < 2) continue;
    const [ab, bc, ca] = [numberOf(a, b), numberOf(b, c), numberOf(c, a)];
    if (ab < 0 && bc < 0 && ca < 0) continue;
    const [first, ...others] = cutTriangle(positions, [a, b, c], [ab, bc, ca]);
    for (let k = 0; k < 3; k++) t[3 * i + k] = first[k];
    states[i] = OPEN;
    for (const other of others) {
      t.push(...other);
      homes.push(homes[i]);
    }
  }
  const [now, known] = [new Uint8Array(homes.length).fill(OPEN), new Float64Array(homes.length)];
  now.set(states);
  known.set(middles);
  return [now, known];
}

/** A triangle with at least one of its edges cut: as many parts as cuts and one more. */
function cutTriangle(positions: readonly number[], corners: readonly number[], middles: readonly number[]): number[][] {
  const count = middles.filter((middle) => middle >= 0).length;
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
