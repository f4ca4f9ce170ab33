import { BY_RACK, BY_TRAVEL, CORNERS, MIDDLE, type PositionNode } from './positions';
import { PLACEMENT_WIDTH } from '../placement';
import { squared } from './squared';

/** What is found out about a node at a point of the car. */
export interface Look {
  /** distance at the node's middle position [mm] */
  distance: number;
  /** the distance is nowhere below at any of its positions [mm] */
  least: number;
  /** gradient at the middle position, car frame */
  gx: number;
  gy: number;
  gz: number;
  /** change by half the node's travel and rack [mm]; where one knows it */
  byTravel: number;
  byRack: number;
}

export const newLook = (): Look => ({ distance: 0, least: 0, gx: 0, gy: 0, gz: 0, byTravel: 0, byRack: 0 });

const own = new Float64Array(3);
const MOST_POINTS = 12;
const patch = new Float64Array(3 * MOST_POINTS);

/**
 * The distance of a point of the car to a body at a node's middle position, and what it is not below at its others. In the body's
 * frame the point moves over little more than a parallelogram; a convex distance is nowhere below its tangent.
 */
export function lookAt(node: PositionNode, x: number, y: number, z: number, out: Look): void {
  const n = node.numbers;
  const { field } = node.path;
  const px = n[0] * x + n[1] * y + n[2] * z + n[9];
  const py = n[3] * x + n[4] * y + n[5] * z + n[10];
  const pz = n[6] * x + n[7] * y + n[8] * z + n[11];
  const distance = field.distance(px, py, pz, own);
  const gx = own[0];
  const gy = own[1];
  const gz = own[2];
  out.gx = n[0] * gx + n[3] * gy + n[6] * gz;
  out.gy = n[1] * gx + n[4] * gy + n[7] * gz;
  out.gz = n[2] * gx + n[5] * gy + n[8] * gz;
  const sag = node.sagAt(x, y, z);
  if (node.isTorn) {
    // of the last rectangle at the edge of what can be reached nothing is known but its corners
    out.least = distance - sag;
    out.distance = node.isSpeck ? out.least : distance;
    out.byTravel = out.byRack = 0;
    return;
  }
  out.distance = distance;
  const tx = n[12] * x + n[13] * y + n[14] * z + n[21];
  const ty = n[15] * x + n[16] * y + n[17] * z + n[22];
  const tz = n[18] * x + n[19] * y + n[20] * z + n[23];
  const rx = n[24] * x + n[25] * y + n[26] * z + n[33];
  const ry = n[27] * x + n[28] * y + n[29] * z + n[34];
  const rz = n[30] * x + n[31] * y + n[32] * z + n[35];
  out.byTravel = gx * tx + gy * ty + gz * tz;
  out.byRack = gx * rx + gy * ry + gz * rz;
  if (field.isConvex) {
    out.least = distance - Math.abs(out.byTravel) - Math.abs(out.byRack) - sag;
    return;
  }
  writeCorners(0, px, py, pz, tx, ty, tz, rx, ry, rz);
  out.least = field.least(patch, 4) - sag;
}

function writeCorners(
  at: number,
  px: number,
  py: number,
  pz: number,
  tx: number,
  ty: number,
  tz: number,
  rx: number,
  ry: number,
  rz: number,
): void {
  for (let k = 0; k < 4; k++) {
    const a = k < 2 ? -1 : 1;
    const b = k % 2 === 0 ? -1 : 1;
    patch[at + 3 * k] = px + a * tx + b * rx;
    patch[at + 3 * k + 1] = py + a * ty + b * ry;
    patch[at + 3 * k + 2] = pz + a * tz + b * rz;
  }
}

/** The distance at that corner of a node where it should be least [mm]; its gradient is left in `own`, in the body's frame. */
function atCorner({ numbers: n, path }: PositionNode, from: number, x: number, y: number, z: number): number {
  return path.field.distance(
    n[from] * x + n[from + 1] * y + n[from + 2] * z + n[from + 9],
    n[from + 3] * x + n[from + 4] * y + n[from + 5] * z + n[from + 10],
    n[from + 6] * x + n[from + 7] * y + n[from + 8] * z + n[from + 11],
    own,
  );
}

