import type { PaperPlane } from './plane';

/** A mesh whose every edge is run through once each way, triangles counter-clockwise from outside. Car frame, mm. */
export interface SectionedMesh {
  /** three coordinates a corner */
  readonly positions: Float64Array;
  /** three corners a triangle */
  readonly triangles: Uint32Array;
}

/** A closed line on the paper, what is inside the mesh on its left: counter-clockwise round the outside, clockwise round a hole. */
export interface Outline {
  /** x to the right, y up on the paper [mm]; the last joins the first */
  readonly points: readonly (readonly [number, number])[];
  readonly isHole: boolean;
  /** what is inside the line; above 0 for a hole too [mm²] */
  readonly area: number;
  /** once round [mm] */
  readonly length: number;
}

/** Where all of a mesh lies that the plane misses: the least distance, + towards the reader [mm]. */
export interface Missed {
  readonly missedBy: number;
}

/**
 * Outlines of a closed mesh by a plane.
 *
 * A corner on the plane counts as in front of it, so no triangle is cut through a corner and every line closes: the section is
 * the one that is met on the way to the plane from behind it. What lies on the plane and in front of it alone is not in it.
 *
 * @throws RangeError for a mesh that is not closed where it is cut
 */
export function sectionOf({ positions, triangles }: SectionedMesh, plane: PaperPlane): readonly Outline[] | Missed {
  const { point, normal, right, up } = plane;
  const count = positions.length / 3;
  const heights = new Float64Array(count);
  let [lowest, highest] = [Infinity, -Infinity];
  const along = (i: number, way: readonly [number, number, number]): number =>
    (positions[3 * i] - point[0]) * way[0] +
    (positions[3 * i + 1] - point[1]) * way[1] +
    (positions[3 * i + 2] - point[2]) * way[2];
  for (let i = 0; i < count; i++) {
    heights[i] = along(i, normal);
    lowest = Math.min(lowest, heights[i]);
    highest = Math.max(highest, heights[i]);
  }
  if (lowest >= 0) return { missedBy: lowest };
  if (highest < 0) return { missedBy: highest };

  // In every cut triangle one edge goes down through the plane and one comes up; its neighbour runs through the same edge the other way.
  const next = new Map<number, number>();
  const ends = new Set<number>();
  const keyOf = (a: number, b: number): number => (a < b ? a * count + b : b * count + a);
  for (let i = 0; i < triangles.length; i += 3) {
    let [down, upward] = [-1, -1];
    for (let k = 0; k < 3; k++) {
      const [a, b] = [triangles[i + k], triangles[i + ((k + 1) % 3)]];
      const [isAbove, isThen] = [heights[a] >= 0, heights[b] >= 0];
      if (isAbove && !isThen) down = keyOf(a, b);
      if (!isAbove && isThen) upward = keyOf(a, b);
    }
    if (down < 0) continue;
    if (next.has(down) || ends.has(upward)) throw notClosed();
    next.set(down, upward);
    ends.add(upward);
  }
  /** from the corner with the lower number, so that both triangles of the edge find the same place */
  const cutAt = (key: number): readonly [number, number] => {
    const [a, b] = [Math.floor(key / count), key % count];
    const share = heights[a] / (heights[a] - heights[b]);
    const between = (way: readonly [number, number, number]): number => (1 - share) * along(a, way) + share * along(b, way);
    return [between(right), between(up)];
  };
  const outlines: Outline[] = [];
  for (const start of next.keys()) {
    const points: (readonly [number, number])[] = [];
    for (let edge = start; ;) {
      points.push(cutAt(edge));
      const then = next.get(edge);
      if (then === undefined) throw notClosed();
      next.delete(edge);
      if (then === start) break;
      edge = then;
    }
    const outline = outlineOf(points);
    if (outline !== null) outlines.push(outline);
  }
  return outlines;
}

const notClosed = (): RangeError => new RangeError('sectionOf: the mesh is not closed where the plane cuts it');

/** A line without points twice in a row; null for one that encloses nothing. */
function outlineOf(all: readonly (readonly [number, number])[]): Outline | null {
  const points = all.filter(([x, y], i) => {
    const [px, py] = all[(i + all.length - 1) % all.length];
    return x !== px || y !== py;
  });
  let twice = 0;
  let length = 0;
  points.forEach(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length];
    // from the first point, or a small line far from the origin has no area left
    twice += (x - points[0][0]) * (ny - points[0][1]) - (nx - points[0][0]) * (y - points[0][1]);
    length += Math.sqrt((nx - x) * (nx - x) + (ny - y) * (ny - y));
  });
  return twice === 0 ? null : { points, isHole: twice < 0, area: 0.5 * Math.abs(twice), length };
}
