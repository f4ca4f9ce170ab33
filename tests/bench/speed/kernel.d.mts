export interface Points {
  readonly n: number;
  readonly idx: Int32Array;
  readonly t: Float64Array;
  readonly rk: Float64Array;
}
export const POINTS: Readonly<Record<'A' | 'B' | 'G', Points>>;
/** @returns a function that writes 12 numbers a point: wheel centre x, y, camber, toe, and their rates by travel and by rack */
export function kernelStrut(rates: boolean, predict: boolean): (points: Points, out: Float64Array) => void;
export function kernelFiveRods(rates: boolean, predict: boolean): (points: Points, out: Float64Array) => void;
