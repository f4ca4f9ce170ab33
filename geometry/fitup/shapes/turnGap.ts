import { dot, length, reject, scale, subtract, type Vector } from '../../core/vector';
import { CORE_WIDTH, coreReach, HULL_OF, HULL_WIDTH, placeCore, writeHullHead, type Core } from '../distance/core';
import { nearest, solveNearest } from '../distance/gjk';
import { anchor, atDesign, inverse, placed, writeProduct, writeRelative, writeTurn, type Placement } from '../placement';
import { beyond, wholeGap, type Gap, type GapHint, type GapSearch } from './gap';
import type { Cover, Solid, Spin } from './solid';
import { meshLeast } from './meshGap';
import { stillGap, turnedAbout } from './stillGap';

/** How finely the turn is settled [mm]. */
const CLOSED_MM = 0.01;
/** Stretches of the turn that are looked at, at most; what is left open then is said as slack. */
const MOST_STRETCHES = 6000;
const MOST_MESH_STRETCHES = 300;
/** Into how many stretches the turn is cut at first, of one solid that turns and of each of two. */
const STARTS = 8;
const STARTS_OF_TWO = 5;

/**
 * Least distance over all turns of one solid or both about their spin axes. How deep they are in each other is not known, but for
 * a ring that is cut from outside.
 */
export function turnGap(a: Solid, b: Solid, relative: Placement, search: GapSearch): Gap {
  const covered = coverGap(a, b, relative, search);
  if (covered !== null && covered.isRing && covered.gap.distance > 0) return covered.gap;
  // the ring lies in its hull
  if (covered !== null && covered.gap.distance >= search.cutoff) return beyond(search.cutoff);
  const gap = leastOverTurns(a, b, relative, search);
  return gap.distance <= 0 && covered !== null && covered.isRing ? covered.gap : gap;
}

interface Covered {
  readonly gap: Gap;
  /** the hull's gap is the ring's own: its nearest point is not in the bore */
  readonly isRing: boolean;
}

/** The gap of a ring's hull; null where none of the two is a ring. */
function coverGap(a: Solid, b: Solid, relative: Placement, search: GapSearch): Covered | null {
  if (a.kind === 'round' && a.cover !== null) {
    const gap = withOther(a.cover.solid, b, relative, search);
    return { gap, isRing: isOnRing(a.cover, a.spin!, gap.points[0]) };
  }
  if (b.kind === 'round' && b.cover !== null) {
    const gap = withOther(a, b.cover.solid, relative, search);
    return { gap, isRing: isOnRing(b.cover, b.spin!, placed(inverse(relative), gap.points[1])) };
  }
  return null;
}

const withOther = (a: Solid, b: Solid, relative: Placement, search: GapSearch): Gap =>
  a.spin !== null || b.spin !== null ? turnGap(a, b, relative, search) : stillGap(a, b, relative, search);

const isOnRing = ({ bore }: Cover, spin: Spin, point: Vector): boolean =>
  length(reject(subtract(point, spin.at), spin.axis)) >= bore;

/** A stretch of the turns: middle and half width of each [rad], and what no gap in it is below. */
interface Stretch {
  readonly middle: readonly [number, number];
  readonly half: readonly [number, number];
  readonly least: number;
}

/**
 * Cuts the turns up, nearest first, until no stretch can hold anything nearer.
 * What a core sweeps in a stretch lies within the hull of its two ends and of the same two taken away from the axis by 1/cos of the half
 * stretch: a point's arc lies between its chord and the tangent in its middle.
 */