/** A row of one of a node's placements, times a point. */
const moved = (n: Float64Array, row: number, x: number, y: number, z: number): number => {
  const from = row - (row % PLACEMENT_WIDTH);
  return n[row] * x + n[row + 1] * y + n[row + 2] * z + n[from + 9 + (row - from) / 3];
};

/** What a search knows of a point. */
export interface Found {
  /** distance at the nearest position tried [mm]: the true one is no more, and less by the tolerance at most */
  distance: number;
  /** gradient there, car frame */
  readonly gradient: Float64Array;
}

/** Positions that matter around a place, what bears on most of it first. */
export interface Candidates {
  readonly nodes: readonly PositionNode[];
  /** where the bounds start from, car frame [mm] */
  readonly middle: readonly [number, number, number];
  /** four numbers a node: its distance at `middle + δ` is not below the first [mm] plus the other three · δ, all over the place */
  readonly bounds: Float64Array;
}

/** Nothing is known: every node has to be looked at. */
export const anywhere = (nodes: readonly PositionNode[]): Candidates => ({
  nodes,
  middle: [0, 0, 0],
  bounds: Float64Array.from({ length: 4 * nodes.length }, (_, i) => (i % 4 === 0 ? -Infinity : 0)),
});

export const found = (): Found => ({ distance: 0, gradient: new Float64Array(3) });

/** The distance of a point to what some nodes sweep, by cutting up those that could be nearer. */
export class NearestSearch {
  /** how many looks have been taken */
  looks = 0;
  private readonly nodes: PositionNode[] = [];
  private readonly leasts: number[] = [];
  private readonly look = newLook();
  /** the node that was nearest last: often it is near the next point too, and rules out most of what there is */
  private last: PositionNode | null = null;
  private readonly nowhere: Found = { distance: -Infinity, gradient: new Float64Array(3) };

  /** @param tolerance - how much nearer a position between those tried may be [mm] */
  constructor(readonly tolerance: number) {}

  /**
   * @param enough - once the distance is known to be below, no more is asked [mm]
   * @param cap - what is no less does not matter [mm]: that is then the answer
   */
  find(
    { nodes: from, middle, bounds }: Candidates,
    x: number,
    y: number,
    z: number,
    enough: number,
    cap: number,
    out: Found,
  ): void {
    const { nodes, leasts, tolerance } = this;
    nodes.length = 0;
    leasts.length = 0;
    out.distance = cap;
    if (this.last !== null) this.see(this.last, x, y, z, out);
    const dx = x - middle[0];
    const dy = y - middle[1];
    const dz = z - middle[2];
    for (let i = 0, k = 0; i < from.length; i++, k += 4) {
      const least = bounds[k] + bounds[k + 1] * dx + bounds[k + 2] * dy + bounds[k + 3] * dz;
      if (least >= out.distance - tolerance) continue;
      this.try(from[i], x, y, z, out);
      if (out.distance < enough) return;
    }
    while (nodes.length > 0) {
      if (out.distance < enough) return;
      const node = nodes.pop()!;
      const least = leasts.pop()!;
      if (least >= out.distance - tolerance) continue;
      if (node.isSpeck) {
        // nothing is left to be cut up: what could be counts as what is
        out.distance = least + tolerance;
        continue;
      }
      const parts = node.split();
      for (let i = 0; i < parts.length; i++) this.try(parts[i], x, y, z, out);
    }
  }

  /** Tries positions of a node, and keeps the node where another of its positions could be nearer; the nearest is on top. */
  private try(node: PositionNode, x: number, y: number, z: number, out: Found): void {
    const { tolerance, nodes, leasts } = this;
    const least = node.isBlank ? -Infinity : this.see(node, x, y, z, out);
    if (least >= out.distance - tolerance) return;
    let at = nodes.length;
    nodes.push(node);
    leasts.push(least);
    while (at > 0 && leasts[at - 1] < least) {
      nodes[at] = nodes[at - 1];
      leasts[at] = leasts[at - 1];
      at -= 1;
    }
    nodes[at] = node;
    leasts[at] = least;
  }

