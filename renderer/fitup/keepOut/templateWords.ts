import { paperPlane, seenFrom, type Outline, type SideName, type Triple } from '../../../geometry/index';
import { planeOnSide } from '../../compute/fitup/planeOnSide';
import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { planeNumbers, sideOfPlane, type TemplateAsked } from './templateAsked';

/** Lengths with their unit, in the one that is read. */
export const lengthRead = (units: ShownUnits): ((mm: number) => string) => {
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  return (mm) => withUnit(shown.format(mm), shown.unit);
};

/** Width and height of a section in the unit that is read: "754 × 847 mm". */
export const sizeRead = (outlines: readonly Pick<Outline, 'points'>[], units: ShownUnits): string => {
  const shown = shownQuantity({ quantity: 'length', decimals: 0 }, units);
  const all = outlines.flatMap(({ points }) => points);
  const span = (axis: 0 | 1): number =>
    all.reduce((most, point) => Math.max(most, point[axis]), -Infinity) -
    all.reduce((least, point) => Math.min(least, point[axis]), Infinity);
  return withUnit(`${shown.format(span(0))} × ${shown.format(span(1))}`, shown.unit);
};

/** How far a point is off the plane of a template, in the unit that is read. @param off - + in front of it [mm] */
export const offRead = (off: number, units: ShownUnits): string => {
  const shown = shownQuantity({ quantity: 'length', decimals: 1 }, units);
  const far = shown.format(Math.abs(off));
  if (Number(far.replaceAll(',', '')) === 0) return 'on the plane';
  return `${withUnit(far, shown.unit)} ${off > 0 ? 'in front' : 'behind'}`;
};

/**
 * Where a template is read from, in the words of its sheet, and how its plane's numbers count.
 * @param centre - of the wheel, as a left one has it [mm]
 */
export const planeRead = (asked: TemplateAsked, centre: Triple, sides: readonly SideName[]): string => {
  const plane = paperPlane(planeOnSide(planeNumbers(asked, centre), sideOfPlane(sides)));
  const counts =
    sides.length > 1 ? ['given for the left, mirrored to the right'] : asked.way === 'own' ? ['y counted outboard'] : [];
  return [...('fault' in plane ? [] : [seenFrom(plane)]), ...counts].join(', ');
};
