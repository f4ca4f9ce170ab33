import { shownQuantity, withUnit } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { faultOfNumber, fieldOf, type FieldValue } from './fieldValue';

/** Where a reading is wanted: travel from where the car stands [mm, + bump], roll [degrees], rack [mm]. */
export interface Place {
  readonly travel: FieldValue;
  readonly roll: FieldValue;
  readonly rack: FieldValue;
}

export const RIDE_HEIGHT: Place = { travel: fieldOf(0), roll: fieldOf(0), rack: fieldOf(0) };

const NAMES = { travel: 'bump', roll: 'roll', rack: 'rack' } as const;
export const placeParts = ['travel', 'roll', 'rack'] as const;

/** How the parts of a place are read and typed. */
export const shownPlace = (part: keyof Place, units: ShownUnits) =>
  shownQuantity({ quantity: part === 'roll' ? 'angle' : 'length', decimals: part === 'roll' ? 2 : 1 }, units);

/** "ride height", "bump +20.0 mm, roll +1.00°". */
export const placeWords = (place: Place, units: ShownUnits): string => {
  const moved = placeParts.flatMap((part) => {
    const { value } = place[part];
    if (value === 0) return [];
    if (value === null) return [`${NAMES[part]} ?`];
    const shown = shownPlace(part, units);
    return [`${NAMES[part]} ${withUnit(shown.formatChange(value), shown.unit)}`];
  });
  return moved.length === 0 ? 'ride height' : moved.join(', ');
};

/** What is wrong with a place; null where nothing is. */
export const faultOfPlace = (place: Place): string | null => {
  const wrong = placeParts.find((part) => faultOfNumber(place[part]) !== null);
  return wrong === undefined ? null : `${NAMES[wrong]}: ${faultOfNumber(place[wrong]) ?? ''}`;
};