  /** Looks at positions of a node that has any. @returns what its distance is nowhere below [mm] */
  private see(node: PositionNode, x: number, y: number, z: number, out: Found): number {
    const { look, tolerance } = this;
    this.looks += 1;
    lookAt(node, x, y, z, look);
    const { least } = look;
    if (least >= out.distance - tolerance) return least;
    if (look.distance < out.distance) {
      out.distance = look.distance;
      out.gradient[0] = look.gx;
      out.gradient[1] = look.gy;
      out.gradient[2] = look.gz;
      this.last = node;
    }
    const { byTravel, byRack } = look;
    if (node.isTorn || Math.abs(byTravel) + Math.abs(byRack) <= tolerance) return least;
    const [a, b] = [byTravel > 0 ? -1 : 1, byRack > 0 ? -1 : 1];
    const from = CORNERS + PLACEMENT_WIDTH * (a + 1 + 0.5 * (b + 1));
    const distance = atCorner(node, from, x, y, z);
    if (distance < out.distance) {
      out.distance = distance;
      this.writeGradient(node, from, out);
    }
    return node.path.field.isConvex ? Math.max(least, this.within(node, a, b, x, y, z, out)) : least;
  }

  /**
   * Looks between the middle of a node and that corner where its distance should be least, at whose tangents nothing is gained or
   * lost by either step: a convex distance is nowhere below that of any point's tangent.
   * @param a - which corner that is, as `own` is the gradient there
   */
  private within(node: PositionNode, a: number, b: number, x: number, y: number, z: number, out: Found): number {
    const { look } = this;
    const n = node.numbers;
    const [tx, ty, tz] = [moved(n, 12, x, y, z), moved(n, 15, x, y, z), moved(n, 18, x, y, z)];
    const [rx, ry, rz] = [moved(n, 24, x, y, z), moved(n, 27, x, y, z), moved(n, 30, x, y, z)];
    const t = own[0] * tx + own[1] * ty + own[2] * tz;
    const r = own[0] * rx + own[1] * ry + own[2] * rz;
    const u = t * a > 0 ? (a * look.byTravel) / (look.byTravel - t) : a;
    const v = r * b > 0 ? (b * look.byRack) / (look.byRack - r) : b;
    const distance = node.path.field.distance(
      moved(n, 0, x, y, z) + u * tx + v * rx,
      moved(n, 3, x, y, z) + u * ty + v * ry,
      moved(n, 6, x, y, z) + u * tz + v * rz,
      own,
    );
    const sag = node.sagAt(x, y, z);
    if (distance + sag < out.distance) {
      out.distance = distance + sag;
      this.writeGradient(node, MIDDLE, out);
    }
    const byTravel = own[0] * tx + own[1] * ty + own[2] * tz;
    const byRack = own[0] * rx + own[1] * ry + own[2] * rz;
    return distance - Math.abs(byTravel) - u * byTravel - Math.abs(byRack) - v * byRack - sag;
  }

  /** Takes the gradient out of the body's frame as it stands at one of a node's positions. */
  private writeGradient(node: PositionNode, from: number, out: Found): void {
    const n = node.numbers;
    for (let i = 0; i < 3; i++) out.gradient[i] = n[from + i] * own[0] + n[from + 3 + i] * own[1] + n[from + 6 + i] * own[2];
    this.last = node;
  }

