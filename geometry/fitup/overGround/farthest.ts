import { add, dot, length, reject, scale, subtract, type Vector } from '../../core/vector';
import { BOX, CYLINDER, SEGMENT, TRIANGLE, writeSupport, type Core } from '../distance/core';
import type { Solid, Spin } from '../shapes/solid';

/**
 * The point of a solid that lies farthest along a direction, both at design.
 * @param direction - unit vector
 */
export function farthestPoint(solid: Solid, direction: Vector): Vector {
  const reach: Reach = solid.spin === null ? still : turning(solid.spin, direction);
  let most = -Infinity;
  let farthest: Vector = solid.ball.centre;
  const look = (point: Vector, round: number): void => {
    const swung = reach(point);
    const along = dot(swung, direction) + round;
    if (along <= most) return;
    most = along;
    farthest = add(swung, scale(direction, round));
  };
  if (solid.kind === 'mesh') {
    const { triangles } = solid.mesh;
    for (let i = 0; i < triangles.length; i += 3) look([triangles[i], triangles[i + 1], triangles[i + 2]], 0);
    return farthest;
  }
  solid.cores.forEach((core, index) => {
    // a ball around a point stays a ball when the point turns
    const points = solid.spin === null ? [supportOf(core, direction)] : cornersOf(core, solid.spin, direction);
    for (const point of points) look(point, solid.rounds[index]);
  });
  return farthest;
}

/** Where a point can get to, farthest along the direction. */
type Reach = (point: Vector) => Vector;

const still: Reach = (point) => point;

/** Turned about the axis until what is square to it points along the direction. */
function turning({ at, axis }: Spin, direction: Vector): Reach {
  const across = reject(direction, axis);
  const size = length(across);
  const way = size > 0 ? scale(across, 1 / size) : null;
  return (point) => {
    if (way === null) return point;
    const off = subtract(point, at);
    const along = dot(off, axis);
    return add(at, add(scale(axis, along), scale(way, length(subtract(off, scale(axis, along))))));
  };
}

function supportOf(core: Core, [x, y, z]: Vector): Vector {
  const out = new Float64Array(3);
  writeSupport(core, x, y, z, out, 0);
  return [out[0], out[1], out[2]];
}

/**
 * The points of a core among which the farthest is when it turns: how far a point gets is a convex function of where it is, so
 * that it is greatest at a corner; of a cylinder somewhere on the edge of one of its ends.
 */
function cornersOf(core: Core, spin: Spin, direction: Vector): Vector[] {
  const centre: Vector = [core[1], core[2], core[3]];
  const vector = (from: number): Vector => [core[from], core[from + 1], core[from + 2]];
  switch (core[0]) {
    case SEGMENT:
      return [add(centre, vector(4)), subtract(centre, vector(4))];
    case TRIANGLE:
      return [4, 7, 10].map((from) => add(centre, vector(from)));
    case BOX:
      return SIGNS.map(([a, b, c]) => add(centre, add(scale(vector(4), a), add(scale(vector(7), b), scale(vector(10), c)))));
    case CYLINDER:
      return [1, -1].map((end) =>
        farthestOnCircle(add(centre, scale(vector(4), end)), vector(7), vector(10), turning(spin, direction), direction),
      );
    default:
      return [centre];
  }
}

const SIGNS = [1, -1].flatMap((a) => [1, -1].flatMap((b) => [1, -1].map((c) => [a, b, c] as const)));

/** Places on a circle that are looked at first, and how often the stretch around the best is then cut. */
const PLACES = 96;
const CUTS = 40;

/** The function has two tops at most, far apart: the best of the places is next to the highest. */
function farthestOnCircle(centre: Vector, a: Vector, b: Vector, reach: Reach, direction: Vector): Vector {
  const pointAt = (angle: number): Vector => add(centre, add(scale(a, Math.cos(angle)), scale(b, Math.sin(angle))));
  const height = (angle: number): number => dot(reach(pointAt(angle)), direction);
  const spacing = (2 * Math.PI) / PLACES;
  let best = 0;
  for (let i = 1; i < PLACES; i++) if (height(i * spacing) > height(best * spacing)) best = i;
  let [from, to] = [(best - 1) * spacing, (best + 1) * spacing];
  for (let i = 0; i < CUTS; i++) {
    const third = (to - from) / 3;
    if (height(from + third) < height(to - third)) from += third;
    else to -= third;
  }
  return pointAt(0.5 * (from + to));
}
