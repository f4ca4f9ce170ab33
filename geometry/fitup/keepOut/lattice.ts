import type { Level } from './level';
import type { PositionNode } from './positions';
import { lookAt, newLook, type Candidates } from './search';

/** A cube through which the surface may go, with the positions that matter to it and around it. */
export interface ActiveCube extends Candidates {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Where the cubes are: cube (x, y, z) has its lowest corner at origin + edge · (x, y, z) [mm]. */
export interface Lattice {
  readonly origin: readonly [number, number, number];
  readonly edge: number;
  /** cubes along each edge of the whole, a power of two */
  readonly count: number;
}

/** A ball of this many edges' radius holds any tetrahedron of the lattice. */
export const RADIUS_PER_EDGE = Math.sqrt(5) / 4;

/** A lattice around all that is swept. */
export function latticeAround(nodes: readonly PositionNode[], level: Level, edge: number): Lattice {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  for (const node of nodes) {
    const { centre, radius } = node.path.field.ball;
    const reach = radius + level.at + level.play;
    for (const middle of node.path.middles(centre)) {
      middle.forEach((value, i) => {
        min[i] = Math.min(min[i], value - reach);
        max[i] = Math.max(max[i], value + reach);
      });
    }
  }
  // what lies between the positions that were looked at is not far outside of them
  const pad = 3 * edge + 0.05 * Math.max(...max.map((value, i) => value - min[i]));
  const size = Math.max(...max.map((value, i) => value - min[i])) + 2 * pad;
  let count = 4;
  while (count * edge < size) count *= 2;
  return { origin: [min[0] - pad, min[1] - pad, min[2] - pad], edge, count };
}

/** A node is cut up for a cube where what it could be nearer by is more than this share of the cube's radius. */
const SHARE = 0.35;
/** How far off its cube a corner may be pushed, in edges. */
const PUSHED = 0.15;

/**
 * The region that a cube's nodes are good for: the cube and the pyramids over its faces as far as its neighbours' middles, which
 * together are a rhombic dodecahedron, and a little more. @returns whether a point is in it
 */
export function isAbout({ origin, edge }: Lattice, { x, y, z }: ActiveCube, px: number, py: number, pz: number): boolean {
  const u = Math.abs((px - origin[0]) / edge - x - 0.5);
  const v = Math.abs((py - origin[1]) / edge - y - 0.5);
  const w = Math.abs((pz - origin[2]) / edge - z - 0.5);
  return Math.max(u + v, v + w, w + u) <= 1 + PUSHED;
}

/** Greatest of v · p over the region around its middle, and the farthest that any of it is, for an edge of 1. */
const dodecahedron = (x: number, y: number, z: number): number => {
  const [a, b, c] = [Math.abs(x), Math.abs(y), Math.abs(z)];
  return (1 + PUSHED) * Math.max(0.5 * (a + b + c), a, b, c);
};
const FARTHEST = 1 + PUSHED;

/** Nodes that are looked at for a cube, side by side. */
interface Kept {
  readonly node: PositionNode;
  /** not below this in the middle of the cube, as far as it bears on the whole of it [mm] */
  readonly least: number;
  readonly g: readonly [number, number, number];
}

const look = newLook();

function inOrder(kept: Kept[]): Pick<Candidates, 'nodes' | 'bounds'> {
  kept.sort((a, b) => a.least - b.least);
  const bounds = new Float64Array(4 * kept.length);
  kept.forEach(({ least, g }, i) => {
    bounds[4 * i] = least;
    bounds.set(g, 4 * i + 1);
  });
  return { nodes: kept.map(({ node }) => node), bounds };
}

/**
 * The cubes through which the surface may go: the whole is cut up, and what is all inside or all outside is left. Positions that
 * matter to a cube are handed down to its eighths, and cut up themselves as the cubes get smaller.
 *
 * A node does not matter where it is out of the level's reach, or where another one is nearer in all of the cube. That one is the
 * nearest in the cube's middle: off it by δ its distance grows by at most g · δ + δ²/2a, with a its distance from the core that its
 * rounding is around.
 * @param smallest - in edges of the lattice, a power of two
 * @param most - gives up after so many
 * @yields the share of the whole that is done
 * @returns null where there are more
 */
export function* activeCubes(
  lattice: Lattice,
  level: Level,
  roots: readonly PositionNode[],
  smallest: number,
  most: number,
): Generator<number, ActiveCube[] | null> {
  const { origin, edge, count } = lattice;
  const top = level.at + level.play;
  const made: ActiveCube[] = [];
  const places: Place[] = [{ x: 0, y: 0, z: 0, size: count, from: roots }];
  let done = 0;
  for (let visits = 0; places.length > 0; visits++) {
    if (visits % 200 === 199) yield done;
    const { x, y, z, size, from } = places.pop()!;
    const share = size / count;
    const part = share * share * share;
    const half = 0.5 * size * edge;
    const cx = origin[0] + x * edge + half;
    const cy = origin[1] + y * edge + half;
    const cz = origin[2] + z * edge + half;
    const radius = Math.sqrt(3) * half;
    const isSmall = size === 1;
    const reach = isSmall ? FARTHEST * edge : Math.sqrt(3) * (half + (0.5 + PUSHED) * edge);
    const along = (gx: number, gy: number, gz: number): number =>
      isSmall ? edge * dodecahedron(gx, gy, gz) : (half + (0.5 + PUSHED) * edge) * (Math.abs(gx) + Math.abs(gy) + Math.abs(gz));
    const kept: Kept[] = [];
    let best = Infinity;
    let bestG: readonly [number, number, number] = [0, 0, 0];
    let bestRound = 0;
    let nearest = Infinity;
    const pending = [...from].reverse();
    while (pending.length > 0) {
      const node = pending.pop()!;
      if (node.isBlank) {
        if (node.isSpeck) continue;
        pending.push(...node.split());
        continue;
      }
      lookAt(node, cx, cy, cz, look);
      const { distance, least, gx, gy, gz } = look;
      if (least - reach > top + edge || least - reach > best + reach) continue;
      if (distance < best) {
        best = distance;
        bestG = [gx, gy, gz];
        bestRound = node.path.field.round;
      }
      if (!node.isSpeck && distance - least > SHARE * radius) {
        pending.push(...node.split());
        continue;
      }
      const bears = node.path.field.isConvex;
      nearest = Math.min(nearest, least - (bears ? (node.turn + node.sagPerMm) * radius : 0));
      const turned = least - (node.turn + node.sagPerMm) * reach;
      kept.push({ node, least: bears ? turned : turned - reach, g: bears ? [gx, gy, gz] : [0, 0, 0] });
    }
    if (kept.length === 0 || nearest - radius > top || best + radius < level.at) {
      done += part;
      continue;
    }
    const round = best + bestRound;
    const bowed = round > 0 ? (reach * reach) / (2 * round) : Infinity;
    const matter: Kept[] = [];
    for (const one of kept) {
      const { least, g } = one;
      const out = along(g[0], g[1], g[2]);
      if (least - out > top + edge || least - out > best + reach) continue;
      if (least - along(g[0] - bestG[0], g[1] - bestG[1], g[2] - bestG[2]) > best + bowed) continue;
      matter.push(one);
    }
    if (size === smallest) {
      made.push({ x, y, z, middle: [cx, cy, cz], ...inOrder(matter) });
      done += part;
      if (made.length > most) return null;
      continue;
    }
    const nodes = matter.map(({ node }) => node);
    const step = size / 2;
    // the first is looked at first
    for (const dx of [step, 0])
      for (const dy of [step, 0])
        for (const dz of [step, 0]) places.push({ x: x + dx, y: y + dy, z: z + dz, size: step, from: nodes });
  }
  return made;
}

/** Some cubes together that are still to be looked at. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly size: number;
  readonly from: readonly PositionNode[];
}
