import type { AxleName, SideName } from '../../../geometry/index';
import { planeOnSide } from '../../compute/fitup/planeOnSide';
import type { KeepOutAsked } from '../fitUpQuestion';
import { axisOf, sideOfPlane, type TemplateAsked } from './templateAsked';

interface Worked {
  readonly axles: readonly AxleName[];
  readonly sides: readonly SideName[];
}

interface Swept extends Worked {
  readonly of: KeepOutAsked['of'];
}

const plain = (value: number): string => String(Number(value.toFixed(3)) + 0);

/** Which wheels a space was worked out for, as they are read: "front left", "front left and right". */
export const subjectOf = ({ axles, sides }: Worked): string => `${axles.join(' and ')} ${sides.join(' and ')}`;

const sideName = (sides: readonly SideName[]): string => (sides.length > 1 ? 'both' : (sides[0] ?? ''));

/** What was swept, in a file's name: "all moving", "duct", "tyreFront + 2 more". */
const partsName = (of: KeepOutAsked['of']): string =>
  of === 'all-moving' ? 'all moving' : [...of.slice(0, 1), ...(of.length > 1 ? [`+ ${of.length - 1} more`] : [])].join(' ');

/** What a file of the space is called, without its ending. @param car - its name */
export const keepOutName = (car: string, { axles, sides, of }: Swept): string =>
  `${car} keep-out ${partsName(of)} ${axles.join(' ')} ${sideName(sides)}`;

/**
 * The plane of a template in a file's name: "x 0" of one square to an axis, "at 0 480 330 along 1 0 0" of any other [mm].
 * @param numbers - its point and normal in the car
 */
const planeName = ({ way }: TemplateAsked, numbers: readonly number[]): string => {
  if (way !== 'own') return `${'xyz'[axisOf(way)] ?? ''} ${plain(numbers[axisOf(way)] ?? 0)}`;
  const [point, normal] = [numbers.slice(0, 3), numbers.slice(3)].map((three) => three.map(plain).join(' '));
  return `at ${point} along ${normal}`;
};

/**
 * What a file of templates is called, without its ending: the plane is that of the sheet in it, of the left one where there are two.
 * @param worked - with the sides that are in the file
 * @param numbers - point and normal as on the left
 */
export const templateName = (
  car: string,
  { axles, sides, of }: Swept,
  asked: TemplateAsked,
  numbers: readonly number[],
): string =>
  `${car} template ${partsName(of)} ${axles.join(' ')} ${sideName(sides)} ${planeName(asked, planeOnSide(numbers, sideOfPlane(sides)))}`;
