import type { PositionCell } from './positionTree';
import { squared } from './squared';

const MOST_CORNERS = 4;
const MOST_POINTS = 3;
const patch = new Float64Array(3 * MOST_CORNERS * MOST_POINTS);
const own = new Float64Array(3);
const back = new Float64Array(3);

/**
 * What the distance of a point to a body is not below at any position of a cell [mm]. The body's frame is where one looks from: there
 * the point moves over little more than the hull of where it is at the cell's corners.
 */
export function leastOver(cell: PositionCell, x: number, y: number, z: number): number {
  const { corners, path } = cell;
  writePatch(cell, 0, x, y, z);
  return path.field.least(patch, corners.length) - cell.sagAt(x, y, z) - tornBy(cell);
}

/** The same for all points of a triangle: nine coordinates. */
export function leastOverTriangle(cell: PositionCell, t: Float64Array): number {
  const { corners, path } = cell;
  for (let k = 0; k < 3; k++) writePatch(cell, k * corners.length, t[3 * k], t[3 * k + 1], t[3 * k + 2]);
  const sag = Math.max(cell.sagAt(t[0], t[1], t[2]), cell.sagAt(t[3], t[4], t[5]), cell.sagAt(t[6], t[7], t[8]));
  return path.field.least(patch, 3 * corners.length) - sag - tornBy(cell);
}

/** The distance at one of the cell's positions [mm], with its gradient in the car's frame. */
export function distanceAt(cell: PositionCell, x: number, y: number, z: number, gradient: Float64Array): number {
  // of the corners the one that is nearest by the tangent at their middle would do; the nearest to the body's middle is as good
  const { corners, path } = cell;
  const { centre } = path.field.ball;
  let nearest = 0;
  let best = Infinity;
  if (corners.length > 1) {
    writePatch(cell, 0, x, y, z);
    const [mx, my, mz] = meanOf(corners.length);
    path.field.distance(mx, my, mz, own);
    const isFlat = own[0] === 0 && own[1] === 0 && own[2] === 0;
    for (let i = 0; i < corners.length; i++) {
      const [px, py, pz] = [patch[3 * i], patch[3 * i + 1], patch[3 * i + 2]];
      const along = isFlat
        ? squared(px - centre[0]) + squared(py - centre[1]) + squared(pz - centre[2])
        : own[0] * px + own[1] * py + own[2] * pz;
      if (along >= best) continue;
      best = along;
      nearest = i;
    }
  }
  const m = corners[nearest];
  const distance = path.field.distance(
    m[0] * x + m[1] * y + m[2] * z + m[9],
    m[3] * x + m[4] * y + m[5] * z + m[10],
    m[6] * x + m[7] * y + m[8] * z + m[11],
    back,
  );
  for (let i = 0; i < 3; i++) gradient[i] = m[i] * back[0] + m[3 + i] * back[1] + m[6 + i] * back[2];
  return distance;
}

function meanOf(count: number): readonly [number, number, number] {
  let [x, y, z] = [0, 0, 0];
  for (let i = 0; i < 3 * count; i += 3) {
    x += patch[i];
    y += patch[i + 1];
    z += patch[i + 2];
  }
  return [x / count, y / count, z / count];
}

function writePatch({ corners }: PositionCell, from: number, x: number, y: number, z: number): void {
  for (let i = 0; i < corners.length; i++) {
    const m = corners[i];
    const at = 3 * (from + i);
    patch[at] = m[0] * x + m[1] * y + m[2] * z + m[9];
    patch[at + 1] = m[3] * x + m[4] * y + m[5] * z + m[10];
    patch[at + 2] = m[6] * x + m[7] * y + m[8] * z + m[11];
  }
}

/** Where a corner cannot be reached, the others speak for the rest of the cell: by how far they are from each other. */
function tornBy(cell: PositionCell): number {
  if (!cell.isTorn) return 0;
  let most = 0;
  for (const a of cell.corners)
    for (const b of cell.corners) {
      const [p, q] = [cell.path.centreOf(a), cell.path.centreOf(b)];
      most = Math.max(most, Math.sqrt(squared(p[0] - q[0]) + squared(p[1] - q[1]) + squared(p[2] - q[2])));
    }
  return 2 * most;
}

/** What a search knows of a point. */
export interface Found {
  /** distance at the nearest position tried [mm]: the true one is no more, and less by `slack` at most */
  distance: number;
  /** gradient there, car frame */
  readonly gradient: Float64Array;
}

export const found = (): Found => ({ distance: 0, gradient: new Float64Array(3) });

const slope = new Float64Array(3);

/**
 * The distance of a point to what some cells sweep, by cutting up those that could be nearer.
 */
export class NearestSearch {
  /** cells that were as small as can be and could be nearer than was asked by more than the tolerance: by how much [mm] */
  worstSlack = 0;
  tried = 0;
  private readonly cells: PositionCell[] = [];
  private readonly leasts: number[] = [];

  /** @param tolerance - how much nearer a position between those tried may be [mm] */
  constructor(private readonly tolerance: number) {}

  /**
   * @param enough - once the distance is known to be below, no more is asked [mm]
   * @param cap - what is no less does not matter [mm]: that is then the answer
   */
  find(from: readonly PositionCell[], x: number, y: number, z: number, enough: number, cap: number, out: Found): void {
    const { cells, leasts, tolerance } = this;
    cells.length = 0;
    leasts.length = 0;
    out.distance = cap;
    for (const cell of from) this.look(cell, x, y, z, out);
    if (out.distance < enough) return;
    while (cells.length > 0) {
      const cell = cells.pop()!;
      const least = leasts.pop()!;
      if (least >= out.distance - tolerance) continue;
      if (cell.isSpeck) {
        this.worstSlack = Math.max(this.worstSlack, out.distance - least - tolerance);
        continue;
      }
      for (const part of cell.split()) this.look(part, x, y, z, out);
      if (out.distance < enough) return;
    }
  }

  /** Tries a position of a cell, and keeps the cell where another of its positions could be nearer; the nearest is on top. */
  private look(cell: PositionCell, x: number, y: number, z: number, out: Found): void {
    const least = leastOver(cell, x, y, z);
    this.tried += 1;
    if (least >= out.distance - this.tolerance) return;
    const distance = distanceAt(cell, x, y, z, slope);
    if (distance < out.distance) {
      out.distance = distance;
      out.gradient.set(slope);
    }
    const { cells, leasts } = this;
    let at = cells.length;
    cells.push(cell);
    leasts.push(least);
    while (at > 0 && leasts[at - 1] < least) {
      cells[at] = cells[at - 1];
      leasts[at] = leasts[at - 1];
      at -= 1;
    }
    cells[at] = cell;
    leasts[at] = least;
  }

  /**
   * Whether no position takes a body nearer to a triangle than `least` [mm].
   * @param t - nine coordinates
   */
  isClear(from: readonly PositionCell[], t: Float64Array, least: number): boolean {
    const open = [...from];
    const [x, y, z] = [(t[0] + t[3] + t[6]) / 3, (t[1] + t[4] + t[7]) / 3, (t[2] + t[5] + t[8]) / 3];
    for (let steps = 0; open.length > 0; steps++) {
      const cell = open.pop()!;
      this.tried += 1;
      const bound = leastOverTriangle(cell, t);
      if (bound >= least) continue;
      // a position proves that it is not; so does work without an end
      if (cell.isSpeck || steps > 400 || distanceAt(cell, x, y, z, slope) < least) return false;
      open.push(...cell.split());
    }
    return true;
  }
}
