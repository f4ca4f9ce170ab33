import { cross, type Vector } from '../core/vector';
import type { Corner } from './corner';
import { CENTRE, RACK_TURN, RACK_VELOCITY, TRAVEL_TURN, TRAVEL_VELOCITY, type Motion } from './motion';

const at3 = (values: Float64Array, from: number): Vector => [values[from], values[from + 1], values[from + 2]];

/** Where a direction of the knuckle at design points now: R v. */
export function knuckleDirection(motion: Motion, v: Vector): Vector {
  const [x, y, z] = v;
  return [
    motion[0] * x + motion[1] * y + motion[2] * z,
    motion[3] * x + motion[4] * y + motion[5] * z,
    motion[6] * x + motion[7] * y + motion[8] * z,
  ];
}

/** Where a point of the knuckle is now: W + R (q − W₀) [mm]. */
export function knucklePoint(corner: Corner, motion: Motion, q: Vector): Vector {
  const w = corner.linkage.wheelCentre;
  const arm = knuckleDirection(motion, [q[0] - w[0], q[1] - w[1], q[2] - w[2]]);
  return [motion[CENTRE] + arm[0], motion[CENTRE + 1] + arm[1], motion[CENTRE + 2] + arm[2]];
}

export const wheelCentre = (motion: Motion): Vector => at3(motion, CENTRE);
/** Velocity of the wheel centre per mm of travel [mm/mm]. */
export const travelVelocity = (motion: Motion): Vector => at3(motion, TRAVEL_VELOCITY);
/** Angular velocity of the knuckle per mm of travel [rad/mm]. */
export const travelTurn = (motion: Motion): Vector => at3(motion, TRAVEL_TURN);
export const rackVelocity = (motion: Motion): Vector => at3(motion, RACK_VELOCITY);
export const rackTurn = (motion: Motion): Vector => at3(motion, RACK_TURN);

/** Velocity per mm of travel of the point of the knuckle that is now at `point`. */
export function velocityAt(motion: Motion, point: Vector): Vector {
  const arm: Vector = [point[0] - motion[CENTRE], point[1] - motion[CENTRE + 1], point[2] - motion[CENTRE + 2]];
  const turn = cross(travelTurn(motion), arm);
  return [motion[TRAVEL_VELOCITY] + turn[0], motion[TRAVEL_VELOCITY + 1] + turn[1], motion[TRAVEL_VELOCITY + 2] + turn[2]];
}
