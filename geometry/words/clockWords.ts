import type { SeenFrom, Triple } from '../car/document';
import { SIGHT } from './sight';

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Whether the fitter looks against the axis, so that clocks run the other way; along it where the file does not say. */
const looksAgainst = (axis: Triple, seenFrom: SeenFrom | undefined): boolean =>
  seenFrom !== undefined && dot(SIGHT[seenFrom], axis) < 0;

const FULL = 360;
const DEGREES_PER_HOUR = 30;

/**
 * The clock angle as the fitter sees it [degrees, clockwise from 12]: on the left by the sense of the axis, on the right
 * mirrored and seen from the same place.
 */
export const clockSeen = (clockDeg: number, axis: Triple, seenFrom: SeenFrom | undefined, side: 'left' | 'right'): number => {
  const reversed = looksAgainst(axis, seenFrom) !== (side === 'right');
  const seen = reversed ? FULL - clockDeg : clockDeg;
  return ((seen % FULL) + FULL) % FULL;
};

/** "11 o’clock", "half past 4": a clock angle as seen, to the nearest half hour. */
export const hourWords = (seenDeg: number): string => {
  const halves = Math.round(seenDeg / (DEGREES_PER_HOUR / 2)) % 24;
  const hour = Math.floor(halves / 2) || 12;
  return halves % 2 === 0 ? `${hour} o’clock` : `half past ${hour}`;
};

/** From where the clock is read, in words. */
export const seenFromWords = (seenFrom: SeenFrom | undefined): string => {
  switch (seenFrom) {
    case undefined:
      return 'looking along its axis';
    case 'above':
    case 'below':
      return `seen from ${seenFrom}`;
    case 'front':
      return 'seen from the front';
    case 'rear':
      return 'seen from behind';
    case 'inboard':
    case 'outboard':
      return `seen from ${seenFrom}`;
  }
};
