import { addNormals, cutAll, DONE, keyOf, LEFT, OPEN, type Cut } from './cuts';
import { isAbout, type ActiveCube, type Lattice } from './lattice';
import { safeRadius, type Level } from './level';
import type { PositionNode } from './positions';
import { anywhere, found, type Candidates, type Found, type NearestSearch } from './search';
import type { GrowingMesh } from './surface';
import { squared } from './squared';

const MOST_ROUNDS = 60;
/** About so many rounds are most of the work. */
const ROUNDS = 4;
/** Where narrow space is filled what stands farther out than the bound is cut up in so many rounds, and stays where it is after. */
const FILLED_ROUNDS = 6;
/** Cuts that after so many rounds are so many, and so many times as many as in a round before, grow without end. */
const FIRST_GROWN = 12;
const MANY_CUTS = 1000;
const GROWN = 3;
/** From this round on edges are cut at odd places, and another one every time: in a crease what is pushed could come back to where it was, again and again. */
const FIRST_UNEVEN = 7;
const MOST_PUSHES = 40;
/** How far down the bottom of a groove is looked for, in lengths of the edge over it; and how slowly its walls may close in. */
const DEEPEST = 12;
const SLOWEST = 0.03;
/** How long it is asked whether a triangle reaches inside before it is cut up, which is the quicker answer; and if it cannot be. */
const LOOKS = 20;
const LAST_LOOKS = 4000;
/** An edge is not cut below this share of the bound. */
const SMALLEST_EDGE = 0.05;

/** How far a mesh is from what it holds, as far as it was looked at: at every corner and in the middle of every triangle [mm]. */
export interface Refined {
  /** at least; how much a position between those tried may take off is taken off */
  readonly least: number;
  readonly most: number;
  /** the middle of a triangle that could reach into what is swept after all cuts; null: there is none */
  readonly left: Place | null;
}

/** A point of the car [mm]. */
export type Place = readonly [number, number, number];

/** Why there is no end to the cuts: more triangles than were allowed, or more every round around a place. */
export type Unsettled = { readonly tooMany: true } | { readonly grows: Place };

/**
 * Cuts up what could reach into the swept space, or stands farther out than the bound, until nothing does. An edge is cut for both of
 * its triangles, so the mesh stays closed; new corners are moved to the level.
 * @param most - gives up where there are more triangles
 * @param fills - leaves what is over narrow space where it is, farther out than the bound, instead of going down into it
 * @yields the share that is done, as far as can be told
 */
export function* refineMesh(
  mesh: GrowingMesh,
  lattice: Lattice,
  level: Level,
  search: NearestSearch,
  roots: readonly PositionNode[],
  most: number,
  fills: boolean,
): Generator<number, Refined | Unsettled> {
  const { positions, distances } = mesh;
  const look = new Looks(lattice, level, search, roots, fills);
  let states = new Uint8Array(mesh.homes.length);
  let middles = new Float64Array(mesh.homes.length);
  let fewest = Infinity;
  for (let round = 0; ; round++) {
    const cuts = new Map<number, Cut>();
    for (let i = 0; i < mesh.homes.length; i++) {
      if (states[i] !== OPEN) continue;
      // nobody knows how many rounds there will be: each takes the bar some of what is left of its way
      if (i % 2000 === 1999) yield 1 - Math.exp(-(round + i / mesh.homes.length) / ROUNDS);
      const { cut: fault, isSafe, middle } = look.judge(mesh, i, round);
      middles[i] = middle;
      states[i] = fault !== null ? OPEN : isSafe ? DONE : LEFT;
      if (fault === null) continue;
      const [a, b] = [mesh.triangles[3 * i + fault], mesh.triangles[3 * i + ((fault + 1) % 3)]];
      const key = keyOf(a, b);
      if (!cuts.has(key)) cuts.set(key, { a, b, normal: [0, 0, 0], home: mesh.homes[i], number: -1 });
    }
    if (cuts.size === 0) break;
    if (mesh.homes.length + 2 * cuts.size > most) return { tooMany: true };
    if (round >= FIRST_GROWN && cuts.size > Math.max(MANY_CUTS, GROWN * fewest))
      return { grows: middleOf(mesh, states.indexOf(OPEN)) };
    fewest = Math.min(fewest, cuts.size);
    addNormals(mesh, cuts);
    for (const cut of cuts.values()) {
      cut.number = positions.length / 3;
      const { at, distance } = look.pushedOut(positions, cut, shareIn(round, cut), fills && round >= FILLED_ROUNDS);
      positions.push(...at);
      distances.push(distance);
    }
    [states, middles] = cutAll(mesh, cuts, states, middles);
  }
  let [least, top] = [Infinity, -Infinity];
  for (const distance of distances) {
    if (distance < least) least = distance;
    if (distance > top) top = distance;
  }
  for (let i = 0; i < states.length; i++) {
    if (middles[i] < least) least = middles[i];
    if (middles[i] > top) top = middles[i];
  }
  const left = states.indexOf(LEFT);
  return { least: least - level.tolerance - level.grow, most: top - level.grow, left: left < 0 ? null : middleOf(mesh, left) };
}