function leastOverTurns(a: Solid, b: Solid, relative: Placement, search: GapSearch): Gap {
  const { cutoff, hint, isFine } = search;
  // what turns is cut up in the frame of a mesh that does not
  if (b.kind === 'mesh' && b.spin === null && a.kind === 'round') {
    const swapped: GapHint = { turns: [hint.turns[1], hint.turns[0]], way: null };
    const gap = leastOverTurns(b, a, inverse(relative), { cutoff, hint: swapped, isFine });
    hint.turns = [swapped.turns[1], swapped.turns[0]];
    return gap.distance < cutoff ? turnedAbout(gap, relative) : gap;
  }
  const turning = new Turning(a, b, relative);
  const [startsA, startsB] = a.spin !== null && b.spin !== null ? [STARTS_OF_TWO, STARTS_OF_TWO] : [STARTS, STARTS];
  const open: Stretch[] = [];
  const first = turning.gapAt(hint.turns);
  if (first.distance <= 0) return { ...first, distance: 0, isCutOnly: true };
  let best = first.distance < cutoff ? first : beyond(cutoff);
  let looked = 0;
  const look = (middle: Stretch['middle'], half: Stretch['half']): void => {
    looked += 1;
    const least = turning.leastIn(middle, half, best.distance - CLOSED_MM);
    if (least < best.distance - CLOSED_MM) open.push({ middle, half, least });
  };
  const most = turning.isRound ? MOST_STRETCHES : MOST_MESH_STRETCHES;
  for (let i = 0; i < (a.spin === null ? 1 : startsA); i++) {
    for (let j = 0; j < (b.spin === null ? 1 : startsB); j++) {
      look(
        [a.spin === null ? 0 : (2 * Math.PI * i) / startsA, b.spin === null ? 0 : (2 * Math.PI * j) / startsB],
        [a.spin === null ? 0 : Math.PI / startsA, b.spin === null ? 0 : Math.PI / startsB],
      );
    }
  }
  while (open.length > 0) {
    let next = 0;
    for (let i = 1; i < open.length; i++) if (open[i].least < open[next].least) next = i;
    const { middle, half, least } = open[next];
    if (least >= best.distance - CLOSED_MM) break;
    if (looked > most) return { ...best, slack: best.distance - least };
    open[next] = open[open.length - 1];
    open.pop();
    const gap = turning.gapAt(middle);
    if (gap.distance <= 0) return { ...gap, distance: 0, isCutOnly: true };
    if (gap.distance < best.distance) {
      best = gap;
      hint.turns = middle;
    }
    const which = turning.reach[0] * half[0] >= turning.reach[1] * half[1] ? 0 : 1;
    const quarter = 0.5 * half[which];
    const put = (value: number, of: readonly [number, number]): readonly [number, number] =>
      which === 0 ? [value, of[1]] : [of[0], value];
    look(put(middle[which] - quarter, middle), put(quarter, half));
    look(put(middle[which] + quarter, middle), put(quarter, half));
  }
  return isFine && best.distance < cutoff ? polished(turning, best, hint) : best;
}

const POLISHED_RAD = 1e-6;

/** The least gap near the best that was found, by ever smaller steps of each turn. */
function polished(turning: Turning, found: Gap, hint: GapHint): Gap {
  let best = found;
  for (let step = 0.02; step > POLISHED_RAD;) {
    const before = best.distance;
    for (const which of [0, 1] as const) {
      if (turning.reach[which] === 0) continue;
      for (const by of [step, -step]) {
        const turns: readonly [number, number] =
          which === 0 ? [hint.turns[0] + by, hint.turns[1]] : [hint.turns[0], hint.turns[1] + by];
        const gap = turning.gapAt(turns);
        if (gap.distance <= 0 || gap.distance >= best.distance) continue;
        best = gap;
        hint.turns = turns;
      }
    }
    if (best.distance === before) step *= 0.3;
  }
  return best;
}

const found = nearest();

// One gap at a time is worked on: what it needs is made once.
const AT_DESIGN = atDesign();
const turnA = atDesign();
const turnB = atDesign();
const placeB = atDesign();
const between = atDesign();
const HULLS: readonly [Core[], Core[]] = [[], []];

function hullsFor(solid: Solid, which: 0 | 1): readonly Core[] {
  if (solid.kind !== 'round') return [];
  const kept = HULLS[which];
  while (kept.length < solid.cores.length) kept.push(new Float64Array(HULL_WIDTH));
  return kept;
}

/** Two solids of which one or both turn. */
class Turning {
  readonly isRound: boolean;
  /** how far from its axis each of them goes; 0 for one that does not turn [mm] */
  readonly reach: readonly [number, number];
  private readonly hullsA: readonly Core[];
  private readonly hullsB: readonly Core[];

  constructor(
    private readonly a: Solid,
    private readonly b: Solid,
    private readonly relative: Placement,
  ) {
    this.isRound = a.kind === 'round' && b.kind === 'round';
    this.reach = [reachOf(a), reachOf(b)];
    this.hullsA = hullsFor(a, 0);
    this.hullsB = hullsFor(b, 1);
    turnA.set(AT_DESIGN);
    turnB.set(AT_DESIGN);
  }

