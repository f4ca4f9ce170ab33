import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from '../core/angle';
import { readingsOf } from './catalogue';
import type { Quantity, ReadingEntry, ReadingOwner } from './readingEntry';

/** A reading's value: a number, the coordinates of a point, or null where there is none. */
export type ReadingValue = number | readonly number[] | null;
export type ReadingValues = Readonly<Record<string, ReadingValue>>;

/** By how much a quantity is multiplied on its way from radians to degrees. */
function factorOf(quantity: Quantity): number {
  switch (quantity) {
    case 'angle':
    case 'anglePerLength':
    case 'anglePerG':
      return DEGREES_PER_RADIAN;
    case 'momentPerAngle':
      return RADIANS_PER_DEGREE;
    case 'length':
    case 'anglePerAngle':
    case 'ratio':
    case 'percent':
    case 'force':
    case 'forcePerLength':
    case 'forcePerG':
    case 'frequency':
      return 1;
  }
}

/** −0 becomes 0: a sign without a size is no answer. */
const withoutNegativeZero = (value: number): number => (value === 0 ? 0 : value);

/**
 * One value in contract units: degrees where the engine has radians, everything else as it is.
 *
 * @param value - in mm, N, kg and radians
 */
export function valueInContractUnits(value: ReadingValue, quantity: Quantity): ReadingValue {
  if (value === null) return null;
  const factor = factorOf(quantity);
  if (typeof value === 'number') return withoutNegativeZero(value * factor);
  return value.map((component) => withoutNegativeZero(component * factor));
}

/**
 * Readings of one owner in contract units, keyed in catalogue order.
 *
 * @param readings - as the engine returns them, angles in radians
 */
export function readingsInContractUnits(readings: object, owner: ReadingOwner): Record<string, ReadingValue> {
  const values = readings as ReadingValues;
  const converted: Record<string, ReadingValue> = {};
  for (const entry of readingsOf(owner)) converted[entry.key] = valueInContractUnits(values[entry.key] ?? null, entry.quantity);
  return converted;
}

/** An angle that was asked for in degrees and went through radians, given back as it was asked: −3, not −3.0000000000000004. */
const askedDegrees = (radians: number): number => withoutNegativeZero(Number((radians * DEGREES_PER_RADIAN).toPrecision(15)));

/** What of an engine row changes on the way out. */
interface RowInRadians {
  /** radians */
  readonly roll: number;
  readonly left: object;
  readonly right: object;
  readonly both: object;
}

export interface ConvertedReadings {
  readonly left: Record<string, ReadingValue>;
  readonly right: Record<string, ReadingValue>;
  readonly both: Record<string, ReadingValue>;
}

/**
 * A row of an axle as it leaves the program: roll and every angle in degrees, −0 as 0, readings in catalogue order.
 * Which reading is an angle is asked of the catalogue. Everything else in the row is passed on as it is.
 */
export function inContractUnits<Row extends RowInRadians>(
  row: Row,
): Omit<Row, 'left' | 'right' | 'both' | 'roll'> & ConvertedReadings & { readonly roll: number } {
  return {
    ...row,
    roll: askedDegrees(row.roll),
    left: readingsInContractUnits(row.left, 'corner'),
    right: readingsInContractUnits(row.right, 'corner'),
    both: readingsInContractUnits(row.both, 'axle'),
  };
}

/**
 * This setup less that one, reading by reading: components of points one by one, null where either has no value.
 * Both in the same units.
 */
export function differenceOfReadings(these: ReadingValues, those: ReadingValues): Record<string, ReadingValue> {
  const difference: Record<string, ReadingValue> = {};
  for (const [key, value] of Object.entries(these)) difference[key] = differenceOfValues(value, those[key] ?? null);
  return difference;
}

function differenceOfValues(value: ReadingValue, other: ReadingValue): ReadingValue {
  if (value === null || other === null) return null;
  if (typeof value === 'number') return typeof other === 'number' ? withoutNegativeZero(value - other) : null;
  if (typeof other === 'number') return null;
  return value.map((component, index) => withoutNegativeZero(component - (other[index] ?? component)));
}

/** Dotted names of the single numbers of a reading: "camber", or "wheelCentre.x" and so on for a point. */
export const numberNamesOf = (entry: ReadingEntry): readonly string[] =>
  entry.components ? entry.components.map((component) => `${entry.key}.${component}`) : [entry.key];

/** The single numbers of a reading, one per name of `numberNamesOf`; null each where there is no value. */
export function numbersOf(entry: ReadingEntry, value: ReadingValue): readonly (number | null)[] {
  if (entry.components)
    return entry.components.map((_, index) => (Array.isArray(value) ? ((value[index] as number | undefined) ?? null) : null));
  return [typeof value === 'number' ? value : null];
}
