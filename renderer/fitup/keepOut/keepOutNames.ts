import type { AxleName, SideName } from '../../../geometry/index';
import type { TemplateAsked } from './templateAsked';
import { axisOf } from './templateAsked';

interface Worked {
  readonly axles: readonly AxleName[];
  readonly sides: readonly SideName[];
}

const plain = (value: number): string => String(Number(value.toFixed(3)) + 0);

/** Which wheels a space was worked out for, as they are read: "front left", "front left and right". */
export const subjectOf = ({ axles, sides }: Worked): string => `${axles.join(' and ')} ${sides.join(' and ')}`;

const sideName = (sides: readonly SideName[]): string => (sides.length > 1 ? 'both' : (sides[0] ?? ''));

/** What a file of the space is called, without its ending. @param car - its name */
export const keepOutName = (car: string, { axles, sides }: Worked): string =>
  `${car} keep-out ${axles.join(' ')} ${sideName(sides)}`;

/**
 * The plane of a template in a file's name: "x 0" of one square to an axis, "at 0 480 330 along 1 0 0" of any other [mm].
 * @param numbers - its point and normal
 */
const planeName = ({ way }: TemplateAsked, numbers: readonly number[]): string => {
  if (way !== 'own') return `${'xyz'[axisOf(way)] ?? ''} ${plain(numbers[axisOf(way)] ?? 0)}`;
  const [point, normal] = [numbers.slice(0, 3), numbers.slice(3)].map((three) => three.map(plain).join(' '));
  return `at ${point} along ${normal}`;
};

/** What a file of templates is called, without its ending. @param sides - that are in the file */
export const templateName = (
  car: string,
  axle: AxleName,
  sides: readonly SideName[],
  asked: TemplateAsked,
  numbers: readonly number[],
): string => `${car} template ${axle} ${sideName(sides)} ${planeName(asked, numbers)}`;