  /** The gap at a turn of each, in the frame of the first. */
  gapAt([alpha, beta]: Stretch['middle']): Gap {
    this.turn(alpha, beta);
    writeRelative(turnA, placeB, between);
    const gap = stillGap(this.a, this.b, between, wholeGap());
    return { ...gap, points: [placed(turnA, gap.points[0]), placed(turnA, gap.points[1])] };
  }

  /** What no gap within a stretch is below [mm]; no more is asked once it is `enough`. */
  leastIn(middle: Stretch['middle'], half: Stretch['half'], enough: number): number {
    const { a, b, reach } = this;
    if (a.kind === 'mesh' && a.spin === null && b.kind === 'round') {
      this.writeHulls(middle, half);
      return meshLeast(a, this.hullsB.slice(0, b.cores.length), b.rounds, enough);
    }
    if (a.kind !== 'round' || b.kind !== 'round') {
      // no point of a mesh goes farther than its arc
      return this.gapAt(middle).distance - reach[0] * half[0] - reach[1] * half[1];
    }
    this.writeHulls(middle, half);
    let least = Infinity;
    for (let i = 0; i < a.cores.length; i++) {
      for (let j = 0; j < b.cores.length; j++) {
        const off = a.rounds[i] + b.rounds[j];
        solveNearest(this.hullsA[i], this.hullsB[j], found, Math.min(enough, least) + off);
        least = Math.min(least, found.distance - found.bound - off);
      }
    }
    return least;
  }

  private writeHulls([alpha, beta]: Stretch['middle'], [halfA, halfB]: Stretch['half']): void {
    const [a, b] = [coresOf(this.a), coresOf(this.b)];
    for (let corner = 0; corner < HULL_OF; corner++) {
      const end = corner % 2 === 0 ? -1 : 1;
      this.turn(alpha + end * halfA, beta + end * halfB);
      if (corner >= 2) this.takeAway(halfA, halfB);
      writePlaced(a, turnA, this.hullsA, 4 + corner * CORE_WIDTH);
      writePlaced(b, placeB, this.hullsB, 4 + corner * CORE_WIDTH);
    }
    for (let i = 0; i < a.length; i++) writeHullHead(this.hullsA[i]);
    for (let i = 0; i < b.length; i++) writeHullHead(this.hullsB[i]);
  }

  /** Takes what has been turned away from its axis. */
  private takeAway(halfA: number, halfB: number): void {
    if (this.a.spin !== null) writeStretched(turnA, this.a.spin, 1 / Math.cos(halfA));
    if (this.b.spin === null) return;
    writeStretched(turnB, this.b.spin, 1 / Math.cos(halfB));
    writeProduct(this.relative, turnB, placeB);
  }

  private turn(alpha: number, beta: number): void {
    writeSpin(this.a.spin, alpha, turnA);
    writeSpin(this.b.spin, beta, turnB);
    writeProduct(this.relative, turnB, placeB);
  }
}

const coresOf = (solid: Solid): readonly Core[] => (solid.kind === 'round' ? solid.cores : []);

function writeSpin(spin: Spin | null, angle: number, out: Placement): void {
  if (spin === null) return;
  writeTurn(spin.axis, angle, out);
  anchor(out, spin.at, spin.at);
}

/** A turn about an axis that also takes everything away from it by a factor: p → at + axis (axis·p) + factor · (what is left). */
function writeStretched(turn: Placement, { at, axis }: Spin, factor: number): void {
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      const i = 3 * row + column;
      turn[i] = factor * turn[i] + (1 - factor) * axis[row] * axis[column];
    }
  }
  anchor(turn, at, at);
}

const one = new Float64Array(CORE_WIDTH);

/** Writes cores where a placement puts them into their hulls. */
function writePlaced(cores: readonly Core[], place: Placement, hulls: readonly Core[], at: number): void {
  for (let i = 0; i < cores.length; i++) {
    placeCore(place, cores[i], one);
    hulls[i].set(one, at);
  }
}

/** How far from its axis a solid's cores go; the rounding around them turns with them. */
function reachOf(solid: Solid): number {
  const { spin } = solid;
  if (spin === null) return 0;
  if (solid.kind === 'mesh') return solid.ball.radius;
  return Math.max(
    ...solid.cores.map((core) => {
      const off = subtract([core[1], core[2], core[3]], spin.at);
      return length(subtract(off, scale(spin.axis, dot(off, spin.axis)))) + coreReach(core);
    }),
  );
}
