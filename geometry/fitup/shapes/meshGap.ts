import { length, type Vector } from '../../core/vector';
import { boxCore, CORE_WIDTH, placeCore, triangleCore, type Core } from '../distance/core';
import { nearest, solveNearest } from '../distance/gjk';
import { inverse, placed, type Placement } from '../placement';
import { beyond, centreOf, NO_GAP, surfacePoints, type Gap } from './gap';
import type { Triangles } from './mesh';
import type { Ball, MeshSolid, RoundSolid } from './solid';

const found = nearest();
/** the triangle that is looked at */
const one = triangleCore([0, 0, 0], [0, 0, 0], [0, 0, 0]);
const around = boxCore(
  [0, 0, 0],
  [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
);

function writeBox(min: Vector, max: Vector, out: Core): void {
  for (let i = 0; i < 3; i++) {
    out[1 + i] = 0.5 * (min[i] + max[i]);
    out[4 + 4 * i] = 0.5 * (max[i] - min[i]);
  }
}

/** A lower bound of the distance from some cores to what is in a box, for a search that begins with what can be nearest. */
function boundOf(cores: readonly Core[], rounds: readonly number[], ball: Ball) {
  return (min: Vector, max: Vector): number => {
    const byBall = boxDistance(ball.centre, min, max) - ball.radius;
    if (byBall > 0) return byBall;
    // a long part fills little of its ball
    writeBox(min, max, around);
    let nearestCore = Infinity;
    for (let i = 0; i < cores.length; i++) {
      solveNearest(around, cores[i], found, nearestCore + rounds[i]);
      nearestCore = Math.min(nearestCore, found.distance - found.bound - rounds[i]);
    }
    return nearestCore;
  };
}

/** A mesh and a round solid, as the mesh sees it. */
export function meshGap(a: MeshSolid, b: RoundSolid, relative: Placement, cutoff: number): Gap {
  const cores = b.cores.map((shape) => {
    const out = new Float64Array(CORE_WIDTH);
    placeCore(relative, shape, out);
    return out;
  });
  const ball = { centre: placed(relative, b.ball.centre), radius: b.ball.radius };
  const { triangles, search, isClosed } = a.mesh;
  let known = cutoff;
  const measure = (from: Triangles, at: number): number => {
    writeTriangle(from, at, one);
    for (let i = 0; i < cores.length; i++) {
      solveNearest(one, cores[i], found, known + b.rounds[i]);
      known = Math.min(known, found.distance - b.rounds[i]);
    }
    return known;
  };
  const at = search.nearest(boundOf(cores, b.rounds, ball), measure, cutoff);
  if (at < 0) return isClosed && search.holds(centreOf(cores[0])) ? cutAt(centreOf(cores[0])) : beyond(cutoff);
  const triangle = triangleAt(triangles, at);
  let gap = NO_GAP;
  for (let i = 0; i < cores.length; i++) {
    solveNearest(triangle, cores[i], found);
    const distance = found.distance - b.rounds[i];
    if (distance >= gap.distance) continue;
    // where cores meet they have no nearest points
    if (distance <= 0) return cutAt(found.distance === 0 ? centreOf(triangle) : pointOf(found.points, 0));
    gap = { ...NO_GAP, distance, points: surfacePoints(found.points, found.distance, 0, b.rounds[i]) };
  }
  if (isClosed && search.holds(centreOf(cores[0]))) return { ...gap, distance: 0, isCutOnly: true };
  return gap;
}

const cutAt = (at: Vector): Gap => ({ ...NO_GAP, distance: 0, isCutOnly: true, points: [at, at] });

/**
 * What no distance between a mesh and anything within some cores is below [mm]: 0 where the mesh holds them.
 * @param enough - once it is known to be this at least, no more is asked [mm]
 */
export function meshLeast(
  { mesh: { search, isClosed } }: MeshSolid,
  cores: readonly Core[],
  rounds: readonly number[],
  enough: number,
): number {
  let known = enough;
  const measure = (from: Triangles, at: number): number => {
    writeTriangle(from, at, one);
    for (let i = 0; i < cores.length; i++) {
      solveNearest(one, cores[i], found, known + rounds[i]);
      known = Math.min(known, found.distance - found.bound - rounds[i]);
    }
    return known;
  };
  search.nearest(boundOf(cores, rounds, NO_BALL), measure, enough);
  return known > 0 && isClosed && search.holds(centreOf(cores[0])) ? 0 : known;
}

/** Says nothing of where the cores are. */
const NO_BALL: Ball = { centre: [0, 0, 0], radius: Infinity };

export function meshesGap(a: MeshSolid, b: MeshSolid, relative: Placement): Gap {
  const back = inverse(relative);
  const other = b.mesh;
  // The second's triangles are searched by each of the first's: as round solids of one flat core.
  let bestOther = -1;
  let known = Infinity;
  const ball = placed(relative, b.ball.centre);
  const measure = (from: Triangles, at: number): number => {
    const triangle = triangleAt(from, at);
    const inOther = new Float64Array(CORE_WIDTH);
    placeCore(back, triangle, inOther);
    const centre = centreOf(inOther);
    const reach = cornerReach(triangle);
    const near = other.search.nearest(
      (min, max) => boxDistance(centre, min, max) - reach,
      (triangles, start) => {
        solveNearest(inOther, triangleAt(triangles, start), found);
        return found.distance;
      },
      known,
    );
    if (near < 0) return Infinity;
    solveNearest(inOther, triangleAt(other.triangles, near), found);
    if (found.distance < known) {
      known = found.distance;
      bestOther = near;
    }
    return found.distance;
  };
  const at = a.mesh.search.nearest((min, max) => boxDistance(ball, min, max) - b.ball.radius, measure, Infinity);
  if (at < 0 || bestOther < 0) return NO_GAP;
  const triangle = new Float64Array(CORE_WIDTH);
  placeCore(relative, triangleAt(other.triangles, bestOther), triangle);
  solveNearest(triangleAt(a.mesh.triangles, at), triangle, found);
  const points = [pointOf(found.points, 0), pointOf(found.points, 3)] as const;
  const { distance } = found;
  const isInside =
    (a.mesh.isClosed && a.mesh.search.holds(centreOf(triangle))) ||
    (other.isClosed && other.search.holds(placed(back, centreOf(triangleAt(a.mesh.triangles, at)))));
  return distance === 0 || isInside ? { ...NO_GAP, distance: 0, isCutOnly: true, points } : { ...NO_GAP, distance, points };
}

const pointOf = (points: Float64Array, at: number): Vector => [points[at], points[at + 1], points[at + 2]];

const cornerReach = (triangle: Core): number =>
  Math.max(
    length([triangle[4], triangle[5], triangle[6]]),
    length([triangle[7], triangle[8], triangle[9]]),
    length([triangle[10], triangle[11], triangle[12]]),
  );

const triangleAt = (t: Triangles, at: number): Core =>
  triangleCore([t[at], t[at + 1], t[at + 2]], [t[at + 3], t[at + 4], t[at + 5]], [t[at + 6], t[at + 7], t[at + 8]]);

/** Writes a triangle as a core, without making one. */
function writeTriangle(t: Triangles, at: number, out: Core): void {
  for (let i = 0; i < 3; i++) {
    const centre = (t[at + i] + t[at + 3 + i] + t[at + 6 + i]) / 3;
    out[1 + i] = centre;
    for (let corner = 0; corner < 3; corner++) out[4 + 3 * corner + i] = t[at + 3 * corner + i] - centre;
  }
}

function boxDistance(p: Vector, min: Vector, max: Vector): number {
  let square = 0;
  for (let i = 0; i < 3; i++) {
    const out = Math.max(min[i] - p[i], 0, p[i] - max[i]);
    square += out * out;
  }
  return Math.sqrt(square);
}
