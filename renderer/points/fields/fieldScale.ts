import type { ReadingEntry } from '../../../geometry/index';
import { shownQuantity, shownReading } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import type { FieldUnit } from './fieldWords';

/** How a number of the file stands in its field, and back. */
export interface LeafScale {
  readonly toShown: (inFile: number) => number;
  readonly fromShown: (shown: number) => number;
}

/** How the numbers of a field stand in it, and in what unit. */
export interface FieldScale extends LeafScale {
  /** what stands behind the field */
  readonly unit: string;
  /** the unit that a bare number is taken in; empty where none may be typed */
  readonly typedIn: string;
}

/** What stands in the field is the file's number times this. */
export const timesFile = (factor: number): LeafScale => ({
  toShown: (inFile) => inFile * factor,
  fromShown: (shown) => shown / factor,
});

const WORDS: Readonly<Partial<Record<FieldUnit, string>>> = { share: '0 … 1', turns: 'turns', direction: 'x, y, z' };
const TYPED: Readonly<Partial<Record<FieldUnit, string>>> = {
  '°': '°',
  turns: 'turn',
  kg: 'kg',
  share: 'share',
  'N/mm²': 'N/mm²',
};

/**
 * Lengths and rates are read and typed in the units that the person chose; what else a file holds has one unit only.
 * @param mm - millimetres in one unit of length of the file
 */
export const fieldScale = (unit: FieldUnit, mm: number, units: ShownUnits): FieldScale => {
  if (unit === 'length') {
    const shown = shownQuantity({ quantity: 'length', decimals: 3 }, units);
    return { ...timesFile(shown.toShown(mm)), unit: shown.unit, typedIn: shown.unit };
  }
  if (unit === 'N/mm') {
    const shown = shownQuantity({ quantity: 'forcePerLength', decimals: 3 }, units);
    return { ...timesFile(shown.toShown(1)), unit: shown.unit, typedIn: shown.unit };
  }
  return { ...timesFile(1), unit: WORDS[unit] ?? unit, typedIn: TYPED[unit] ?? '' };
};

/**
 * The scale of a number about a reading, as of a limit: in the unit that the reading is read in. The file has lengths in its own
 * unit, all else in the reading's. Angles are in decimal degrees, as in every field of the file.
 * @param mm - millimetres in one unit of length of the file
 * @param units - with the diameter that toe is read at on the axle that the number is of; null: toe stays an angle
 */
export const readingScale = (entry: ReadingEntry, mm: number, units: ShownUnits): FieldScale => {
  const shown = shownReading(entry, { ...units, angle: 'degrees' });
  const per = entry.quantity === 'length' ? mm : 1;
  return {
    toShown: (inFile) => shown.toShown(inFile * per),
    fromShown: (value) => shown.fromShown(value) / per,
    unit: shown.unit,
    typedIn: shown.unit,
  };
};
