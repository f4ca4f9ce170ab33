import { squared } from './squared';

/** What a keep-out is built to. All lengths in mm. */
export interface Level {
  /** radius and margin that the swept space is grown by */
  readonly grow: number;
  /** the surface is nowhere farther out than this from the grown space */
  readonly bound: number;
  /** distance at which its corners are put, and by how much they may be farther out */
  readonly at: number;
  readonly play: number;
  /** how much nearer a position between those tried may be */
  readonly tolerance: number;
}

/** Shares of the bound: where corners are put, their play, and what positions between those tried may take off. */
const AT = 0.8;
const PLAY = 0.06;
const TOLERANCE = 0.1;

export const levelOf = (grow: number, bound: number): Level => ({
  grow,
  bound,
  at: grow + AT * bound,
  play: PLAY * bound,
  tolerance: TOLERANCE * bound,
});

/**
 * A triangle whose corners are at the level and lie in a ball of this radius is nowhere inside the grown space: of a point q of the
 * swept space the squared distance to a point of the triangle is the mean of those to its corners less at most the ball's radius
 * squared [mm].
 * @param round - what is swept is what a ball of this radius covers that goes over something smaller [mm]
 */
export const safeRadius = ({ grow, at, tolerance }: Level, round: number): number =>
  Math.sqrt(squared(at - tolerance + round) - squared(grow + round));
