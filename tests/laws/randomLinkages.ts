import type { AxleDocument, Triple } from '../../geometry/car/document';
import type { Draw } from './draw';

/** The five kinds of corner that the laws are tried on. */
export const LAYOUTS = [
  'strut',
  'five rods',
  'three rods and a trailing arm',
  'steered double wishbone',
  'steered five rods',
] as const;
export type LayoutName = (typeof LAYOUTS)[number];

type Points = Readonly<Record<string, Triple>>;

/** What an axle's links are, before springs, adjusters and a right-hand side of its own. */
export type LinkageDocument = Pick<AxleDocument, 'layout' | 'points' | 'rods' | 'trailingArm' | 'steering'>;

/** Invented left-hand corners, wheel centre at x = 0, y about 760, ground at 0 [mm]. */
const BASES: Readonly<Record<LayoutName, Points>> = {
  strut: {
    armFront: [30, 385, 195],
    armRear: [-270, 390, 200],
    ballJoint: [5, 715, 185],
    strutTop: [-45, 595, 820],
    strutFoot: [-8, 668, 360],
    clampUpper: [-10, 690, 440],
    clampLower: [-5, 695, 375],
    rackEnd: [-125, 350, 230],
    tieRodEnd: [-130, 690, 228],
    wheelCentre: [0, 760, 310],
  },
  'five rods': {
    upperFrontBody: [130, 460, 450],
    upperFrontKnuckle: [30, 690, 460],
    upperRearBody: [-160, 450, 440],
    upperRearKnuckle: [-40, 685, 455],
    lowerFrontBody: [230, 420, 220],
    lowerFrontKnuckle: [60, 710, 200],
    lowerRearBody: [-110, 350, 205],
    lowerRearKnuckle: [-40, 715, 190],
    toeBody: [-190, 380, 240],
    toeKnuckle: [-150, 700, 235],
    wheelCentre: [0, 760, 310],
  },
  'three rods and a trailing arm': {
    armPivot: [430, 560, 290],
    upperBody: [-35, 390, 430],
    upperKnuckle: [-20, 680, 440],
    springArmBody: [-130, 320, 205],
    springArmKnuckle: [-70, 690, 190],
    toeBody: [95, 400, 205],
    toeKnuckle: [105, 690, 215],
    wheelCentre: [0, 760, 310],
  },
  'steered double wishbone': {
    upperFront: [95, 450, 560],
    upperRear: [-170, 455, 550],
    upperBall: [-25, 690, 570],
    lowerFront: [150, 400, 200],
    lowerRear: [-210, 405, 195],
    lowerBall: [10, 735, 190],
    rackEnd: [-120, 390, 250],
    tieRodEnd: [-130, 720, 255],
    wheelCentre: [0, 760, 310],
  },
  'steered five rods': {
    upperFrontBody: [150, 460, 560],
    upperFrontKnuckle: [25, 690, 572],
    upperRearBody: [-190, 470, 552],
    upperRearKnuckle: [-30, 685, 566],
    lowerFrontBody: [240, 410, 210],
    lowerFrontKnuckle: [45, 735, 188],
    lowerRearBody: [-230, 395, 198],
    lowerRearKnuckle: [-45, 738, 186],
    rackEnd: [-128, 385, 258],
    tieRodEnd: [-145, 715, 262],
    wheelCentre: [0, 760, 310],
  },
};

const RODS: Readonly<Record<LayoutName, Readonly<Record<string, readonly [string, string]>> | undefined>> = {
  strut: undefined,
  'five rods': {
    upperFront: ['upperFrontBody', 'upperFrontKnuckle'],
    upperRear: ['upperRearBody', 'upperRearKnuckle'],
    lowerFront: ['lowerFrontBody', 'lowerFrontKnuckle'],
    lowerRear: ['lowerRearBody', 'lowerRearKnuckle'],
    toe: ['toeBody', 'toeKnuckle'],
  },
  'three rods and a trailing arm': {
    upper: ['upperBody', 'upperKnuckle'],
    springArm: ['springArmBody', 'springArmKnuckle'],
    toe: ['toeBody', 'toeKnuckle'],
  },
  'steered double wishbone': {
    upperFront: ['upperFront', 'upperBall'],
    upperRear: ['upperRear', 'upperBall'],
    lowerFront: ['lowerFront', 'lowerBall'],
    lowerRear: ['lowerRear', 'lowerBall'],
    tieRod: ['rackEnd', 'tieRodEnd'],
  },
  'steered five rods': {
    upperFront: ['upperFrontBody', 'upperFrontKnuckle'],
    upperRear: ['upperRearBody', 'upperRearKnuckle'],
    lowerFront: ['lowerFrontBody', 'lowerFrontKnuckle'],
    lowerRear: ['lowerRearBody', 'lowerRearKnuckle'],
    tieRod: ['rackEnd', 'tieRodEnd'],
  },
};

const STEERED: readonly LayoutName[] = ['strut', 'steered double wishbone', 'steered five rods'];

/**
 * Links of one axle.
 * @param scatter - how far each coordinate of each point may lie from an ordinary car's [mm]
 * @param x - of the axle [mm]
 */
export function randomLinkage(draw: Draw, name: LayoutName, scatter: number, x: number): LinkageDocument {
  const points: Record<string, Triple> = {};
  for (const [point, at] of Object.entries(BASES[name])) points[point] = draw.near([at[0] + x, at[1], at[2]], scatter);
  const rods = RODS[name];
  const steering = {
    axis: draw.chance(0.4) ? ([0, 1, 0] as const) : draw.leaning([0, 1, 0], 0.15),
    travel: draw.chance(0.5) ? draw.between(50, 80) : ([-draw.between(50, 80), draw.between(50, 80)] as const),
    ...(draw.chance(0.8) ? { perTurn: draw.between(40, 60) } : {}),
    ...(name === 'strut' ? {} : { rod: 'tieRod' }),
  };
  // a strut without a rack has a tie rod to the body all the same
  const isSteered = STEERED.includes(name) && !(name === 'strut' && draw.chance(0.1));
  return {
    layout: name === 'strut' ? 'strut' : 'multi-link',
    points,
    ...(rods === undefined ? {} : { rods }),
    ...(name === 'three rods and a trailing arm'
      ? { trailingArm: { pivot: 'armPivot', axis: draw.leaning([0, 1, 0], 0.2) } }
      : {}),
    ...(isSteered ? { steering } : {}),
  };
}
