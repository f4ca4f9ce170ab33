import type { Level } from './level';
import type { PositionNode } from './positions';
import { anywhere, lookAt, newLook, type Candidates } from './search';

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

/** Where a cube's nodes have to be good for: its own region, and those of the cubes of the lattice that it is cut into. */
class Region {
  readonly middle: readonly [number, number, number];
  /** of the ball around the cube [mm] */
  readonly radius: number;
  /** of the ball around the region [mm] */
  readonly reach: number;
  private readonly half: number;
  /** it is a cube of the lattice */
  private readonly isSmall: boolean;

  constructor(
    private readonly lattice: Lattice,
    { x, y, z, size }: Cubes,
  ) {
    const { origin, edge } = lattice;
    this.half = 0.5 * size * edge;
    this.isSmall = size === 1;
    this.middle = [origin[0] + x * edge + this.half, origin[1] + y * edge + this.half, origin[2] + z * edge + this.half];
    this.radius = Math.sqrt(3) * this.half;
    this.reach = this.isSmall ? FARTHEST * edge : Math.sqrt(3) * (this.half + (0.5 + PUSHED) * edge);
  }

  /** Whether a point is in the cube itself. */
  holds([x, y, z]: readonly [number, number, number]): boolean {
    const [a, b, c] = this.middle;
    return Math.max(Math.abs(x - a), Math.abs(y - b), Math.abs(z - c)) <= this.half;
  }

  /** Greatest of g · δ, with δ from the middle to anywhere in the region. */
  along(gx: number, gy: number, gz: number): number {
    const { edge } = this.lattice;
    if (this.isSmall) return edge * dodecahedron(gx, gy, gz);
    return (this.half + (0.5 + PUSHED) * edge) * (Math.abs(gx) + Math.abs(gy) + Math.abs(gz));
  }
}

/**
 * The nearest in the middle of a region of all that was looked at. Off the middle by δ its distance grows by at most g · δ + δ²/2a,
 * with a its distance from the core that its rounding is around.
 */
class Nearest {
  distance = Infinity;
  private gx = 0;
  private gy = 0;
  private gz = 0;
  private round = 0;

  constructor(private readonly region: Region) {}

  see(distance: number, gx: number, gy: number, gz: number, round: number): void {
    if (!(distance < this.distance)) return;
    this.distance = distance;
    [this.gx, this.gy, this.gz] = [gx, gy, gz];
    this.round = round;
  }

  /** Whether it is nearer all over the region than what is not below `least + g · δ` there. */
  beats(least: number, gx: number, gy: number, gz: number): boolean {
    const { distance, region } = this;
    const { reach } = region;
    if (distance === Infinity) return false;
    if (least - region.along(gx, gy, gz) > distance + reach) return true;
    const core = distance + this.round;
    if (core <= 0) return false;
    return least - region.along(gx - this.gx, gy - this.gy, gz - this.gz) > distance + (reach * reach) / (2 * core);
  }
}

/** A node that matters around a cube. */
interface Kept {
  readonly node: PositionNode;
  /** not below this in the middle of the cube, as far as it bears on the whole of it [mm] */
  readonly least: number;
  readonly g: readonly [number, number, number];
}

function inOrder(kept: Kept[]): Pick<Candidates, 'nodes' | 'bounds'> {
  kept.sort((a, b) => a.least - b.least);
  const bounds = new Float64Array(4 * kept.length);
  kept.forEach(({ least, g }, i) => {
    bounds[4 * i] = least;
    bounds.set(g, 4 * i + 1);
  });
  return { nodes: kept.map(({ node }) => node), bounds };
}

const look = newLook();

/**
 * What of a place's nodes matters to it, cut up as far as that tells them apart there. A node does not matter where it is out of the
 * level's reach, or where another one is nearer in all of the region.
 * @returns null where the surface does not go through the cube
 */
