import { distanceAt, leastOver } from './nearestOf';
import type { Level } from './level';
import type { PositionCell } from './positionTree';

/** A cube through which the surface may go, with the positions that matter to it. */
export interface ActiveCube {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly cells: readonly PositionCell[];
}

/** Where the cubes are: cube (x, y, z) has its lowest corner at origin + edge · (x, y, z) [mm]. */
export interface Lattice {
  readonly origin: readonly [number, number, number];
  readonly edge: number;
  /** cubes along each edge of the whole, a power of two */
  readonly count: number;
}

/** A lattice around all that is swept. */
export function latticeAround(cells: readonly PositionCell[], level: Level, edge: number): Lattice {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (const { path, corners } of cells) {
    const reach = path.field.ball.radius + level.at + level.play;
    for (const corner of corners) {
      path.centreOf(corner).forEach((value, i) => {
        min[i] = Math.min(min[i], value - reach);
        max[i] = Math.max(max[i], value + reach);
      });
    }
  }
  // what lies between the corners of a cell is not far outside of them
  const pad = 3 * edge + 0.05 * Math.max(...max.map((value, i) => value - min[i]));
  const size = Math.max(...max.map((value, i) => value - min[i])) + 2 * pad;
  let count = 4;
  while (count * edge < size) count *= 2;
  return { origin: [min[0] - pad, min[1] - pad, min[2] - pad], edge, count };
}

const SHARE_OF_SIZE = 0.5;
const slope = new Float64Array(3);

/**
 * The cubes through which the surface may go: the whole is cut up, and what is all inside or all outside is left. Positions that
 * matter to a cube are handed down to its eighths, and cut up themselves as the cubes get smaller.
 * @param smallest - in edges of the lattice, a power of two
 * @param most - gives up after so many
 * @returns null where there are more
 */
export function activeCubes(
  lattice: Lattice,
  level: Level,
  roots: readonly PositionCell[],
  smallest: number,
  most: number,
): ActiveCube[] | null {
  const { origin, edge, count } = lattice;
  const made: ActiveCube[] = [];
  const visit = (x: number, y: number, z: number, size: number, from: readonly PositionCell[]): boolean => {
    const half = 0.5 * size * edge;
    const [cx, cy, cz] = [origin[0] + x * edge + half, origin[1] + y * edge + half, origin[2] + z * edge + half];
    const radius = Math.sqrt(3) * half;
    // the middles of the neighbours are asked for here too, and corners of triangles that were pushed out a little
    const wide = radius + 0.7 * edge;
    const kept: PositionCell[] = [];
    const leasts: number[] = [];
    let best = Infinity;
    let nearest = Infinity;
    const look = (cell: PositionCell): void => {
      const least = leastOver(cell, cx, cy, cz);
      if (least - wide > level.at + edge || least - wide > best + wide) return;
      const distance = distanceAt(cell, cx, cy, cz, slope);
      if (distance < best) best = distance;
      if (!cell.isSpeck && distance - least > SHARE_OF_SIZE * radius) {
        for (const part of cell.split()) look(part);
        return;
      }
      if (least < nearest) nearest = least;
      kept.push(cell);
      leasts.push(least);
    };
    for (const cell of from) look(cell);
    if (kept.length === 0 || nearest - radius > level.at + level.play || best + radius < level.at) return true;
    const cells = kept.filter((_, i) => leasts[i] - wide <= best + wide);
    if (size === smallest) {
      made.push({ x, y, z, cells });
      return made.length <= most;
    }
    const step = size / 2;
    for (const dx of [0, step])
      for (const dy of [0, step]) for (const dz of [0, step]) if (!visit(x + dx, y + dy, z + dz, step, cells)) return false;
    return true;
  };
  return visit(0, 0, 0, count, roots) ? made : null;
}
