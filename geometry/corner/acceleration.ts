import { anyPerpendicular, cross, type Vector } from '../core/vector';
import { eliminateWithPivots } from '../solve/eliminate5';
import type { Corner } from './corner';
import { knuckleDirection, knucklePoint } from './knucklePoint';
import { CENTRE, TRAVEL_TURN, TRAVEL_VELOCITY, type Motion } from './motion';

/**
 * Second derivative of the knuckle's motion by travel: how the twist itself changes.
 * `linear`: of the wheel centre [mm/mm²]; `angular`: [rad/mm²].
 */
export interface Acceleration {
  readonly linear: Vector;
  readonly angular: Vector;
}

const matrix = new Float64Array(25);
const answer = new Float64Array(5);

/**
 * Differentiates the constraints twice. With (v, ω) the twist per mm of travel, each constraint reads
 * u·(a + α × r) = −(what the velocities alone make of it), so one more solve with the Jacobian of the pose gives (a, α)
 * exactly: no differences.
 */
export function motionAcceleration(corner: Corner, motion: Motion, rack: number): Acceleration {
  const perScale = 1 / corner.loadedRadius;
  const { rods, pivot, guide } = corner.linkage;
  let row = 0;
  for (const rod of rods) row = rodRow(row, corner, motion, rod, rack, perScale);
  if (pivot !== null) {
    const arm = knucklePoint(corner, motion, pivot.onArm);
    for (const u of pivot.across) row = planeRow(row, motion, u, arm, perScale);
  }
  if (guide !== null) guideRows(row, corner, motion, guide, perScale);
  eliminateWithPivots(matrix, [answer]);
  return { linear: [answer[0], answer[1], 0], angular: [answer[2] * perScale, answer[3] * perScale, answer[4] * perScale] };
}

/** One row: direction (ux, uy, uz) at the arm (x, y, z) from the wheel centre. */
function fill(
  row: number,
  ux: number,
  uy: number,
  uz: number,
  x: number,
  y: number,
  z: number,
  asked: number,
  perScale: number,
): number {
  const at = 5 * row;
  matrix[at] = ux;
  matrix[at + 1] = uy;
  matrix[at + 2] = (y * uz - z * uy) * perScale;
  matrix[at + 3] = (z * ux - x * uz) * perScale;
  matrix[at + 4] = (x * uy - y * ux) * perScale;
  answer[row] = asked;
  return row + 1;
}

/** u·(ω × (ω × r)), written as (u·ω)(ω·r) − (u·r)(ω·ω). */
function centripetal(motion: Motion, ux: number, uy: number, uz: number, x: number, y: number, z: number): number {
  const ox = motion[TRAVEL_TURN];
  const oy = motion[TRAVEL_TURN + 1];
  const oz = motion[TRAVEL_TURN + 2];
  return (ux * ox + uy * oy + uz * oz) * (ox * x + oy * y + oz * z) - (ux * x + uy * y + uz * z) * (ox * ox + oy * oy + oz * oz);
}

/** A rod e of constant length: e·ë + ė·ė = 0. */
function rodRow(
  row: number,
  corner: Corner,
  motion: Motion,
  rod: Corner['linkage']['rods'][0],
  rack: number,
  perScale: number,
): number {
  const outer = knucklePoint(corner, motion, rod.outer);
  const ex = outer[0] - rod.inner[0] - rack * rod.rack[0];
  const ey = outer[1] - rod.inner[1] - rack * rod.rack[1];
  const ez = outer[2] - rod.inner[2] - rack * rod.rack[2];
  const inverse = 1 / Math.sqrt(ex * ex + ey * ey + ez * ez);
  const ux = ex * inverse;
  const uy = ey * inverse;
  const uz = ez * inverse;
  const x = outer[0] - motion[CENTRE];
  const y = outer[1] - motion[CENTRE + 1];
  const z = outer[2] - motion[CENTRE + 2];
  const ox = motion[TRAVEL_TURN];
  const oy = motion[TRAVEL_TURN + 1];
  const oz = motion[TRAVEL_TURN + 2];
  const vx = motion[TRAVEL_VELOCITY] + oy * z - oz * y;
  const vy = motion[TRAVEL_VELOCITY + 1] + oz * x - ox * z;
  const vz = motion[TRAVEL_VELOCITY + 2] + ox * y - oy * x;
  const asked = -(vx * vx + vy * vy + vz * vz) * inverse - centripetal(motion, ux, uy, uz, x, y, z);
  return fill(row, ux, uy, uz, x, y, z, asked, perScale);
}

/** A point held in the plane across u. */
function planeRow(row: number, motion: Motion, u: Vector, point: Vector, perScale: number): number {
  const x = point[0] - motion[CENTRE];
  const y = point[1] - motion[CENTRE + 1];
  const z = point[2] - motion[CENTRE + 2];
  return fill(row, u[0], u[1], u[2], x, y, z, -centripetal(motion, u[0], u[1], u[2], x, y, z), perScale);
}

/** The strut: m·(top − foot) = 0 for two directions m of the knuckle square to its axis. */
function guideRows(
  row: number,
  corner: Corner,
  motion: Motion,
  guide: NonNullable<Corner['linkage']['guide']>,
  perScale: number,
): void {
  const axis = knuckleDirection(motion, guide.axis);
  const first = anyPerpendicular(axis);
  const foot = knucklePoint(corner, motion, guide.foot);
  const { top } = guide;
  const gx = top[0] - foot[0];
  const gy = top[1] - foot[1];
  const gz = top[2] - foot[2];
  const x = foot[0] - motion[CENTRE];
  const y = foot[1] - motion[CENTRE + 1];
  const z = foot[2] - motion[CENTRE + 2];
  const ox = motion[TRAVEL_TURN];
  const oy = motion[TRAVEL_TURN + 1];
  const oz = motion[TRAVEL_TURN + 2];
  const vx = motion[TRAVEL_VELOCITY] + oy * z - oz * y;
  const vy = motion[TRAVEL_VELOCITY + 1] + oz * x - ox * z;
  const vz = motion[TRAVEL_VELOCITY + 2] + ox * y - oy * x;
  for (const m of [first, cross(axis, first)]) {
    const [mx, my, mz] = m;
    const turned = (oy * mz - oz * my) * vx + (oz * mx - ox * mz) * vy + (ox * my - oy * mx) * vz;
    const asked = centripetal(motion, gx, gy, gz, mx, my, mz) - 2 * turned - centripetal(motion, mx, my, mz, x, y, z);
    row = fill(
      row,
      mx,
      my,
      mz,
      top[0] - motion[CENTRE],
      top[1] - motion[CENTRE + 1],
      top[2] - motion[CENTRE + 2],
      asked,
      perScale,
    );
  }
}
