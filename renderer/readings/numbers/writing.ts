import { formatNumber } from '../../units/format';

/** A number on the way to the reading, written out: its letters, the expression, and what that makes. */
export interface Step {
  readonly name: string;
  readonly expression: string;
  readonly value: string;
  readonly unit: string;
}

/**
 * A formula with numbers put in. What is written is all that the result is made of: letters are spelled ·, ×, √ and |…|, angles
 * are in degrees, or in degrees and minutes, vectors in brackets.
 */
export interface WrittenFormula {
  /** where numbers come from that are not on the screen: "rate from the twist" */
  readonly from?: string;
  readonly steps: readonly Step[];
  /** makes the reading, in the units that it is shown in */
  readonly expression: string;
}

/** Decimals of a unit vector, of a point in mm, and of rates per mm. */
export const FINE = 6;
export const POINT = 3;
export const RATE = 9;

/** Noughts at the end left away: of a decimal number, or of minutes. */
export const withoutNoughts = (text: string): string => (text.includes('.') ? text.replace(/\.?0+(?=′?$)/, '') : text);

/** In brackets where its sign would stand behind another. */
export const inBrackets = (text: string): string => (text.startsWith('−') ? `(${text})` : text);

const short = (value: number, decimals: number): string => withoutNoughts(formatNumber(value, decimals));

/** A number without a unit, with as many decimals as it needs, at most so many. */
export const num = (value: number, decimals: number): string => inBrackets(short(value, decimals));

export const vec = (a: readonly number[], decimals: number): string => `(${a.map((one) => short(one, decimals)).join('; ')})`;

export const formula = (expression: string, more: Partial<WrittenFormula> = {}): WrittenFormula => ({
  steps: [],
  ...more,
  expression,
});

/** What rates are worked out from. */
export const FROM_TWIST = 'rate from the twist: v, ω';
