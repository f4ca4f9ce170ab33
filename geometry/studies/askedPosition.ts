import { toRadians } from '../core/angle';
import type { Position } from '../readings/rows';

/** A position as it is asked for: travel from standing and rack in mm, roll in degrees. */
export interface AskedPosition {
  readonly travel?: number | { readonly left: number; readonly right: number } | undefined;
  readonly rack?: number | undefined;
  readonly roll?: number | undefined;
}

/** Degrees of roll past this are not a car on its wheels. */
const STEEPEST_ROLL = 45;

/** The engine's position for one that is asked for, or why it is no position. */
export function positionOf(asked: AskedPosition): Position | { readonly fault: string } {
  const { travel = 0, rack = 0, roll = 0 } = asked;
  if (Math.abs(roll) > STEEPEST_ROLL) return { fault: `roll ${roll} is past ±${STEEPEST_ROLL} degrees` };
  if (roll === 0) return { travel, rack, roll: 0 };
  if (typeof travel === 'number') return { travel, rack, roll: toRadians(roll) };
  if (travel.left !== travel.right) return { fault: 'with roll, travel is heave: left and right cannot differ' };
  return { travel: travel.left, rack, roll: toRadians(roll) };
}

/** Evenly spaced inputs with both ends included, to the bit: the middle of −60…60 is 0. */
export function stepsBetween(from: number, to: number, steps: number): number[] {
  if (steps === 1) return [from];
  const last = steps - 1;
  return Array.from({ length: steps }, (_, i) => {
    if (i === last) return to;
    const input = (from * (last - i) + to * i) / last;
    return input === 0 ? 0 : input;
  });
}
