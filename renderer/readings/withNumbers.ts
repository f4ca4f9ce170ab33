import { findReading, numbersOf } from '../../geometry/index';
import { shownReading } from '../units/shownQuantity';
import { STANDARD_UNITS } from '../units/unitChoice';
import { AXLE_NUMBERS } from './numbers/axleNumbers';
import { CAR_NUMBERS } from './numbers/carNumbers';
import type { Shown } from './numbers/cornerFacts';
import { STEERING_NUMBERS } from './numbers/steeringNumbers';
import { TRAVEL_NUMBERS } from './numbers/travelNumbers';
import { WHEEL_NUMBERS } from './numbers/wheelNumbers';
import type { WrittenFormula } from './numbers/writing';

const NUMBERS: Readonly<Record<string, (shown: Shown) => WrittenFormula | null>> = {
  ...WHEEL_NUMBERS,
  ...TRAVEL_NUMBERS,
  ...AXLE_NUMBERS,
  ...STEERING_NUMBERS,
  ...CAR_NUMBERS,
};

/** A formula with this car's numbers and what it makes: the reading, as the table has it in mm, degrees and N. */
export interface WithNumbers extends WrittenFormula {
  readonly value: string;
  readonly unit: string;
}

/**
 * A reading's formula with the numbers of the car as it stands, in mm, degrees and N, of the left-hand wheel where there is
 * one of each side.
 * @returns null where the reading has no value
 */
export const withNumbers = (key: string, shown: Shown): WithNumbers | null => {
  const entry = findReading(key);
  if (!entry) return null;
  const owner = entry.of === 'corner' ? 'left' : entry.of === 'axle' ? 'both' : 'wholeCar';
  const values = numbersOf(entry, shown.row[owner][key] ?? null);
  if (values.some((value) => value === null)) return null;
  const written = NUMBERS[key]?.(shown) ?? null;
  if (!written) return null;
  const reading = shownReading(entry, STANDARD_UNITS);
  const texts = values.map((value) => reading.format(value ?? 0));
  return { ...written, value: texts.length > 1 ? `(${texts.join('; ')})` : (texts[0] ?? ''), unit: reading.unit };
};
