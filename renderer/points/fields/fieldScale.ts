import { shownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import type { FieldUnit } from './fieldWords';

/** How the numbers of a field stand in it. */
export interface FieldScale {
  /** what stands in the field is the file's number times this */
  readonly factor: number;
  /** what stands behind the field */
  readonly unit: string;
  /** the unit that a bare number is taken in; empty where none may be typed */
  readonly typedIn: string;
}

const WORDS: Readonly<Partial<Record<FieldUnit, string>>> = { share: '0 … 1', turns: 'turns', direction: 'x, y, z' };
const TYPED: Readonly<Partial<Record<FieldUnit, string>>> = { '°': '°', turns: 'turn' };

/**
 * Lengths and rates are read and typed in the units that the person chose; what else a file holds has one unit only.
 * @param mm - millimetres in one unit of length of the file
 */
export const fieldScale = (unit: FieldUnit, mm: number, units: ShownUnits): FieldScale => {
  if (unit === 'length') {
    const shown = shownQuantity({ quantity: 'length', decimals: 3 }, units);
    return { factor: shown.toShown(mm), unit: shown.unit, typedIn: shown.unit };
  }
  if (unit === 'N/mm') {
    const shown = shownQuantity({ quantity: 'forcePerLength', decimals: 3 }, units);
    return { factor: shown.toShown(1), unit: shown.unit, typedIn: shown.unit };
  }
  return { factor: 1, unit: WORDS[unit] ?? unit, typedIn: TYPED[unit] ?? '' };
};
