/** A unit that may stand behind a typed number, and what the number then is in the field's own unit. */
export interface TypedUnit {
  /** as it is said to the person who typed another */
  readonly name: string;
  /** every way to write it, in small letters */
  readonly written: readonly string[];
  readonly toField: (number: number) => number;
}

const MM_PER_INCH = 25.4;
const MINUTES_PER_DEGREE = 60;
const DEGREES_PER_HOUR = 30;

const same = (number: number): number => number;
/** Sums and quotients of typed decimals end in 0.30000000000000004: nine decimals are kept. */
const clean = (number: number): number => Number(number.toFixed(9));

const MM = ['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'];
const INCH = ['in', 'inch', 'inches', '"', '″', 'in.'];

const MINUTES: TypedUnit = {
  name: '′',
  written: ['′', "'", '’', 'min', 'minute', 'minutes'],
  toField: (number) => clean(number / MINUTES_PER_DEGREE),
};

const UNITS: Readonly<Record<string, readonly TypedUnit[]>> = {
  mm: [
    { name: 'mm', written: MM, toField: same },
    { name: 'in', written: INCH, toField: (number) => clean(number * MM_PER_INCH) },
  ],
  in: [
    { name: 'in', written: INCH, toField: same },
    { name: 'mm', written: MM, toField: (number) => clean(number / MM_PER_INCH) },
  ],
  '°': [{ name: '°', written: ['°', 'deg', 'degree', 'degrees'], toField: same }, MINUTES],
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
