import type { AxleMechanism } from '../../car/mechanism';
import type { CarDocument } from '../../car/document';
import { add, distance, dot, length, scale, subtract, type Vector } from '../../core/vector';
import type { AssembledSide } from '../../setup/assembleSide';
import { isStill } from '../carriers';
import { CYLINDER, pointCore, SEGMENT, segmentCore, type Core } from '../distance/core';
import { jointsBetween, type Piece } from '../pieces';
import type { Gap } from '../shapes/gap';
import type { Solid } from '../shapes/solid';

/** Two pieces that can move against each other and are not said to touch. */
export type Pair = readonly [Piece, Piece];

/** All pairs of a corner whose clearance means something, in the order of the pieces. */
export function pairsOf(pieces: readonly Piece[]): Pair[] {
  return pieces.flatMap((first, index) =>
    pieces
      .slice(index + 1)
      .filter((second) => canMeet(first, second))
      .map((second): Pair => [first, second]),
  );
}

function canMeet(a: Piece, b: Piece): boolean {
  if (a.body === b.body || (isStill(a.body) && isStill(b.body))) return false;
  return !touches(a, b) && !touches(b, a);
}

const touches = (a: Piece, b: Piece): boolean =>
  a.touches.includes(b.name) || a.touches.includes(b.carrier) || a.touches.includes(b.body);

/** How far around a joint two pieces count as joined: this times the larger radius of the two. */
const JOINED = 1.5;

export interface Joined {
  readonly solids: readonly [Solid, Solid];
  readonly counts: (gap: Gap) => boolean;
}

/**
 * What of two pieces counts where their bodies share a joint: rods and the like are cut short around it, and a gap of other
 * shapes does not count while both its ends are that near.
 */
export function joinedAt(document: CarDocument, mm: number, axle: AxleMechanism, side: AssembledSide, [a, b]: Pair): Joined {
  const joints = jointsBetween(document, mm, axle, side, a.body, b.body);
  if (joints.length === 0) return { solids: [a.solid, b.solid], counts: () => true };
  const near = JOINED * Math.max(radiusOf(a.solid), radiusOf(b.solid));
  const cut = (solid: Solid): Solid => joints.reduce((left, joint) => cutShort(left, joint, near), solid);
  return {
    solids: [cut(a.solid), cut(b.solid)],
    // in the first's own frame the joint stays where it is
    counts: ({ points }) => !joints.some((joint) => distance(points[0], joint) <= near && distance(points[1], joint) <= near),
  };
}

/** The radius that a solid has about its own line [mm]; 0 for what has none. */
function radiusOf(solid: Solid): number {
  if (solid.kind === 'mesh') return 0;
  const [core] = solid.cores;
  return core[0] === CYLINDER ? length([core[7], core[8], core[9]]) + solid.rounds[0] : solid.rounds[0];
}

function cutShort(solid: Solid, joint: Vector, near: number): Solid {
  if (solid.kind === 'mesh' || !solid.cores.some((core) => core[0] === SEGMENT)) return solid;
  const cores = solid.cores.map((core) => (core[0] === SEGMENT ? cutSegment(core, joint, near) : core));
  return { ...solid, cores };
}

/** Takes off a segment what lies within a ball around one of its ends; of one that lies in it whole, the far end is left. */
function cutSegment(core: Core, joint: Vector, near: number): Core {
  const centre: Vector = [core[1], core[2], core[3]];
  const half: Vector = [core[4], core[5], core[6]];
  const ends = [subtract(centre, half), add(centre, half)] as const;
  const which = distance(ends[0], joint) <= distance(ends[1], joint) ? 0 : 1;
  const [at, far] = [ends[which], ends[1 - which]];
  if (distance(at, joint) >= near) return core;
  const way = subtract(far, at);
  // |at + s way − joint| = near, the far root
  const off = subtract(at, joint);
  const a = dot(way, way);
  const b = dot(off, way);
  const c = dot(off, off) - near * near;
  const s = (-b + Math.sqrt(b * b - a * c)) / a;
  return s < 1 ? segmentCore(add(at, scale(way, s)), far) : pointCore(far);
}