const middleOf = ({ positions: p, triangles: t }: GrowingMesh, index: number): Place => {
  const [a, b, c] = [3 * t[3 * index], 3 * t[3 * index + 1], 3 * t[3 * index + 2]];
  const along = (i: number): number => (p[a + i] + p[b + i] + p[c + i]) / 3;
  return [along(0), along(1), along(2)];
};

/** Where an edge is cut, as a share of it: in the middle, and later anywhere in its middle half, the same every time. */
const shareIn = (round: number, { a, b }: Cut): number =>
  round < FIRST_UNEVEN ? 0.5 : 0.5 + 0.25 * Math.sin(12.9898 * a + 78.233 * b + 37.719 * round);

/** A corner that was moved, and how far it is off the level [mm]. */
interface Pushed {
  readonly at: readonly [number, number, number];
  readonly distance: number;
  readonly off: number;
}

/** Asks for distances around a triangle's own cube, and anywhere where it has got off that. */
class Looks {
  private readonly answer: Found = found();
  private readonly all: Candidates;
  private readonly corners = new Float64Array(9);
  private readonly safe = new Map<ActiveCube, number>();

  constructor(
    private readonly lattice: Lattice,
    private readonly level: Level,
    private readonly search: NearestSearch,
    roots: readonly PositionNode[],
    private readonly fills: boolean,
  ) {
    this.all = anywhere(roots);
  }

  private near(home: ActiveCube, x: number, y: number, z: number): Candidates {
    return isAbout(this.lattice, home, x, y, z) ? home : this.all;
  }

  private find(home: ActiveCube, x: number, y: number, z: number, enough: number, cap: number): Found {
    this.search.find(this.near(home, x, y, z), x, y, z, enough, cap, this.answer);
    return this.answer;
  }

  private safeFor(home: ActiveCube): number {
    const known = this.safe.get(home);
    if (known !== undefined) return known;
    let round = Infinity;
    for (const { path } of home.nodes) round = Math.min(round, path.field.round);
    const made = safeRadius(this.level, Math.max(0, round));
    this.safe.set(home, made);
    return made;
  }

