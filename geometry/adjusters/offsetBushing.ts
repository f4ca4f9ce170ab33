import { turnAbout } from '../core/rotation';
import { scale, type Vector } from '../core/vector';
import type { AdjusterOf } from './adjustment';

/**
 * The hole of an offset bushing sits `offset` from the bore's centre, in the direction of twelve turned by clock about the axis.
 * Nothing guides it, so it moves its centre in both directions of the plane: a bushing turned for caster moves toe too.
 * @param clock - [rad], right hand about the axis
 */
export const offsetBushingShift = (bushing: AdjusterOf<'offset-bushing'>, clock: number): Vector =>
  scale(turnAbout(bushing.twelve, bushing.axis, clock), bushing.offset);
