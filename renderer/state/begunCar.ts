import type { CarDocument, LengthUnit } from '../../geometry/index';

/** The layouts that a new axle can begin with. */
export const LAYOUT_NAMES = ['strut', 'wishbones', 'trailingArm', 'fiveRods'] as const;
export type LayoutName = (typeof LAYOUT_NAMES)[number];

/** What a new car begins with. Lengths in mm. */
export interface NewCarChoice {
  readonly name: string;
  readonly unit: LengthUnit;
  readonly front: LayoutName | null;
  readonly rear: LayoutName | null;
  readonly wheelbase: number;
  readonly frontTrack: number;
  readonly rearTrack: number;
  readonly loadedRadius: number;
}

/** A car that was begun in this window, until another one is open. */
export interface BegunCar {
  /** as it was last begun, or an axle of it begun anew */
  readonly choice: NewCarChoice;
  /** every document that it began with: a point that still stands where one of them has it was not measured yet */
  readonly documents: readonly CarDocument[];
}

/** What of an axle was given so far; null is not given yet. Nothing stands here that nobody measured. */
export interface GivenAxle {
  /** left side, X forward, Y left, Z up [mm] */
  readonly points: Readonly<Record<string, GivenPoint>>;
  /** [degrees], as the car stood when it was measured */
  readonly camber: number | null;
  readonly toe: number | null;
  /** [mm] */
  readonly loadedRadius: number | null;
}

export type GivenPoint = readonly [number | null, number | null, number | null];

/** A new car whose points are still being given: no car yet, and on no bench. */
export interface UnfinishedCar {
  readonly choice: NewCarChoice;
  readonly front: GivenAxle | null;
  readonly rear: GivenAxle | null;
}
