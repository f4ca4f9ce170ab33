import type { ActiveCube, Lattice } from './lattice';
import type { Level } from './level';
import { found, type Candidates, type NearestSearch } from './search';
import { squared } from './squared';

/** A mesh that grows. */
export interface GrowingMesh {
  /** three coordinates a corner [mm] */
  readonly positions: number[];
  /** three corners a triangle, counter-clockwise from outside */
  readonly triangles: number[];
  /** the cube of the lattice that each comes from */
  readonly homes: ActiveCube[];
  /** how far each corner is from what is swept [mm]; as far as the search's tolerance goes */
  readonly distances: number[];
}

// Of a tetrahedron whose corners turn right-handed: the even orders that begin with each corner, and with each pair of them.
const FROM_ONE = [
  [0, 1, 2, 3],
  [1, 0, 3, 2],
  [2, 0, 1, 3],
  [3, 0, 2, 1],
] as const;
const FROM_TWO: Readonly<Record<number, readonly [number, number, number, number]>> = {
  3: [0, 1, 2, 3],
  5: [0, 2, 3, 1],
  9: [0, 3, 1, 2],
  6: [1, 2, 0, 3],
  10: [1, 3, 2, 0],
  12: [2, 3, 0, 1],
};

/** Corners of a cube's face towards the next one along each axis, turning about it right-handed. */
const FACES = [
  [
    [2, 0, 0],
    [2, 2, 0],
    [2, 2, 2],
    [2, 0, 2],
  ],
  [
    [0, 2, 0],
    [0, 2, 2],
    [2, 2, 2],
    [2, 2, 0],
  ],
  [
    [0, 0, 2],
    [2, 0, 2],
    [2, 2, 2],
    [0, 2, 2],
  ],
] as const;

/** No corner is nearer to a point of the lattice than this share of the edge: triangles keep an area in single precision. */
const OFF_THE_ENDS = 0.001;
const MOST_STEPS = 60;

/**
 * The surface at the level, by tetrahedra: two neighbouring middles of cubes and an edge of the face between them. Closed, since
 * every tetrahedron's face is cut alike from both sides. Corners are put where the distance is that of the level.
 * @see A. Doi, A. Koide, "An efficient method of triangulating equi-valued surfaces by using tetrahedral cells", IEICE Trans. E74
 * (1991) 214–224; from memory
 * @yields the share that is done
 */