  /**
   * Which edge of a triangle has to be cut, if any; whether it is known not to reach inside; and the distance in its middle [mm].
   * After the last round none is cut any more.
   */
  judge(
    { positions, triangles, homes, distances }: GrowingMesh,
    index: number,
    round: number,
  ): { readonly cut: number | null; readonly isSafe: boolean; readonly middle: number } {
    const { level, corners: t } = this;
    const home = homes[index];
    for (let k = 0; k < 3; k++) for (let i = 0; i < 3; i++) t[3 * k + i] = positions[3 * triangles[3 * index + k] + i];
    const edges = [edgeOf(t, 0, 3), edgeOf(t, 3, 6), edgeOf(t, 6, 0)];
    const longest = edges[0] >= edges[1] ? (edges[0] >= edges[2] ? 0 : 2) : edges[1] >= edges[2] ? 1 : 2;
    const most = level.grow + level.bound;
    const [x, y, z] = [(t[0] + t[3] + t[6]) / 3, (t[1] + t[4] + t[7]) / 3, (t[2] + t[5] + t[8]) / 3];
    const middle = this.find(home, x, y, z, -Infinity, most + 2 * edges[longest]).distance;
    const isLarge = round < MOST_ROUNDS && edges[longest] >= SMALLEST_EDGE * level.bound;
    const turn = Math.max(0, round - FIRST_UNEVEN);
    if (middle > most && isLarge && !(this.fills && round >= FILLED_ROUNDS)) {
      const over = this.farthest(home, t);
      return { cut: over ?? (turn === 0 ? longest : this.another(edges, longest, turn + index)), isSafe: false, middle };
    }
    const isAtLevel = [0, 1, 2].every((k) => distances[triangles[3 * index + k]] >= level.at);
    const isSafe =
      (isAtLevel && enclosingRadius(edges) <= this.safeFor(home)) ||
      (middle - level.tolerance >= level.grow && this.isClear(home, t, isLarge ? LOOKS : LAST_LOOKS));
    return { cut: isSafe || !isLarge ? null : this.deepest(home, t, longest), isSafe, middle };
  }

  /** One of the edges that are not much shorter than the longest, another one every turn. */
  private another(edges: readonly number[], longest: number, turn: number): number {
    for (let k = 0; k < 3; k++) if (edges[(turn + k) % 3] > 0.3 * edges[longest]) return (turn + k) % 3;
    return longest;
  }

  private isClear(home: ActiveCube, t: Float64Array, most: number): boolean {
    const isHome = [0, 3, 6].every((k) => isAbout(this.lattice, home, t[k], t[k + 1], t[k + 2]));
    return this.search.isClear(isHome ? home : this.all, t, this.level.grow, most);
  }

  /** The edge whose middle is farthest out, as over a groove; null where none is farther than the bound. */
  private farthest(home: ActiveCube, t: Float64Array): number | null {
    const { level } = this;
    let farthest: number | null = null;
    let most = level.grow + level.bound;
    for (let k = 0; k < 3; k++) {
      const [a, b] = [3 * k, (3 * k + 3) % 9];
      const long = edgeOf(t, a, b);
      if (long < SMALLEST_EDGE * level.bound) continue;
      const [x, y, z] = [0.5 * (t[a] + t[b]), 0.5 * (t[a + 1] + t[b + 1]), 0.5 * (t[a + 2] + t[b + 2])];
      const { distance } = this.find(home, x, y, z, -Infinity, most + long);
      if (distance <= most) continue;
      most = distance;
      farthest = k;
    }
    return farthest;
  }

  /**
   * A point of an edge over a groove, straight down at the level. What is nearest is a wall of the groove, beside which the mesh is
   * already; the bottom lies where both walls point away from, whatever the triangles around are like.
   * @returns null where the edge is not over a groove
   */
  private sunk(positions: readonly number[], { a, b, home }: Cut, from: readonly number[]): [number, number, number] | null {
    const { level } = this;
    const goal = level.at + 0.5 * level.play;
    const at = (s: number): [number, number, number] => [from[0] - s * up[0], from[1] - s * up[1], from[2] - s * up[2]];
    const over = (x: number, y: number, z: number): number => this.find(home, x, y, z, -Infinity, level.at + 1e3).distance - goal;
    let above = over(from[0], from[1], from[2]);
    if (above <= level.grow + level.bound - goal) return null;
    const up = [0, 0, 0];
    for (const end of [3 * a, 3 * b]) {
      this.find(home, positions[end], positions[end + 1], positions[end + 2], -Infinity, level.at + 1e3);
      for (let i = 0; i < 3; i++) up[i] += this.answer.gradient[i];
    }
    const size = Math.sqrt(squared(up[0]) + squared(up[1]) + squared(up[2]));
    if (size < SLOWEST) return null;
    for (let i = 0; i < 3; i++) up[i] /= size;
    const deepest = DEEPEST * lengthOf(positions, a, b);
    let [high, low, below, slope] = [0, Infinity, 0, 1];
    for (let step = 0; step < MOST_PUSHES; step++) {
      const straight = low === Infinity ? high + above / slope : high + ((low - high) * above) / (above - below);
      const s = low < Infinity && step % 3 === 2 ? 0.5 * (low + high) : straight;
      if (s > deepest) return null;
      const value = over(...at(s));
      if (Math.abs(value) <= 0.5 * level.play) return at(s);
      if (value < 0) [low, below] = [s, value];
      else {
        slope = Math.min(1, Math.max(SLOWEST, (above - value) / (s - high)));
        [high, above] = [s, value];
      }
    }
    return null;
  }

