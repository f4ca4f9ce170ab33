import { findReading, numbersOf } from '../../geometry/index';
import { shownReading } from '../units/shownQuantity';
import type { ShownUnits } from '../units/unitChoice';
import { AXLE_NUMBERS } from './numbers/axleNumbers';
import { CAR_NUMBERS } from './numbers/carNumbers';
import type { Shown } from './numbers/cornerFacts';
import { STEERING_NUMBERS } from './numbers/steeringNumbers';
import { TRAVEL_NUMBERS } from './numbers/travelNumbers';
import { unitWriter } from './numbers/unitWriter';
import { WHEEL_NUMBERS } from './numbers/wheelNumbers';
import type { WrittenFormula } from './numbers/writing';

const NUMBERS: Readonly<Record<string, (shown: Shown) => WrittenFormula | null>> = {
  ...WHEEL_NUMBERS,
  ...TRAVEL_NUMBERS,
  ...AXLE_NUMBERS,
  ...STEERING_NUMBERS,
  ...CAR_NUMBERS,
};

/** A formula with this car's numbers and what it makes: the reading, as the table has it. */
export interface WithNumbers extends WrittenFormula {
  readonly value: string;
  readonly unit: string;
}

/** @property side - whose reading it is, where each wheel has one of its own */
export type NumbersQuestion = Omit<Shown, 'writer'> & { readonly units: ShownUnits };

/**
 * A reading's formula with the numbers of the car as it stands, in the units chosen.
 * @returns null where the reading has no value
 */
export const withNumbers = (key: string, { units, ...asked }: NumbersQuestion): WithNumbers | null => {
  const entry = findReading(key);
  if (!entry) return null;
  const shown: Shown = { ...asked, writer: unitWriter(units) };
  const owner = entry.of === 'corner' ? shown.side : entry.of === 'axle' ? 'both' : 'wholeCar';
  const values = numbersOf(entry, shown.row[owner][key] ?? null);
  if (values.some((value) => value === null)) return null;
  const written = NUMBERS[key]?.(shown) ?? null;
  if (!written) return null;
  const reading = shownReading(entry, units);
  const texts = values.map((value) => reading.format(value ?? 0));
  return { ...written, value: texts.length > 1 ? `(${texts.join('; ')})` : (texts[0] ?? ''), unit: reading.unit };
};
