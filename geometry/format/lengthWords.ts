import { formatShort } from './format';
import { STANDARD_UNITS, type UnitChoice } from './unitChoice';

const MM_PER_INCH = 25.4;
/** An inch needs two decimals more to say the same. */
const MORE_DECIMALS = 2;

/** A length in words: "5.2 mm", "0.205 in". @param decimals - at most so many, in mm */
export const lengthWords = (mm: number, decimals: number, units: UnitChoice = STANDARD_UNITS): string =>
  units.length === 'in' ? `${formatShort(mm / MM_PER_INCH, decimals + MORE_DECIMALS)} in` : `${formatShort(mm, decimals)} mm`;