function matterTo(lattice: Lattice, level: Level, region: Region, { nodes, middle, bounds }: Candidates): Candidates | null {
  const [x, y, z] = region.middle;
  const { radius, reach } = region;
  const top = level.at + level.play;
  const farthest = top + lattice.edge;
  const best = new Nearest(region);
  const kept: Kept[] = [];
  let nearest = Infinity;
  const pending: PositionNode[] = [];
  const [dx, dy, dz] = [x - middle[0], y - middle[1], z - middle[2]];
  for (let next = 0; pending.length > 0 || next < nodes.length;) {
    if (pending.length === 0) {
      const k = 4 * next;
      const [gx, gy, gz] = [bounds[k + 1], bounds[k + 2], bounds[k + 3]];
      const node = nodes[next++];
      // what is known of it around the place that this is a part of may be enough
      if (best.beats(bounds[k] + gx * dx + gy * dy + gz * dz, gx, gy, gz)) continue;
      pending.push(node);
    }
    const node = pending.pop()!;
    if (node.isBlank) {
      if (!node.isSpeck) pending.push(...node.split());
      continue;
    }
    lookAt(node, x, y, z, look);
    const { distance, least, gx, gy, gz } = look;
    const { isConvex, round } = node.path.field;
    if (least - reach > farthest || least - reach > best.distance + reach) continue;
    best.see(distance, gx, gy, gz, round);
    const slack = node.turn + node.sagPerMm;
    // one that is cut up costs most, and need not be where it is beaten as a whole
    if (!node.isSpeck && distance - least > SHARE * radius) {
      if (isConvex && best.beats(least - slack * reach, gx, gy, gz)) continue;
      pending.push(...node.split());
      continue;
    }
    nearest = Math.min(nearest, least - (isConvex ? slack * radius : 0));
    if (isConvex) kept.push({ node, least: least - slack * reach, g: [gx, gy, gz] });
    else kept.push({ node, least: least - slack * reach - reach, g: [0, 0, 0] });
  }
  if (kept.length === 0 || nearest - radius > top || best.distance + radius < level.at) return null;
  const matter = kept.filter(
    ({ least, g }) => least - region.along(g[0], g[1], g[2]) <= farthest && !best.beats(least, g[0], g[1], g[2]),
  );
  return { middle: region.middle, ...inOrder(matter) };
}

/**
 * The cubes through which the surface may go: the whole is cut up, and what is all inside or all outside is left. Positions that
 * matter to a cube are handed down to its eighths, and cut up themselves as the cubes get smaller.
 * @param most - gives up after so many
 * @param rough - those of a coarser lattice, as far as they are known: they tell where the work is, and so how much of it is done
 * @yields the share of the whole that is done
 * @returns null where there are more
 */
export function* activeCubes(
  lattice: Lattice,
  level: Level,
  roots: readonly PositionNode[],
  most: number,
  rough: readonly ActiveCube[] = [],
): Generator<number, ActiveCube[] | null> {
  const { count } = lattice;
  const made: ActiveCube[] = [];
  const whole: Place = { x: 0, y: 0, z: 0, size: count, share: 1, rough, ...anywhere(roots) };
  const places: Place[] = [whole];
  let done = 0;
  for (let visits = 0; places.length > 0; visits++) {
    if (visits % 25 === 24) yield done;
    const { size, share, rough: within, ...place } = places.pop()!;
    if (size === 1) {
      made.push(place);
      if (made.length > most) return null;
      done += share;
      continue;
    }
    const eighths = eighthsOf({ ...place, size }).flatMap((one) => {
      const region = new Region(lattice, one);
      const matter = matterTo(lattice, level, region, place);
      return matter === null ? [] : [{ ...one, ...matter, rough: within.filter((cube) => region.holds(cube.middle)) }];
    });
    if (eighths.length === 0) done += share;
    const weights = eighths.map(({ rough: known }) => known.reduce((sum, { nodes }) => sum + nodes.length, 0));
    const all = weights.reduce((sum, weight) => sum + weight, 0);
    eighths.forEach((one, i) => {
      places.push({ ...one, share: all === 0 ? share / eighths.length : (share * weights[i]) / all });
    });
  }
  return made;
}

/** What is last is looked at first. */
const eighthsOf = ({ x, y, z, size }: Cubes): readonly Cubes[] => {
  const half = size / 2;
  return [7, 6, 5, 4, 3, 2, 1, 0].map((i) => ({
    x: x + (i & 4 ? half : 0),
    y: y + (i & 2 ? half : 0),
    z: z + (i & 1 ? half : 0),
    size: half,
  }));
};

/** Cubes of the lattice that are a cube together. */
interface Cubes {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  /** in edges of the lattice, a power of two */
  readonly size: number;
}

/** One that is still to be looked at, with what matters to it and its share of the work. */
interface Place extends Cubes, Candidates {
  readonly share: number;
  /** those of the coarser lattice whose middles are in it */
  readonly rough: readonly ActiveCube[];
}
