import { distance, type Vector } from '../core/vector';
import type { AdjusterOf } from './adjustment';

/**
 * The camber bolt: the knuckle turns against the strut about the other bolt by asin(throw · sin(clock) ÷ bolt spacing).
 * The wheel's camber changes by less, for the strut swings the other way about its top.
 * @param clock - [rad]
 * @returns [rad, right hand about the clamp's axis]
 */
export const clampAngle = (
  clamp: AdjusterOf<'clamp-eccentric'>,
  clock: number,
  points: Readonly<Record<string, Vector>>,
): number => Math.asin((clamp.throw * Math.sin(clock)) / distance(points[clamp.pivot], points[clamp.bolt]));
