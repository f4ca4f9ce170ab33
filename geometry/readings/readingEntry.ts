/** What a reading measures; from it follow its unit on the way out and how a row is converted. */
export type Quantity =
  | 'angle'
  | 'length'
  | 'anglePerLength'
  | 'anglePerAngle'
  | 'anglePerG'
  | 'ratio'
  | 'percent'
  | 'force'
  | 'forcePerLength'
  | 'forcePerG'
  | 'momentPerAngle'
  | 'frequency';

/** Whose reading it is: of one wheel's corner, of an axle, of the car as a whole. */
export type ReadingOwner = 'corner' | 'axle' | 'car';

export type Component = 'x' | 'y' | 'z';

/** One reading as the screen, the command line's help and the documents describe it. */
export interface ReadingEntry {
  /** the name in a row, in JSON and in a CSV header */
  readonly key: string;
  readonly of: ReadingOwner;
  /** short name in field words */
  readonly name: string;
  readonly quantity: Quantity;
  /** what a positive value means; empty where there is no sense to it */
  readonly plus: string;
  /** what it is, one sentence */
  readonly meaning: string;
  /** why one cares, one sentence */
  readonly why: string;
  /** the definition in plain text, with the symbols of `SYMBOLS` */
  readonly formula: string;
  readonly source: string;
  /** decimals in a table, in contract units */
  readonly decimals: number;
  /** heading under which it is printed */
  readonly group: string;
  /** present on a reading that is a point: the coordinates it has, in this order */
  readonly components?: readonly Component[];
}

/** What the letters in the formulas stand for. */
export const SYMBOLS =
  "s: unit vector along the spindle, outboard. W: wheel centre. C: contact centre. n: the ground's unit normal. " +
  "f = unit(s × n): heading of the wheel. l = n × f. X̂: the car's X laid into the ground; Ŷ = n × X̂. " +
  'k: unit vector along the steering axis, upward. G: where that axis meets the ground plane through C. ' +
  'v, ω: velocity of C fixed to the knuckle and angular velocity of the knuckle, both per mm of wheel travel.';

/** Where definitions come from. No page of these books was open when they were written down: hence "from memory". */
export const SOURCES = {
  terms: 'ISO 8855:2011 and SAE J670:2022 for term and sign, from memory',
  construction: 'textbook construction (Milliken & Milliken 1995; Dixon 2009), from memory',
  anti: 'textbook construction (Gillespie 1992; Milliken & Milliken 1995), from memory',
  kinematics: 'rigid-body kinematics; the term as in Reimpell, from memory',
  transfer: 'steady-state load transfer as in Milliken & Milliken 1995, from memory',
  practice: 'common practice, no source',
  own: 'own definition',
} as const;
