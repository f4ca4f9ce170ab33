import { expect } from 'vitest';

/** Asks that a reading has a value, and lies no farther from `wanted` than `tolerance`. */
export function expectWithin(found: number | null | undefined, wanted: number, tolerance: number, what = 'reading'): void {
  expect(found, `${what} has a value`).toEqual(expect.any(Number));
  expect(Math.abs(found! - wanted), `${what} ${found}, expected ${wanted}`).toBeLessThanOrEqual(tolerance);
}

/** The same with a tolerance in parts of `wanted`. */
export const expectRelative = (found: number | null | undefined, wanted: number, tolerance: number, what = 'reading'): void =>
  expectWithin(found, wanted, tolerance * Math.abs(wanted), what);
