import type { Vector } from '../../core/vector';
import type { Core } from '../distance/core';
import type { MeshSurface } from './mesh';

/**
 * A solid of a part at design, in the corner's left-hand frame [mm].
 * - `round`: one or more convex cores, each with a radius around it: sphere, capsule, cylinder, box, tyre, and the skin of a rim.
 * - `mesh`: triangles, to the triangle.
 */
export type Solid = RoundSolid | MeshSolid;

export interface RoundSolid {
  readonly kind: 'round';
  readonly cores: readonly Core[];
  /** radius around each core [mm] */
  readonly rounds: readonly number[];
  /** a thin skin, as the inside of a rim: it can be cut, and has no depth */
  readonly isSkin: boolean;
  /** holds what the solid sweeps */
  readonly ball: Ball;
  readonly spin: Spin | null;
  readonly cover: Cover | null;
}

export interface MeshSolid {
  readonly kind: 'mesh';
  readonly mesh: MeshSurface;
  /** holds what the solid sweeps */
  readonly ball: Ball;
  readonly spin: Spin | null;
}

/** A ball that holds the solid [mm]. */
export interface Ball {
  readonly centre: Vector;
  readonly radius: number;
}

/** The solid is what its shape sweeps when it turns about an axis; null where that is the shape itself. */
export interface Spin {
  readonly at: Vector;
  /** unit vector */
  readonly axis: Vector;
}

/**
 * A ring's hull, which is convex and a body of revolution itself: what is nearest to the hull outside of the bore is nearest to the
 * ring, and no turn need be looked for.
 */
export interface Cover {
  readonly solid: RoundSolid;
  /** radius about the spin axis within which the hull is not the ring [mm] */
  readonly bore: number;
}
