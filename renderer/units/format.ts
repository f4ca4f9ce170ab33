import type { Quantity } from '../../geometry/index';

const MINUS = '−';

/** A number with a true minus and a fixed count of decimals; what rounds to zero has no sign. */
export const formatNumber = (value: number, decimals: number): string => {
  const digits = Math.abs(value).toFixed(decimals);
  const grouped = digits.replace(/^\d{4,}/, (whole) => whole.replace(/\B(?=(\d{3})+$)/g, ','));
  return value < 0 && Number(digits) !== 0 ? `${MINUS}${grouped}` : grouped;
};

/** The same with a plus before what is over zero. */
export const formatSigned = (value: number, decimals: number): string => {
  const text = formatNumber(value, decimals);
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text;
};

/** As many decimals as the number needs, at most `most`: 330, 2.5, 0.125. */
export const formatShort = (value: number, most = 3): string => formatNumber(value, decimalsOf(value, most));

const decimalsOf = (value: number, most: number): number => {
  for (let decimals = 0; decimals < most; decimals += 1)
    if (Math.abs(value - Number(value.toFixed(decimals))) < 1e-9) return decimals;
  return most;
};

/** How a quantity is shown on the screen: its unit, and by how much contract values are multiplied. */
export interface ShownUnit {
  readonly unit: string;
  readonly factor: number;
  /** decimals more (or fewer) than the catalogue asks for in contract units */
  readonly decimals: number;
}

const plain = (unit: string): ShownUnit => ({ unit, factor: 1, decimals: 0 });

/** Rates of an angle are read over 10 mm: over one the first digits would all be noughts. */
export const shownUnit = (quantity: Quantity): ShownUnit => {
  switch (quantity) {
    case 'angle':
      return plain('°');
    case 'length':
      return plain('mm');
    case 'anglePerLength':
      return { unit: '°/10 mm', factor: 10, decimals: -1 };
    case 'anglePerAngle':
      return plain('°/°');
    case 'anglePerG':
      return plain('°/g');
    case 'ratio':
      return plain('');
    case 'percent':
      return plain('%');
    case 'force':
      return plain('N');
    case 'forcePerLength':
      return plain('N/mm');
    case 'forcePerG':
      return plain('N/g');
    case 'momentPerAngle':
      return plain('N·m/°');
    case 'frequency':
      return plain('Hz');
  }
};

interface Shown {
  readonly quantity: Quantity;
  readonly decimals: number;
}

const decimalsShown = (entry: Shown, unit: ShownUnit): number => Math.max(0, entry.decimals + unit.decimals);

/** A reading's number as it stands in the table. @param value - in contract units */
export const formatReading = (entry: Shown, value: number): string => {
  const unit = shownUnit(entry.quantity);
  return formatNumber(value * unit.factor, decimalsShown(entry, unit));
};

/** A change of a reading, with its sign. */
export const formatChange = (entry: Shown, value: number): string => {
  const unit = shownUnit(entry.quantity);
  return formatSigned(value * unit.factor, decimalsShown(entry, unit));
};
