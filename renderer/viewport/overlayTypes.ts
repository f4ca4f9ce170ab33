import type { Point } from './points';

/** A line over the picture: points in the ground's frame. */
export interface OverlayLine {
  readonly kind: 'line';
  readonly className: string;
  readonly points: readonly Point[];
}
/** The outline of all points together, as the eye sees them. */
export interface OverlayHull {
  readonly kind: 'hull';
  readonly className: string;
  readonly points: readonly Point[];
}
/** A line to a mark that may lie out of view: then it ends in an arrow at the edge, with how much further it is. */
export interface OverlayRay {
  readonly kind: 'ray';
  readonly className: string;
  readonly from: Point;
  readonly to: Point;
  /** name of what it leads to; null for a line of construction beside another */
  readonly text: string | null;
  /** drawn only where its end is out of view: the end has a mark of its own */
  readonly onlyFar?: true;
}
/** A mark of constant size on the screen. */
export interface OverlayMark {
  readonly kind: 'mark';
  readonly className: string;
  readonly shape: 'ring' | 'cross' | 'diamond' | 'target' | 'square' | 'dot' | 'disc';
  readonly at: Point;
}
/** Words with a thin leader; `reach` is where they would best stand from the point [px]. */
export interface OverlayLabel {
  readonly kind: 'label';
  readonly text: string;
  readonly at: Point;
  readonly reach: readonly [number, number];
  readonly strong?: true;
  /** written on a plate of card: it may come to stand over parts */
  readonly plated?: true;
  /** `left` or `right`: written in the colour of its side */
  readonly className?: string;
}
/** A line of a grid across the view, its number where it leaves it. */
export interface OverlayScale {
  readonly kind: 'scale';
  readonly className: string;
  readonly points: readonly [Point, Point];
  readonly text: string;
  readonly edge: 'left' | 'bottom';
}
export type OverlayItem = OverlayScale | OverlayLine | OverlayHull | OverlayRay | OverlayMark | OverlayLabel;
