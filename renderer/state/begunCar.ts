import type { CarDocument, LengthUnit } from '../../geometry/index';

/** The layouts that a new axle can begin with. */
export type LayoutName = 'strut' | 'wishbones' | 'trailingArm' | 'fiveRods';

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