  /**
   * Whether no position takes a body nearer to a triangle than `least` [mm].
   * @param t - nine coordinates
   * @param most - gives up after so many looks, besides one at each of the nodes
   */
  isClear({ nodes, middle, bounds }: Candidates, t: Float64Array, least: number, most: number): boolean {
    const { look } = this;
    const [x, y, z] = [(t[0] + t[3] + t[6]) / 3, (t[1] + t[4] + t[7]) / 3, (t[2] + t[5] + t[8]) / 3];
    const open = nodes.filter((_, i) => {
      let along = Infinity;
      for (let k = 0; k < 9; k += 3)
        along = Math.min(
          along,
          bounds[4 * i + 1] * (t[k] - middle[0]) +
            bounds[4 * i + 2] * (t[k + 1] - middle[1]) +
            bounds[4 * i + 3] * (t[k + 2] - middle[2]),
        );
      return bounds[4 * i] + along < least;
    });
    for (let spare = open.length + most; open.length > 0; spare--) {
      const node = open.pop()!;
      if (!node.isBlank) {
        this.looks += 1;
        if (leastOverTriangle(node, t, x, y, z, look) >= least) continue;
        if (this.isClearWithin(node, t, x, y, z, least)) continue;
        // a position proves that it is not; so does work without an end
        if (node.isSpeck || spare <= 0 || look.distance < least) return false;
      }
      open.push(...node.split());
    }
    return true;
  }

  /** The same by the tangent of a point between a node's middle and its nearest corner, right after a look at it. */
  private isClearWithin(node: PositionNode, t: Float64Array, x: number, y: number, z: number, least: number): boolean {
    const { look, nowhere } = this;
    const { byTravel, byRack } = look;
    if (node.isTorn || !node.path.field.isConvex || byTravel === 0) return false;
    const [a, b] = [byTravel > 0 ? -1 : 1, byRack > 0 ? -1 : 1];
    atCorner(node, CORNERS + PLACEMENT_WIDTH * (a + 1 + 0.5 * (b + 1)), x, y, z);
    const here = this.within(node, a, b, x, y, z, nowhere);
    const n = node.numbers;
    const [gx, gy, gz] = [0, 1, 2].map((i) => n[i] * own[0] + n[3 + i] * own[1] + n[6 + i] * own[2]);
    return here + overTriangle(node, t, x, y, z, gx, gy, gz) >= least;
  }
}

/** What the distance is not below from any point of a triangle at any of a node's positions [mm]. */
function leastOverTriangle(node: PositionNode, t: Float64Array, x: number, y: number, z: number, look: Look): number {
  lookAt(node, x, y, z, look);
  if (node.path.field.isConvex) return look.least + overTriangle(node, t, x, y, z, look.gx, look.gy, look.gz);
  const reach = reachOf(t, x, y, z);
  const n = node.numbers;
  for (let k = 0; k < 3; k++) {
    const [a, b, c] = [t[3 * k], t[3 * k + 1], t[3 * k + 2]];
    const to = (from: number, row: number): number =>
      n[from + 3 * row] * a + n[from + 3 * row + 1] * b + n[from + 3 * row + 2] * c + n[from + 9 + row];
    const [p, v, w] = [0, BY_TRAVEL, BY_RACK].map((from) => [to(from, 0), to(from, 1), to(from, 2)]);
    writeCorners(12 * k, p[0], p[1], p[2], v[0], v[1], v[2], w[0], w[1], w[2]);
  }
  return node.path.field.least(patch, MOST_POINTS) - node.sagAt(x, y, z) - node.sagPerMm * reach;
}

/** How far the corners of a triangle are from a point, at most [mm]. */
function reachOf(t: Float64Array, x: number, y: number, z: number): number {
  let most = 0;
  for (let k = 0; k < 9; k += 3) most = Math.max(most, squared(t[k] - x) + squared(t[k + 1] - y) + squared(t[k + 2] - z));
  return Math.sqrt(most);
}

/** What a tangent at a point of a triangle falls by over it, with what a node's steps change by [mm]; 0 or less. */
function overTriangle(
  node: PositionNode,
  t: Float64Array,
  x: number,
  y: number,
  z: number,
  gx: number,
  gy: number,
  gz: number,
): number {
  let along = Infinity;
  for (let k = 0; k < 9; k += 3) along = Math.min(along, gx * (t[k] - x) + gy * (t[k + 1] - y) + gz * (t[k + 2] - z));
  return along - (node.turn + node.sagPerMm) * reachOf(t, x, y, z);
}