  /** The edge whose middle is deepest, where one dips below its corners; else the longest. Cuts then go across a ridge, not along it. */
  private deepest(home: ActiveCube, t: Float64Array, longest: number): number {
    const { level } = this;
    let deepest = longest;
    let least = level.at - level.tolerance;
    for (let k = 0; k < 3; k++) {
      const [a, b] = [3 * k, (3 * k + 3) % 9];
      const [x, y, z] = [0.5 * (t[a] + t[b]), 0.5 * (t[a + 1] + t[b + 1]), 0.5 * (t[a + 2] + t[b + 2])];
      const { distance } = this.find(home, x, y, z, -Infinity, level.at);
      if (distance >= least || edgeOf(t, a, b) < SMALLEST_EDGE * level.bound) continue;
      least = distance;
      deepest = k;
    }
    return deepest;
  }

  /**
   * A point of an edge, a share of the way along it, moved to the level: inwards straight at what is nearest, outwards away from it or
   * off the surface.
   * @param stays - what is farther out stays there: over a slit every corner that goes in to one of its walls leaves two long edges
   * across, and they are cut again
   */
  pushedOut(positions: readonly number[], cut: Cut, share: number, stays: boolean): Pushed {
    const { level } = this;
    const { a, b, normal, home } = cut;
    const from = [0, 1, 2].map((i) => positions[3 * a + i] + share * (positions[3 * b + i] - positions[3 * a + i]));
    let [x, y, z] = (this.fills ? null : this.sunk(positions, cut, from)) ?? from;
    const size = Math.sqrt(squared(normal[0]) + squared(normal[1]) + squared(normal[2]));
    const goal = level.at + 0.5 * level.play;
    // where two sweeps meet it can go to and fro between them: the best of it is good enough to go on from
    let best: Pushed = { at: [x, y, z], distance: 0, off: Infinity };
    for (let push = 0; ; push++) {
      const { distance, gradient } = this.find(home, x, y, z, -Infinity, level.at + 1e3);
      const over = stays ? 0 : Math.max(0, distance - level.at - level.play);
      const off = distance < level.at ? level.at - distance : over;
      if (off < best.off) best = { at: [x, y, z], distance, off };
      if (off === 0 || push === MOST_PUSHES) return best;
      const by = goal - distance;
      const isFlat = gradient[0] === 0 && gradient[1] === 0 && gradient[2] === 0;
      if (by > 0 && size > 0 && (isFlat || push > MOST_PUSHES / 2)) {
        x += (by * normal[0]) / size;
        y += (by * normal[1]) / size;
        z += (by * normal[2]) / size;
      } else {
        x += by * gradient[0];
        y += by * gradient[1];
        z += by * gradient[2];
      }
    }
  }
}

const lengthOf = (p: readonly number[], a: number, b: number): number =>
  Math.sqrt(squared(p[3 * a] - p[3 * b]) + squared(p[3 * a + 1] - p[3 * b + 1]) + squared(p[3 * a + 2] - p[3 * b + 2]));

function edgeOf(t: Float64Array, a: number, b: number): number {
  return Math.sqrt(squared(t[a] - t[b]) + squared(t[a + 1] - t[b + 1]) + squared(t[a + 2] - t[b + 2]));
}

/** Radius of the least circle around a triangle of these edges. */
function enclosingRadius(edges: readonly number[]): number {
  const [a, b, c] = [...edges].sort((p, q) => q - p);
  if (a * a >= b * b + c * c) return 0.5 * a;
  const half = 0.5 * (a + b + c);
  return (a * b * c) / (4 * Math.sqrt(half * (half - a) * (half - b) * (half - c)));
}
