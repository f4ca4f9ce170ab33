import {
  designPoints,
  type AxleName,
  type CarDocument,
  type KeepOut,
  type SideName,
  type TemplatePaper,
  type Triple,
} from '../../../geometry/index';
import type { FitUpOrder } from '../../compute/fitup/fitUpOrder';
import { memoLast } from '../../compute/memoLast';

/** How the plane of a template lies: square to one of the car's axes, or as its numbers say. */
export type PlaneWay = 'front' | 'side' | 'top' | 'own';

/** The plane of a template as it is asked for, y outboard as on the left, and the paper [mm]. */
export interface TemplateAsked {
  readonly way: PlaneWay;
  /** along the axis that the plane is square to; null: through the wheel centre */
  readonly at: number | null;
  readonly point: Triple;
  readonly normal: Triple;
  readonly paper: TemplatePaper;
}

export const TEMPLATE_BEGIN: TemplateAsked = { way: 'front', at: null, point: [0, 0, 0], normal: [1, 0, 0], paper: 'A4' };

export const PLANE_WAYS: readonly { readonly name: PlaneWay; readonly label: string }[] = [
  { name: 'front', label: 'Across the car' },
  { name: 'side', label: 'Along the car' },
  { name: 'top', label: 'Level' },
  { name: 'own', label: 'Any' },
];

/** Which coordinate says where a plane is. */
export const axisOf = (way: PlaneWay): 0 | 1 | 2 => (way === 'front' ? 0 : way === 'side' ? 1 : 2);

/** Read from the front, from outboard, from above. */
const NORMALS: Readonly<Record<Exclude<PlaneWay, 'own'>, Triple>> = { front: [1, 0, 0], side: [0, 1, 0], top: [0, 0, 1] };

/** Whose points say where the plane is: the left wheel's, but where the right one is asked about alone. */
export const sideOfPlane = (sides: readonly SideName[]): SideName => (sides.includes('left') ? 'left' : (sides[0] ?? 'left'));

/** The points of a wheel at design, those of a right one as a left one has them: planes are given so [mm]. */
export const planePoints = (document: CarDocument, axle: AxleName, side: SideName): Readonly<Record<string, Triple>> =>
  Object.fromEntries(
    Object.entries(designPoints(document, axle, side)).map(([name, [x, y, z]]) => [name, [x, side === 'left' ? y : -y + 0, z]]),
  );

/** Point and normal as on the left. @param centre - of the wheel, as a left one has it [mm] */
export const planeNumbers = ({ way, at, point, normal }: TemplateAsked, centre: Triple): readonly number[] => {
  if (way === 'own') return [...point, ...normal];
  const axis = axisOf(way);
  return [...centre.map((value, index) => (index === axis && at !== null ? at : value)), ...NORMALS[way]];
};

/** The same object while nothing of it changed: the section follows the plane. @param numbers - of the plane, as text */
export const templateOrder = memoLast(
  (
    document: CarDocument,
    made: KeepOut,
    setups: string,
    axle: AxleName,
    sides: 'both' | SideName,
    numbers: string,
    paper: TemplatePaper,
  ) =>
    ({
      job: 'template',
      document,
      made,
      setups: JSON.parse(setups) as readonly string[],
      axle,
      sides: sides === 'both' ? ['left', 'right'] : [sides],
      plane: JSON.parse(numbers) as readonly number[],
      paper,
    }) satisfies FitUpOrder,
  4,
);
