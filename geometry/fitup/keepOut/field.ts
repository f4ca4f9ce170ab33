import { coreReach, BOX, CYLINDER, POINT, SEGMENT } from '../distance/core';
import type { Ball, MeshSolid, RoundSolid, Solid } from '../shapes/solid';
import { coreDistance, triangleDistance } from './convexField';
import { spunField } from './spunField';
import { squared } from './squared';

/** Direction in which a distance grows, a unit vector; 0 where there is none. */
export type Gradient = Float64Array;

/** The distance to one solid, in the solid's own frame at design [mm]. */
export interface Field {
  /** Distance of a point, 0 or less inside [mm]; writes its gradient. Changes by no more than the point moves. */
  distance(x: number, y: number, z: number, gradient: Gradient): number;
  /**
   * What the distance of no point between some points is below [mm].
   * @param patch - three numbers a point, from 0
   */
  least(patch: Float64Array, count: number): number;
  /** the solid is convex: its distance is nowhere below its tangent */
  readonly isConvex: boolean;
  /** holds the solid */
  readonly ball: Ball;
  /** the solid is what a ball of this radius covers when its centre goes over a smaller one [mm] */
  readonly round: number;
  /** a ball of this radius lies within the solid [mm] */
  readonly within: number;
}

/**
 * A tyre is filled, which whoever asks is told: how the inside of a rim is closed, by spokes or a disc, no file says.
 * @param fine - how far what has to be cut up for its ring may reach out [mm]
 */
export function fieldOfSolid(solid: Solid, fine: number): Field {
  if (solid.kind === 'round' && solid.cover !== null) return convexField(solid.cover.solid);
  if (solid.spin !== null) return spunField(solid, solid.spin, fine);
  return solid.kind === 'round' ? convexField(solid) : meshField(solid);
}

const gradient = new Float64Array(3);
const mean = new Float64Array(3);

export function writeMean(patch: Float64Array, count: number, out: Float64Array): void {
  out.fill(0);
  for (let i = 0; i < count; i++) for (let k = 0; k < 3; k++) out[k] += patch[3 * i + k] / count;
}

/** The least of a linear function over some points: gradient · (point − from). */
export function leastAlong(slope: Gradient, from: Float64Array, patch: Float64Array, count: number): number {
  let least = Infinity;
  for (let i = 0; i < 3 * count; i += 3) {
    const along = slope[0] * (patch[i] - from[0]) + slope[1] * (patch[i + 1] - from[1]) + slope[2] * (patch[i + 2] - from[2]);
    if (along < least) least = along;
  }
  return least;
}

/** The distance to a convex body is convex: it lies above its tangent plane, which is linear. */
function convexField({ cores, rounds, ball }: RoundSolid): Field {
  const distances = cores.map(coreDistance);
  const here = new Float64Array(3);
  const one = distances.length === 1 ? distances[0] : null;
  const round = rounds[0];
  return {
    ball,
    isConvex: one !== null,
    round: Math.min(...rounds),
    within: Math.max(...cores.map((core, i) => rounds[i] + withinCore(core))),
    distance:
      one !== null
        ? (x, y, z, out) => one(x, y, z, out) - round
        : (x, y, z, out) => {
            let best = Infinity;
            for (let i = 0; i < distances.length; i++) {
              const distance = distances[i](x, y, z, here) - rounds[i];
              if (distance >= best) continue;
              best = distance;
              out.set(here);
            }
            return best;
          },
    least: (patch, count) => {
      writeMean(patch, count, mean);
      let best = Infinity;
      for (let i = 0; i < distances.length; i++) {
        const distance = distances[i](mean[0], mean[1], mean[2], gradient) - rounds[i];
        const least = distance + leastAlong(gradient, mean, patch, count);
        if (least < best) best = least;
      }
      return best;
    },
  };
}

/** Radius of a ball that lies in a core [mm]. */
export function withinCore(core: Float64Array): number {
  const size = (from: number): number => Math.sqrt(squared(core[from]) + squared(core[from + 1]) + squared(core[from + 2]));
  switch (core[0]) {
    case POINT:
    case SEGMENT:
      return 0;
    case BOX:
      return Math.min(size(4), size(7), size(10));
    case CYLINDER:
      return Math.min(size(4), size(7));
    default:
      return 0 * coreReach(core);
  }
}

/** A mesh is a union of triangles, each convex; where it is closed what is inside of it belongs to it. */
function meshField({ mesh, ball }: MeshSolid): Field {
  const { triangles, isClosed } = mesh;
  const here = new Float64Array(3);
  const boxDistance = (x: number, y: number, z: number, min: readonly number[], max: readonly number[]): number => {
    const past = (value: number, i: number): number => Math.max(0, min[i] - value, value - max[i]);
    return Math.sqrt(squared(past(x, 0)) + squared(past(y, 1)) + squared(past(z, 2)));
  };
  const isInside = (x: number, y: number, z: number): boolean => {
    const off = Math.sqrt(squared(x - ball.centre[0]) + squared(y - ball.centre[1]) + squared(z - ball.centre[2]));
    return isClosed && off <= ball.radius && mesh.search.holds([x, y, z]);
  };
  return {
    ball,
    isConvex: false,
    round: 0,
    within: 0,
    distance: (x, y, z, out) => {
      out.fill(0);
      if (isInside(x, y, z)) return 0;
      let best = Infinity;
      mesh.search.nearest(
        (min, max) => boxDistance(x, y, z, min, max),
        (from, at) => {
          const distance = triangleDistance(from, at, x, y, z, here);
          if (distance >= best) return distance;
          best = distance;
          out.set(here);
          return distance;
        },
        Infinity,
      );
      return best;
    },
    least: (patch, count) => {
      writeMean(patch, count, mean);
      const [x, y, z] = mean;
      let reach = 0;
      for (let i = 0; i < 3 * count; i += 3)
        reach = Math.max(reach, Math.sqrt(squared(patch[i] - x) + squared(patch[i + 1] - y) + squared(patch[i + 2] - z)));
      let best = Infinity;
      mesh.search.nearest(
        (min, max) => boxDistance(x, y, z, min, max) - reach,
        (_from, at) => {
          const distance = triangleDistance(triangles, at, x, y, z, here);
          const least = distance + leastAlong(here, mean, patch, count);
          if (least < best) best = least;
          return least;
        },
        Infinity,
      );
      // no triangle is among the points: they are all inside, or all outside
      return best > 0 && isInside(x, y, z) ? 0 : best;
    },
  };
}
