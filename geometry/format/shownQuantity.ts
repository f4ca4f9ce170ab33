import { toDegrees, toRadians } from '../core/angle';
import type { Quantity, ReadingEntry } from '../readings/readingEntry';
import { formatNumber } from './format';
import type { ShownUnits, UnitChoice } from './unitChoice';

/** How one quantity is read and typed. Values outside are in contract units: mm, degrees, N and what is made of them. */
export interface ShownQuantity {
  readonly unit: string;
  readonly toShown: (value: number) => number;
  readonly fromShown: (shown: number) => number;
  /** a value as it stands on the screen, without its unit */
  readonly format: (value: number) => string;
  /** the same with a plus before what is over zero */
  readonly formatChange: (value: number) => string;
}

export interface Measured {
  readonly quantity: Quantity;
  /** decimals in contract units */
  readonly decimals: number;
  /** the angle is toe, which can be read as a length across the rim */
  readonly isToe?: boolean;
}

const MM_PER_INCH = 25.4;
/** International pound-force, exact. Source: NIST Special Publication 811, appendix B.8. */
const NEWTON_PER_POUND = 4.4482216152605;
const NEWTON_METRE_PER_POUND_FOOT = NEWTON_PER_POUND * MM_PER_INCH * 12 * 1e-3;
const MINUTES_PER_DEGREE = 60;

interface Scale {
  readonly unit: string;
  readonly factor: number;
  /** decimals more than in contract units, or fewer */
  readonly more: number;
}
const plain = (unit: string): Scale => ({ unit, factor: 1, more: 0 });
const ratePer = ({ unit, factor }: Pick<Scale, 'unit' | 'factor'>, angle: UnitChoice['angle']): Scale =>
  angle === 'minutes'
    ? { unit: `′/${unit}`, factor: factor * MINUTES_PER_DEGREE, more: -2 }
    : { unit: `°/${unit}`, factor, more: -1 };

/**
 * Rates of an angle are read over 10 mm, or over an inch: over one millimetre the first digits would all be noughts. Where angles
 * are read in minutes they are minutes, with decimals that are finer than those of the degrees. An angle per angle is a ratio, and
 * the same in either.
 */
const scaleOf = (quantity: Quantity, { length, angle, force }: UnitChoice): Scale => {
  const inches = length === 'in';
  const pounds = force === 'pound';
  switch (quantity) {
    case 'angle':
      return plain('°');
    case 'length':
      return inches ? { unit: 'in', factor: 1 / MM_PER_INCH, more: 2 } : plain('mm');
    case 'anglePerLength':
      return ratePer(inches ? { unit: 'in', factor: MM_PER_INCH } : { unit: '10 mm', factor: 10 }, angle);
    case 'anglePerAngle':
      return plain('°/°');
    case 'anglePerG':
      return plain('°/g');
    case 'ratio':
      return plain('');
    case 'percent':
      return plain('%');
    case 'force':
      return pounds ? { unit: 'lb', factor: 1 / NEWTON_PER_POUND, more: 1 } : plain('N');
    case 'forcePerLength':
      return pounds ? { unit: 'lb/in', factor: MM_PER_INCH / NEWTON_PER_POUND, more: 0 } : plain('N/mm');
    case 'forcePerG':
      return pounds ? { unit: 'lb/g', factor: 1 / NEWTON_PER_POUND, more: 1 } : plain('N/g');
    case 'momentPerAngle':
      return pounds ? { unit: 'lb·ft/°', factor: 1 / NEWTON_METRE_PER_POUND_FOOT, more: 0 } : plain('N·m/°');
    case 'frequency':
      return plain('Hz');
  }
};

const signed = (text: string): string => (/^[−0.,°′]*$/.test(text) || text.startsWith('−') ? text : `+${text}`);

const scaled = ({ unit, factor, more }: Scale, decimals: number): ShownQuantity => {
  const shownDecimals = Math.max(0, decimals + more);
  const format = (value: number) => formatNumber(value * factor, shownDecimals);
  return {
    unit,
    toShown: (value) => value * factor,
    fromShown: (shown) => shown / factor,
    format,
    formatChange: (value) => signed(format(value)),
  };
};

/** −1°28′, with as many decimals of a minute as the degrees would have beyond the second. */
const inMinutes = (decimals: number): ShownQuantity => {
  const minuteDecimals = Math.max(0, decimals - 2);
  const places = minuteDecimals === 0 ? 2 : 3 + minuteDecimals;
  const format = (value: number) => {
    const minutes = Number((Math.abs(value) * MINUTES_PER_DEGREE).toFixed(minuteDecimals));
    const degrees = Math.floor(minutes / MINUTES_PER_DEGREE);
    const rest = (minutes - degrees * MINUTES_PER_DEGREE).toFixed(minuteDecimals).padStart(places, '0');
    return `${value < 0 && minutes !== 0 ? '−' : ''}${formatNumber(degrees, 0)}°${rest}′`;
  };
  return {
    unit: '',
    toShown: (value) => value,
    fromShown: (shown) => shown,
    format,
    formatChange: (value) => signed(format(value)),
  };
};

/** Difference of the rim's front and rear edge from a line along the car [mm]: diameter × sin of the angle. */
const acrossRim = (diameter: number, units: UnitChoice): ShownQuantity => {
  const lengths = scaled(scaleOf('length', units), 2);
  const toLength = (angle: number) => diameter * Math.sin(toRadians(angle));
  return {
    unit: lengths.unit,
    toShown: (value) => lengths.toShown(toLength(value)),
    fromShown: (shown) => toDegrees(Math.asin(lengths.fromShown(shown) / diameter)),
    format: (value) => lengths.format(toLength(value)),
    formatChange: (value) => lengths.formatChange(toLength(value)),
  };
};

/** The way in which a quantity is read and typed under a choice of units. */
export const shownQuantity = ({ quantity, decimals, isToe }: Measured, units: ShownUnits): ShownQuantity => {
  if (quantity !== 'angle') return scaled(scaleOf(quantity, units), decimals);
  if (isToe && units.toe === 'rim' && units.toeDiameter !== null) return acrossRim(units.toeDiameter, units);
  return units.angle === 'minutes' ? inMinutes(decimals) : scaled(scaleOf('angle', units), decimals);
};

/** Readings that are toe: of one wheel, or of both (then the two lengths together, to a part in a million). */
const TOE_READINGS: ReadonlySet<string> = new Set(['toe', 'totalToe']);

/** The same for a reading of the catalogue. */
export const shownReading = (entry: Pick<ReadingEntry, 'key' | 'quantity' | 'decimals'>, units: ShownUnits): ShownQuantity =>
  shownQuantity({ quantity: entry.quantity, decimals: entry.decimals, isToe: TOE_READINGS.has(entry.key) }, units);

/** A number with its unit behind it, as one says it: "1.2°", "5.0 mm", "0.96". */
export const withUnit = (text: string, unit: string): string =>
  unit === '' || unit === '°' ? `${text}${unit}` : `${text} ${unit}`;
