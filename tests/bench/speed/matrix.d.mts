import type { Points } from './kernel.mjs';
/** Writes 4 numbers a point: wheel centre x, y, camber, toe. */
export function matrixStrut(points: Points, out: Float64Array): void;
export function matrixFiveRods(points: Points, out: Float64Array): void;
