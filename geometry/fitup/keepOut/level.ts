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
  /**
   * A triangle whose corners lie in a ball of this radius is nowhere inside the grown space: of a point q of the swept space the
   * squared distance to a point of the triangle is the mean of those to its corners less at most the ball's radius squared.
   */
  readonly safeRadius: number;
}

/** Shares of the bound that go to the play of corners and to positions between those tried. */
const PLAY = 0.08;
const TOLERANCE = 0.1;

/** @param round - every swept body is what a ball of this radius covers that goes over something smaller [mm] */
export function levelOf(grow: number, bound: number, round: number): Level {
  const play = PLAY * bound;
  const tolerance = TOLERANCE * bound;
  const at = grow + bound - play;
  const safeRadius = Math.sqrt(squared(at - tolerance + round) - squared(grow + round));
  return { grow, bound, at, play, tolerance, safeRadius };
}
