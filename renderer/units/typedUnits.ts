/** A unit that may stand behind a typed number, and what the number then is in the field's own unit. */
export interface TypedUnit {
  /** as it is said to the person who typed another */
  readonly name: string;
  /** every way to write it, in small letters */
  readonly written: readonly string[];
  readonly toField: (number: number) => number;
}

const MM_PER_INCH = 25.4;
/** International pound, and the force of its weight; exact. Source: NIST Special Publication 811, appendix B.8. */
const KG_PER_POUND = 0.45359237;
const NEWTON_PER_POUND = 4.4482216152605;
const NEWTON_PER_MM_IN_LB_PER_IN = NEWTON_PER_POUND / MM_PER_INCH;
const MINUTES_PER_DEGREE = 60;
const DEGREES_PER_HOUR = 30;

const same = (number: number): number => number;
/** Sums and quotients of typed decimals end in 0.30000000000000004: nine decimals are kept. */
const clean = (number: number): number => Number(number.toFixed(9));

const MM = ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'];
const NEWTON_PER_MM = ['n/mm'];
const POUNDS_PER_INCH = ['lb/in', 'lbs/in', 'lbf/in', '#/in'];
const NEWTON = ['n', 'newton', 'newtons'];
const POUNDS = ['lb', 'lbs', 'lbf', 'pound', 'pounds'];
const INCH = ['in', 'inch', 'inches', '"', '″', 'in.'];

const MINUTE_SIGNS = ['′', "'", '’', 'min'];
const DEGREE_SIGNS = ['°', 'deg'];

const MINUTES: TypedUnit = {
  name: '′',
  written: [...MINUTE_SIGNS, 'minute', 'minutes'],
  toField: (number) => clean(number / MINUTES_PER_DEGREE),
};

const NEWTON_METRE_PER_POUND_FOOT = (NEWTON_PER_POUND * MM_PER_INCH * 12) / 1000;
const NEWTON_METRE = ['n·m', 'nm', 'n m'];
const POUND_FOOT = ['lb·ft', 'lbft', 'lb ft', 'lbf·ft', 'ft·lb', 'ft lb'];

/** Degrees, or minutes, over a length: "°/10 mm". The lengths are those of the field, so that no conversion is hidden in it. */
const ratesPer = (length: string): Readonly<Record<string, readonly TypedUnit[]>> => {
  const [degrees, minutes] = [`°/${length}`, `′/${length}`];
  const spaces = length.includes(' ') ? [length, length.replace(' ', '')] : [length];
  const written = (signs: readonly string[]) => signs.flatMap((sign) => spaces.map((one) => `${sign}/${one}`));
  return {
    [degrees]: [
      { name: degrees, written: written(DEGREE_SIGNS), toField: same },
      { name: minutes, written: written(MINUTE_SIGNS), toField: (number) => clean(number / MINUTES_PER_DEGREE) },
    ],
    [minutes]: [
      { name: minutes, written: written(MINUTE_SIGNS), toField: same },
      { name: degrees, written: written(DEGREE_SIGNS), toField: (number) => clean(number * MINUTES_PER_DEGREE) },
    ],
  };
};

const UNITS: Readonly<Record<string, readonly TypedUnit[]>> = {
  ...ratesPer('10 mm'),
  ...ratesPer('in'),
  mm: [
    { name: 'mm', written: MM, toField: same },
    { name: 'in', written: INCH, toField: (number) => clean(number * MM_PER_INCH) },
  ],
  in: [
    { name: 'in', written: INCH, toField: same },
    { name: 'mm', written: MM, toField: (number) => clean(number / MM_PER_INCH) },
  ],
  '°': [{ name: '°', written: [...DEGREE_SIGNS, 'degree', 'degrees'], toField: same }, MINUTES],
  'N·m': [
    { name: 'N·m', written: NEWTON_METRE, toField: same },
    { name: 'lb·ft', written: POUND_FOOT, toField: (number) => clean(number * NEWTON_METRE_PER_POUND_FOOT) },
  ],
  'lb·ft': [
    { name: 'lb·ft', written: POUND_FOOT, toField: same },
    { name: 'N·m', written: NEWTON_METRE, toField: (number) => clean(number / NEWTON_METRE_PER_POUND_FOOT) },
  ],
  'N/mm': [
    { name: 'N/mm', written: NEWTON_PER_MM, toField: same },
    { name: 'lb/in', written: POUNDS_PER_INCH, toField: (number) => clean(number * NEWTON_PER_MM_IN_LB_PER_IN) },
  ],
  'lb/in': [
    { name: 'lb/in', written: POUNDS_PER_INCH, toField: same },
    { name: 'N/mm', written: NEWTON_PER_MM, toField: (number) => clean(number / NEWTON_PER_MM_IN_LB_PER_IN) },
  ],
  N: [
    { name: 'N', written: NEWTON, toField: same },
    { name: 'kN', written: ['kn', 'kilonewton', 'kilonewtons'], toField: (number) => clean(number * 1000) },
    { name: 'lb', written: POUNDS, toField: (number) => clean(number * NEWTON_PER_POUND) },
  ],
  lb: [
    { name: 'lb', written: POUNDS, toField: same },
    { name: 'N', written: NEWTON, toField: (number) => clean(number / NEWTON_PER_POUND) },
  ],
  kg: [
    { name: 'kg', written: ['kg'], toField: same },
    { name: 'lb', written: POUNDS, toField: (number) => clean(number * KG_PER_POUND) },
  ],
  /** a part of one, as the file has it */
  share: [{ name: '%', written: ['%'], toField: (number) => clean(number / 100) }],
  turn: [{ name: 'turns', written: ['turn', 'turns'], toField: same }],
};

/** The units of a field's own quantity, its own first. A unit that is not known takes itself alone. */
export const unitsOf = (unit: string): readonly TypedUnit[] =>
  UNITS[unit] ?? (unit === '' ? [] : [{ name: unit, written: [unit.toLowerCase()], toField: same }]);

/**
 * Hours of a clock face, for a part whose hole is read like one.
 * @param setting - what stands in the field for a clock angle as the fitter sees it, both in degrees
 */
export const hoursOf = (setting: (seenDeg: number) => number): TypedUnit => ({
  name: 'o’clock',
  written: ['h', 'o’clock', "o'clock", 'oclock'],
  toField: (hours) => clean(setting(hours * DEGREES_PER_HOUR)),
});
