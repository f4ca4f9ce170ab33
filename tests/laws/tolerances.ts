import type { Quantity } from '../../geometry/index';

/** Tolerances of the laws, each with its unit and reason. */

/** What the solvers promise of every constraint of every solved pose [mm]. */
export const CLOSURE_MM = 1e-9;
/** Two routes to one pose: the closure, times how far a weakly held knuckle moves for it [mm]. */
export const SAME_POSE_MM = 1e-7;
/** Contact centres on the plane they stand on [mm]. */
export const ON_GROUND_MM = 1e-8;
/** Toe after a reset against the toe that was asked for [deg]. */
export const TOE_DEG = 1e-9;
/** A fold found by two continuations of different step lies within this [mm]. */
export const FOLD_MM = 0.01;

/** How far two computations of one reading may differ by quantity: what tables of independent solvers agree to. */
export interface Agreement {
  /** [mm, rad, N …] */
  readonly absolute: number;
  readonly relative: number;
}

/** Readings agree with an independent solver's within these [mm, rad]; angles 1e-7 deg, rates 1e-5 with a floor of 1e-8. */
export const AGREEMENT: Readonly<Record<Quantity, Agreement>> = {
  length: { absolute: 1e-6, relative: 0 },
  angle: { absolute: 1.7e-9, relative: 0 },
  anglePerLength: { absolute: 1.7e-10, relative: 1e-5 },
  anglePerAngle: { absolute: 1e-8, relative: 1e-5 },
  ratio: { absolute: 1e-8, relative: 1e-5 },
  percent: { absolute: 1e-8, relative: 1e-5 },
  force: { absolute: 1e-3, relative: 1e-5 },
  forcePerLength: { absolute: 1e-5, relative: 1e-5 },
  momentPerAngle: { absolute: 1e-3, relative: 1e-5 },
  frequency: { absolute: 1e-6, relative: 1e-5 },
  anglePerG: { absolute: 1e-8, relative: 1e-5 },
  forcePerG: { absolute: 1e-3, relative: 1e-5 },
};

/** Instant centres, roll centres and what is made of them: 1e-3 mm, or 1e-5 relative where they are far away. */
export const CENTRE_AGREEMENT: Agreement = { absolute: 1e-3, relative: 1e-5 };
export const CENTRES: readonly string[] = [
  'frontViewInstantCentre',
  'sideViewInstantCentre',
  'swingArmLength',
  'sideViewSwingArmLength',
  'rollCentreHeight',
  'rollCentreOffset',
  'rollAxisToCentreOfGravity',
  'rollAxisInclination',
  'turningCircle',
  'mechanicalTrail',
  'scrubRadius',
  'trailAtWheelCentre',
  'scrubAtWheelCentre',
];
