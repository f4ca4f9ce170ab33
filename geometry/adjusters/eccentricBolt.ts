import { scale, type Vector } from '../core/vector';
import type { AdjusterOf } from './adjustment';

/**
 * A cam between fences moves the bolt along its slot by throw · sin(clock).
 * @param clock - [rad], 0 with the cam's centre line across the slot
 */
export const eccentricBoltShift = (bolt: AdjusterOf<'eccentric-bolt'>, clock: number): Vector =>
  scale(bolt.slot, bolt.throw * Math.sin(clock));
