/** Decimals in which the ends of a range are told to the person. */
const END_DECIMALS = 3;
const HALF_A_DIGIT = 0.5 * 10 ** -END_DECIMALS;

/**
 * A typed number held against its range: itself where it is inside, the end where it is the end as that is shown (a file
 * in inches keeps 9.999999998 mm where 10 is said), null outside. All in one unit.
 */
export const withinRange = (typed: number, min: number, max: number): number | null => {
  if (typed >= min && typed <= max) return typed;
  const end = typed < min ? min : max;
  return Math.abs(typed - end) <= HALF_A_DIGIT + 1e-9 ? end : null;
};
