/** A derivative from values on both sides, and how sure it is. */
export interface Derivative {
  readonly value: number;
  /** how much the last extrapolation still changed */
  readonly unsure: number;
}

/** Where the values are wanted, in units of the step: three central differences, each half as wide as the one before. */
export const OFFSETS = [1, -1, 0.5, -0.5, 0.25, -0.25] as const;

/**
 * Central differences with Richardson's extrapolation, twice: the error goes with the sixth power of the step.
 * @param values - at `OFFSETS` times the step
 */
export function derivative(values: readonly number[], step: number): Derivative {
  const wide = (values[0] - values[1]) / (2 * step);
  const half = (values[2] - values[3]) / step;
  const quarter = (values[4] - values[5]) / (0.5 * step);
  const first = (4 * half - wide) / 3;
  const second = (4 * quarter - half) / 3;
  const value = (16 * second - first) / 15;
  return { value, unsure: Math.abs(value - second) };
}
