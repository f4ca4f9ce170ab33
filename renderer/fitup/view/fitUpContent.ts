import type { AxleDocument, AxleName, DrawnPart, PlacedAxle, SideName, Vector } from '../../../geometry/index';
import type { Verdict } from '../../compute/limits';
import type { OverlayItem } from '../../viewport/overlayTypes';

/** From where the picture is seen: across what is chosen, or square to the car. */
export type FitUpViewName = 'gap' | 'corner' | 'front' | 'side' | 'top';

/** The gap of a pair, in the car's frame [mm]. */
export interface DrawnGap {
  readonly points: readonly [Vector, Vector];
  /** with its unit: "4.0 mm", or that they cut */
  readonly figure: string;
  readonly needs: string;
  readonly cuts: boolean;
  readonly verdict: Verdict;
}

/** A force, in the car's frame. */
export interface DrawnForce {
  readonly at: Vector;
  /** its way and how long its arrow is drawn [mm] */
  readonly arrow: Vector;
  readonly kind: 'given' | 'pull' | 'push' | 'plain';
  readonly label: string;
}

/** What the picture of fit-up shows. Everything stands in the car's frame [mm]. */
export interface FitUpContent {
  readonly axleName: AxleName;
  readonly axle: AxleDocument;
  readonly mm: number;
  readonly placed: PlacedAxle;
  readonly rack: number;
  readonly side: SideName;
  readonly parts: readonly DrawnPart[];
  /** names of the parts that it is about, the one under the hand first */
  readonly about: readonly string[];
  readonly gap: DrawnGap | null;
  readonly forces: readonly DrawnForce[];
  readonly items: readonly OverlayItem[];
  /** where to look at, and how much of it is worth seeing [mm] */
  readonly focus: {
    readonly at: Vector;
    readonly reach: number;
    /** the eye looks square to it, where it is free to the gap */
    readonly square: Vector | null;
    /** or from there */
    readonly from?: Vector;
  } | null;
  readonly view: FitUpViewName;
  /** another one: the eye is aimed anew */
  readonly subject: string;
}
