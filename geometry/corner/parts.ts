import type { Vector } from '../core/vector';
import type { Carrier } from './carrier';

/** A spring or damper between two points, or along the strut's axis. */
export type Span =
  | { readonly between: 'points'; readonly upper: Vector; readonly lower: Carrier; readonly designLength: number }
  | { readonly between: 'strut'; readonly designLength: number };

/** One arm of an anti-roll bar with its link, in the left-hand frame [mm]. */
export interface BarArm {
  readonly pivot: Vector;
  readonly axis: Vector;
  readonly armEnd: Vector;
  readonly link: Carrier;
  /** centre to centre, turnbuckle included [mm] */
  readonly linkLength: number;
  /** of the two ways in which the link can meet the arm: the design's */
  readonly branch: 1 | -1;
  /** radius of the arm's end about the bar's centre line [mm] */
  readonly radius: number;
}

export interface CornerParts {
  readonly spring: Span | null;
  readonly damper: Span | null;
  readonly bar: BarArm | null;
}
