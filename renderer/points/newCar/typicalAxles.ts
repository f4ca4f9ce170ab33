import type { AxleDocument, Triple } from '../../../geometry/index';
import type { LayoutName } from '../../state/begunCar';

export interface TypicalAxle {
  readonly title: string;
  readonly made: string;
  readonly layout: AxleDocument['layout'];
  /** left side, mm, as on an invented car: wheel centre at x = 0 */
  readonly points: Readonly<Record<string, Triple>>;
  readonly rods?: AxleDocument['rods'];
  readonly trailingArm?: AxleDocument['trailingArm'];
  readonly spring: AxleDocument['spring'];
  /** the rod that a rack would move */
  readonly steered: string;
}

/** Loaded radius that the points below stand on [mm]. */
export const TYPICAL_RADIUS = 310;

/**
 * Invented pickup points of the four layouts, to be written over by those that were measured. They stand on wheels of
 * `TYPICAL_RADIUS`; the heights of the inner ends were chosen so that camber gain and bump steer are those of an ordinary car.
 */
export const TYPICAL_AXLES: Readonly<Record<LayoutName, TypicalAxle>> = {
  strut: {
    title: 'Strut',
    made: 'lower arm, strut, tie rod',
    layout: 'strut',
    points: {
      armFront: [15, 360, 212],
      armRear: [-290, 370, 214],
      ballJoint: [8, 724, 195],
      strutTop: [-38, 577, 830],
      strutFoot: [-2, 634, 400],
      clampUpper: [-4, 656, 430],
      clampLower: [-2, 662, 375],
      rackEnd: [-140, 340, 257],
      tieRodEnd: [-124, 697, 246],
      wheelCentre: [0, 776, 310],
    },
    spring: { seat: 'strut' },
    steered: 'tieRod',
  },
  wishbones: {
    title: 'Double wishbone',
    made: 'five rods, outer ends shared',
    layout: 'multi-link',
    points: {
      lowerFrontBody: [150, 360, 205],
      lowerRearBody: [-150, 360, 205],
      lowerBall: [8, 720, 195],
      upperFrontBody: [100, 430, 430],
      upperRearBody: [-150, 430, 425],
      upperBall: [-26, 665, 455],
      rackEnd: [-130, 345, 233],
      tieRodEnd: [-124, 690, 228],
      wheelCentre: [0, 770, 310],
      springUpper: [30, 560, 620],
      springLower: [10, 620, 205],
    },
    rods: {
      lowerFront: ['lowerFrontBody', 'lowerBall'],
      lowerRear: ['lowerRearBody', 'lowerBall'],
      upperFront: ['upperFrontBody', 'upperBall'],
      upperRear: ['upperRearBody', 'upperBall'],
      tieRod: ['rackEnd', 'tieRodEnd'],
    },
    spring: { upper: 'springUpper', lower: 'springLower', lowerOn: 'lowerFront' },
    steered: 'tieRod',
  },
  trailingArm: {
    title: 'Three rods and a blade arm',
    made: 'trailing arm counts as two rods',
    layout: 'multi-link',
    points: {
      armPivot: [445, 592, 332],
      upperBody: [19, 439, 411],
      upperKnuckle: [-5, 706, 428],
      springArmBody: [-73, 258, 225],
      springArmKnuckle: [-84, 708, 206],
      toeBody: [54, 420, 209],
      toeKnuckle: [92, 696, 206],
      wheelCentre: [0, 766, 310],
      springUpper: [-80, 502, 470],
      springLower: [-96, 536, 224],
    },
    rods: {
      upper: ['upperBody', 'upperKnuckle'],
      springArm: ['springArmBody', 'springArmKnuckle'],
      toe: ['toeBody', 'toeKnuckle'],
    },
    trailingArm: { pivot: 'armPivot', axis: [0, 1, 0] },
    spring: { upper: 'springUpper', lower: 'springLower', lowerOn: 'springArm' },
    steered: 'toe',
  },
  fiveRods: {
    title: 'Five rods',
    made: 'virtual steering axis',
    layout: 'multi-link',
    points: {
      trackBody: [-34, 385, 197],
      trackKnuckle: [-8, 716, 190],
      tensionBody: [346, 397, 207],
      tensionKnuckle: [43, 706, 190],
      upperFrontBody: [156, 440, 620],
      upperFrontKnuckle: [-17, 648, 605],
      upperRearBody: [-163, 440, 560],
      upperRearKnuckle: [-69, 648, 603],
      rackEnd: [97, 380, 242],
      tieRodEnd: [114, 726, 240],
      wheelCentre: [0, 782, 310],
      springUpper: [-50, 525, 640],
      springLower: [-20, 610, 235],
    },
    rods: {
      track: ['trackBody', 'trackKnuckle'],
      tension: ['tensionBody', 'tensionKnuckle'],
      upperFront: ['upperFrontBody', 'upperFrontKnuckle'],
      upperRear: ['upperRearBody', 'upperRearKnuckle'],
      tieRod: ['rackEnd', 'tieRodEnd'],
    },
    spring: { upper: 'springUpper', lower: 'springLower', lowerOn: 'track' },
    steered: 'tieRod',
  },
};
