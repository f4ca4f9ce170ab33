import { toDegrees, toRadians, type AxleDocument, type Triple, type Vector } from '../../geometry/index';

/**
 * Double wishbone of G. Rill, A. Arrieta Castro, Road Vehicle Dynamics: Fundamentals and Modeling with MATLAB, 2nd ed., CRC Press
 * 2020, suspension chapter, listing of double-wishbone kinematics: coordinates and closed-form algorithm read in public copies
 * (oxmo141/FYP-Vehicle-Dynamics-Optimisation, SimonFrankTUM/AdvancedDualTrackModel); that the listing is the book's is from
 * memory. The figures that the cases give are what the published formulas yield, computed for the catalogue of check values.
 * x forward, y left, z up, origin at axle height, left wheel; metres there, mm here.
 */
export const RILL = {
  wheelCentre: [0, 768, 0],
  lowerRearBody: [-251, 320, -80],
  lowerFrontBody: [148, 320, -94],
  lowerKnuckle: [13, 737, -145],
  upperRearBody: [-105, 435, 196],
  upperFrontBody: [122, 435, 230],
  upperKnuckle: [-25, 680, 162],
  rackEnd: [-150, 380, -38],
  tieRodEnd: [-137, 690, -88],
} as const satisfies Record<string, Triple>;

/** The source's wheel axis is [0, 1, −tan] with "tan" the camber of 0.8 deg in radians, so that the angle is its arctangent. */
export const RILL_CAMBER_DEG = toDegrees(Math.atan(toRadians(0.8)));

export const RILL_AXLE: AxleDocument = {
  layout: 'multi-link',
  points: RILL,
  rods: {
    lowerRear: ['lowerRearBody', 'lowerKnuckle'],
    lowerFront: ['lowerFrontBody', 'lowerKnuckle'],
    upperRear: ['upperRearBody', 'upperKnuckle'],
    upperFront: ['upperFrontBody', 'upperKnuckle'],
    tieRod: ['rackEnd', 'tieRodEnd'],
  },
  wheel: { camber: RILL_CAMBER_DEG, toe: 0, loadedRadius: 285 },
  steering: { axis: [0, 1, 0], travel: 74.5, rod: 'tieRod' },
};

/** Steering axis of the source: from the lower to the upper ball joint. */
export const RILL_KINGPIN: { readonly point: Vector; readonly direction: Vector } = {
  point: RILL.lowerKnuckle,
  direction: [
    RILL.upperKnuckle[0] - RILL.lowerKnuckle[0],
    RILL.upperKnuckle[1] - RILL.lowerKnuckle[1],
    RILL.upperKnuckle[2] - RILL.lowerKnuckle[2],
  ],
};
