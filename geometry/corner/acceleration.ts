import { add, cross, dot, length, scale, subtract, type Vector } from '../core/vector';
import { eliminateWithPivots } from '../solve/eliminate5';
import { anyPerpendicular } from '../core/vector';
import type { Corner } from './corner';
import { knuckleDirection, knucklePoint, travelTurn, travelVelocity, wheelCentre } from './knucklePoint';
import type { Motion } from './motion';

/**
 * Second derivative of the knuckle's motion by travel: how the twist itself changes.
 * `linear`: of the wheel centre [mm/mm²]; `angular`: [rad/mm²].
 */
export interface Acceleration {
  readonly linear: Vector;
  readonly angular: Vector;
}

/** One constraint in the form direction · (acceleration of the point at `arm` from W) = `asked`. */
interface Row {
  readonly direction: Vector;
  readonly arm: Vector;
  readonly asked: number;
}

/**
 * Differentiates the constraints twice. With ξ the twist per mm of travel, each gives u·(a + α × r) = −(what the velocities
 * alone make of it), so one more solve with the Jacobian of the pose gives (a, α) exactly: no differences.
 */
export function motionAcceleration(corner: Corner, motion: Motion, rack: number): Acceleration {
  const centre = wheelCentre(motion);
  const v = travelVelocity(motion);
  const omega = travelTurn(motion);
  const centripetal = (arm: Vector): Vector => cross(omega, cross(omega, arm));
  const rows: Row[] = [];
  const { rods, pivot, guide } = corner.linkage;
  for (const rod of rods) {
    const outer = knucklePoint(corner, motion, rod.outer);
    const along = subtract(outer, add(rod.inner, scale(rod.rack, rack)));
    const size = length(along);
    const direction = scale(along, 1 / size);
    const arm = subtract(outer, centre);
    const velocity = add(v, cross(omega, arm));
    // e·ë + ė·ė = 0 for a rod e of constant length
    rows.push({ direction, arm, asked: -dot(velocity, velocity) / size - dot(direction, centripetal(arm)) });
  }
  if (pivot !== null) {
    const arm = subtract(knucklePoint(corner, motion, pivot.onArm), centre);
    for (const direction of pivot.across) rows.push({ direction, arm, asked: -dot(direction, centripetal(arm)) });
  }
  if (guide !== null) {
    // m·(top − foot) = 0 for two directions m of the knuckle square to the strut's axis
    const axis = knuckleDirection(motion, guide.axis);
    const first = anyPerpendicular(axis);
    const foot = knucklePoint(corner, motion, guide.foot);
    const gap = subtract(guide.top, foot);
    const footArm = subtract(foot, centre);
    const footVelocity = add(v, cross(omega, footArm));
    for (const m of [first, cross(axis, first)]) {
      const turned = cross(omega, m);
      const asked = dot(cross(omega, turned), gap) - 2 * dot(turned, footVelocity) - dot(m, centripetal(footArm));
      rows.push({ direction: m, arm: subtract(guide.top, centre), asked });
    }
  }
  const matrix = new Float64Array(25);
  const answer = new Float64Array(5);
  const perScale = 1 / corner.loadedRadius;
  rows.forEach(({ direction, arm, asked }, i) => {
    const moment = cross(arm, direction);
    matrix.set([direction[0], direction[1], moment[0] * perScale, moment[1] * perScale, moment[2] * perScale], 5 * i);
    answer[i] = asked;
  });
  eliminateWithPivots(matrix, [answer]);
  return { linear: [answer[0], answer[1], 0], angular: [answer[2] * perScale, answer[3] * perScale, answer[4] * perScale] };
}
