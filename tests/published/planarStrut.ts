import type { AxleDocument, Triple } from '../../geometry/index';

/**
 * The planar strut of P. E. Nikravesh, Planar Multibody Dynamics, 2nd ed., CRC Press 2018 (textbook program DAP_BC, version
 * 12/2018, models MP_A, MP_B, MP_C), read in the public repository CangiGia/PMD; the book's pages were not seen. Metres there.
 * Drawn out along X to a corner in three dimensions: the tie rod is a copy of the arm 120 mm behind it, so that the knuckle
 * moves as the plane figure does.
 */
export const STRUT_TOP: Triple = [0, 410, 830];
export const ARM_PIVOT = [120, 290] as const;
export const TIE_ROD_AT = -120;

export interface PlanarDesign {
  readonly wheelCentre: Triple;
  readonly ballJoint: Triple;
  readonly strutFoot: Triple;
}

/** Row 0 of the stored run MP_C. */
export const AT_ROW_0: PlanarDesign = {
  wheelCentre: [0, 583.982837365458, 358.510141852537],
  ballJoint: [0, 569.9999930531561, 289.9209293994265],
  strutFoot: [0, 467.3477653804108, 637.429951086379],
};

/** The same mechanism with its wheel centre 0.30 m up; computed for the catalogue of check values. */
export const AT_300: PlanarDesign = {
  wheelCentre: [0, 582.447268574, 300],
  ballJoint: [0, 566.234018284, 231.903520539],
  strutFoot: [0, 474.97456949, 582.576748781],
};

export function planarStrutAxle(
  { wheelCentre, ballJoint, strutFoot }: PlanarDesign,
  rest: Partial<AxleDocument> = {},
): AxleDocument {
  const [armY, armZ] = ARM_PIVOT;
  return {
    layout: 'strut',
    points: {
      armFront: [150, armY, armZ],
      armRear: [-150, armY, armZ],
      ballJoint,
      strutTop: STRUT_TOP,
      strutFoot,
      rackEnd: [TIE_ROD_AT, armY, armZ],
      tieRodEnd: [TIE_ROD_AT, ballJoint[1], ballJoint[2]],
      wheelCentre,
    },
    // 0.30 m is the unloaded tyre of the source's model
    wheel: { camber: 0, toe: 0, loadedRadius: 300 },
    steering: { axis: [0, 1, 0] },
    ...rest,
  };
}