export function* buildSurface(
  lattice: Lattice,
  level: Level,
  cubes: readonly ActiveCube[],
  search: NearestSearch,
): Generator<number, GrowingMesh> {
  const { origin, edge, count } = lattice;
  const width = 2 * count + 5;
  const keyOf = (x: number, y: number, z: number): number => ((x + 2) * width + (y + 2)) * width + (z + 2);
  const active = new Set(cubes.map(({ x, y, z }) => keyOf(2 * x, 2 * y, 2 * z)));
  const numbers = new Map<number, number>();
  const places: number[] = [];
  const values: number[] = [];
  const answer = found();
  const cap = level.at + edge;
  /** a point of the lattice by its half edges: even ones are corners, odd ones middles */
  const pointAt = (x: number, y: number, z: number, from: Candidates): number => {
    const key = keyOf(x, y, z);
    const known = numbers.get(key);
    if (known !== undefined) return known;
    const at = [origin[0] + 0.5 * edge * x, origin[1] + 0.5 * edge * y, origin[2] + 0.5 * edge * z] as const;
    search.find(from, at[0], at[1], at[2], level.at - edge, cap, answer);
    places.push(...at);
    values.push(answer.distance);
    numbers.set(key, values.length - 1);
    return values.length - 1;
  };
  // a corner just off an end that is outside is no nearer than the level either
  const brink = level.at + OFF_THE_ENDS * edge;
  const isInside = (point: number): boolean => values[point] < brink;
  const mesh: GrowingMesh = { positions: [], triangles: [], homes: [], distances: [] };
  const cuts = new Map<number, number>();
  const cutAt = (inside: number, outside: number, from: Candidates): number => {
    const key = inside * EDGE_KEY + outside;
    const known = cuts.get(key);
    if (known !== undefined) return known;
    const [share, distance] = shareAt(inside, outside, from);
    const number = mesh.positions.length / 3;
    for (let i = 0; i < 3; i++)
      mesh.positions.push(places[3 * inside + i] + share * (places[3 * outside + i] - places[3 * inside + i]));
    mesh.distances.push(distance);
    cuts.set(key, number);
    return number;
  };
  /** Where on the way from inside to outside the distance is that of the level, or a little more; and the distance there. */
  const shareAt = (inside: number, outside: number, from: Candidates): readonly [number, number] => {
    const [x, y, z] = [places[3 * inside], places[3 * inside + 1], places[3 * inside + 2]];
    const [u, v, w] = [places[3 * outside] - x, places[3 * outside + 1] - y, places[3 * outside + 2] - z];
    const distanceAt = (share: number): number => {
      search.find(from, x + share * u, y + share * v, z + share * w, level.at - edge, cap, answer);
      return answer.distance;
    };
    let low = OFF_THE_ENDS;
    let high = 1 - OFF_THE_ENDS;
    let [lowValue, highValue] = [values[inside], values[outside]];
    const goal = level.at + 0.5 * level.play;
    if (highValue <= level.at + level.play) return [high, distanceAt(high)];
    for (let step = 0; step < MOST_STEPS; step++) {
      const straight = low + ((high - low) * (goal - lowValue)) / (highValue - lowValue);
      const share = step % 3 === 2 || !(straight > low && straight < high) ? 0.5 * (low + high) : straight;
      const value = distanceAt(share);
      if (value >= level.at && value <= level.at + level.play) return [share, value];
      if (value < level.at) [low, lowValue] = [share, value];
      else [high, highValue] = [share, value];
    }
    return [high, distanceAt(high)];
  };
  const triangle = (a: number, b: number, c: number, cube: ActiveCube): void => {
    mesh.triangles.push(a, b, c);
    mesh.homes.push(cube);
  };
  const cutUp = (corners: readonly [number, number, number, number], cube: ActiveCube): void => {
    let mask = 0;
    corners.forEach((corner, i) => (mask |= isInside(corner) ? 1 << i : 0));
    if (mask === 0 || mask === 15) return;
    const cut = (inside: number, outside: number): number => cutAt(corners[inside], corners[outside], cube);
    const pair = FROM_TWO[mask];
    if (pair !== undefined) {
      const [i, j, k, l] = pair;
      const quad = [cut(i, k), cut(i, l), cut(j, l), cut(j, k)] as const;
      const apart = (a: number, b: number): number =>
        [0, 1, 2].reduce((sum, n) => sum + squared(mesh.positions[3 * a + n] - mesh.positions[3 * b + n]), 0);
      if (apart(quad[0], quad[2]) <= apart(quad[1], quad[3])) {
        triangle(quad[0], quad[1], quad[2], cube);
        triangle(quad[0], quad[2], quad[3], cube);
      } else {
        triangle(quad[0], quad[1], quad[3], cube);
        triangle(quad[1], quad[2], quad[3], cube);
      }
      return;
    }
    const single = [1, 2, 4, 8].indexOf(mask);
    if (single >= 0) {
      const [i, a, b, c] = FROM_ONE[single];
      triangle(cut(i, a), cut(i, b), cut(i, c), cube);
      return;
    }
    const [i, a, b, c] = FROM_ONE[[14, 13, 11, 7].indexOf(mask)];
    triangle(cut(a, i), cut(c, i), cut(b, i), cube);
  };
  for (const [index, cube] of cubes.entries()) {
    if (index % 200 === 199) yield index / cubes.length;
    const { x, y, z } = cube;
    for (let axis = 0; axis < 3; axis++) {
      for (const sense of [0, -1]) {
        // a face towards a lower neighbour is the neighbour's own, unless nobody looks at that
        const [bx, by, bz] = [0, 1, 2].map((i) => 2 * [x, y, z][i] + (i === axis ? 2 * sense : 0));
        if (sense === -1 && active.has(keyOf(bx, by, bz))) continue;
        const first = pointAt(bx + 1, by + 1, bz + 1, cube);
        const second = pointAt(bx + 1 + (axis === 0 ? 2 : 0), by + 1 + (axis === 1 ? 2 : 0), bz + 1 + (axis === 2 ? 2 : 0), cube);
        const face = FACES[axis].map(([dx, dy, dz]) => pointAt(bx + dx, by + dy, bz + dz, cube));
        for (let k = 0; k < 4; k++) cutUp([first, second, face[k], face[(k + 1) % 4]], cube);
      }
    }
  }
  return mesh;
}

const EDGE_KEY = 1 << 26;
