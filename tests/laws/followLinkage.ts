import { add, anyPerpendicular, cross, dot, length, scale, subtract, type Vector } from '../../geometry/core/vector';
import { turnAbout } from '../../geometry/core/rotation';
import type { Linkage } from '../../geometry/corner/corner';

/**
 * Another way to a pose than the library's: plain Newton on all six unknowns (three of the wheel centre, three of a turn),
 * the strut's guide as two constraints like any other, and a continuation in small steps from design. Slow and simple.
 */
export interface Pose {
  /** where the knuckle's X, Y, Z at design point now */
  readonly axes: readonly [Vector, Vector, Vector];
  readonly centre: Vector;
}

/** d pose: velocity of the wheel centre and turn, per unit of what moves. */
interface Twist {
  readonly linear: Vector;
  readonly angular: Vector;
}

const turned = ({ axes }: Pose, v: Vector): Vector => add(add(scale(axes[0], v[0]), scale(axes[1], v[1])), scale(axes[2], v[2]));

const designPose = (linkage: Linkage): Pose => ({
  axes: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  centre: linkage.wheelCentre,
});

/** Six rows [∂/∂W, ∂/∂turn | what is missing], the height of the wheel centre last. */
function rowsOf(linkage: Linkage, pose: Pose, travel: number, rack: number): number[][] {
  const rows: number[][] = [];
  const armOf = (q: Vector): Vector => turned(pose, subtract(q, linkage.wheelCentre));
  for (const rod of linkage.rods) {
    const arm = armOf(rod.outer);
    const along = subtract(add(pose.centre, arm), add(rod.inner, scale(rod.rack, rack)));
    const size = length(along);
    const u = scale(along, 1 / size);
    rows.push([...u, ...cross(arm, u), size - rod.length]);
  }
  if (linkage.pivot !== null) {
    const arm = armOf(linkage.pivot.onArm);
    const gap = subtract(add(pose.centre, arm), linkage.pivot.onBody);
    for (const u of linkage.pivot.across) rows.push([...u, ...cross(arm, u), dot(gap, u)]);
  }
  if (linkage.guide !== null) {
    const { top, foot, axis } = linkage.guide;
    const first = anyPerpendicular(axis);
    const gap = subtract(top, add(pose.centre, armOf(foot)));
    for (const m of [turned(pose, first), turned(pose, cross(axis, first))]) {
      rows.push([...scale(m, -1), ...cross(m, subtract(top, pose.centre)), dot(m, gap)]);
    }
  }
  rows.push([0, 0, 1, 0, 0, 0, pose.centre[2] - linkage.wheelCentre[2] - travel]);
  return rows;
}

/** Gauss with row pivots; null where the matrix is singular to rounding. Lengths and turns are not scaled: a turn counts 300 mm. */
function solveSix(rows: number[][]): number[] | null {
  const n = 6;
  for (const row of rows) for (let j = 3; j < 6; j++) row[j] /= 300;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i][k]) > Math.abs(rows[best][k])) best = i;
    if (Math.abs(rows[best][k]) < 1e-13) return null;
    [rows[k], rows[best]] = [rows[best], rows[k]];
    const pivotRow = rows[k];
    for (let i = k + 1; i < n; i++) {
      const row = rows[i];
      const factor = row[k] / pivotRow[k];
      if (factor !== 0) for (let j = k; j <= n; j++) row[j] -= factor * pivotRow[j];
    }
  }
  const x = [0, 0, 0, 0, 0, 0];
  for (let i = n - 1; i >= 0; i--) {
    let sum = rows[i][n];
    for (let j = i + 1; j < n; j++) sum -= rows[i][j] * x[j];
    x[i] = sum / rows[i][i];
  }
  for (let j = 3; j < 6; j++) x[j] /= 300;
  return x;
}

/** The pose moved by a small motion. */
function moved(pose: Pose, linear: Vector, angular: Vector): Pose {
  const angle = length(angular);
  const centre = add(pose.centre, linear);
  if (angle === 0) return { axes: pose.axes, centre };
  const axis = scale(angular, 1 / angle);
  const [x, y, z] = pose.axes;
  return { axes: [turnAbout(x, axis, angle), turnAbout(y, axis, angle), turnAbout(z, axis, angle)], centre };
}

const CLOSED_MM = 2e-12;

/** Newton from a pose. @returns the pose, and how far the knuckle turned on the way [rad]; null where it does not close */
function close(linkage: Linkage, start: Pose, travel: number, rack: number): { pose: Pose; turn: number } | null {
  let pose = start;
  let turn = 0;
  let last = Infinity;
  for (let i = 0; i < 12; i++) {
    const rows = rowsOf(linkage, pose, travel, rack);
    const worst = Math.max(...rows.map((row) => Math.abs(row[6])));
    // rounding ends the way down where coordinates are large
    if (worst < CLOSED_MM || (worst < 1e-10 && worst >= last)) return { pose, turn };
    last = worst;
    const x = solveSix(rows);
    if (x === null) return null;
    const angular: Vector = [-x[3], -x[4], -x[5]];
    turn += length(angular);
    if (!(turn < 0.2)) return null;
    pose = moved(pose, [-x[0], -x[1], -x[2]], angular);
  }
  return null;
}

/** Turn of the knuckle in one step, and part of it that Newton may add to the prediction [rad]. */
const LARGEST_TURN = 0.02;
const LARGEST_CORRECTION = 0.002;
const SMALLEST_STEP_MM = 1e-5;

export interface Followed {
  readonly pose: Pose;
  readonly travel: number;
  readonly rack: number;
}

export const atDesign = (linkage: Linkage): Followed => ({ pose: designPose(linkage), travel: 0, rack: 0 });

/** A linkage with adjusters moved, put together at design height by Newton from the design pose; null where it does not close. */
export function settled(linkage: Linkage): Followed | null {
  const closed = close(linkage, designPose(linkage), 0, 0);
  return closed === null ? null : { pose: closed.pose, travel: 0, rack: 0 };
}

/**
 * Follows the linkage in a straight line of travel and rack, in steps of `step` mm or less.
 * @returns where it came; the asked position where `arrived`
 */
export function follow(
  linkage: Linkage,
  from: Followed,
  travel: number,
  rack: number,
  step: number,
): Followed & { readonly arrived: boolean } {
  let { pose } = from;
  const [dTravel, dRack] = [travel - from.travel, rack - from.rack];
  const reach = Math.max(Math.abs(dTravel), Math.abs(dRack));
  let at = 0;
  let size = Math.min(1, step / reach);
  while (reach > 0 && at < 1) {
    const next = Math.min(1, at + size);
    const [nextTravel, nextRack] = next === 1 ? [travel, rack] : [from.travel + next * dTravel, from.rack + next * dRack];
    const here: Followed = { pose, travel: from.travel + at * dTravel, rack: from.rack + at * dRack };
    const tried = stepFrom(linkage, here, nextTravel, nextRack);
    if (tried !== null) {
      pose = tried;
      at = next;
      size = Math.min(1.5 * size, step / reach);
    } else {
      size *= 0.5;
      if (size * reach < SMALLEST_STEP_MM) return { ...here, arrived: false };
    }
  }
  return { pose, travel, rack, arrived: true };
}

function stepFrom(linkage: Linkage, from: Followed, travel: number, rack: number): Pose | null {
  const twist = tangent(linkage, from, travel, rack);
  if (twist === null || !(length(twist.angular) < LARGEST_TURN)) return null;
  const closed = close(linkage, moved(from.pose, twist.linear, twist.angular), travel, rack);
  return closed === null || closed.turn > LARGEST_CORRECTION ? null : closed.pose;
}

/** First guess of the motion from one position to another: one Newton step from the pose before. */
function tangent(linkage: Linkage, from: Followed, travel: number, rack: number): Twist | null {
  const x = solveSix(rowsOf(linkage, from.pose, travel, rack));
  return x === null ? null : { linear: [-x[0], -x[1], -x[2]], angular: [-x[3], -x[4], -x[5]] };
}

/** Largest distance of a pose from a motion record of the library, of points up to 400 mm from the wheel centre [mm]. */
export function poseGap({ axes, centre }: Pose, motion: ArrayLike<number>, from: number): number {
  let worst = Math.max(
    Math.abs(centre[0] - motion[from + 9]),
    Math.abs(centre[1] - motion[from + 10]),
    Math.abs(centre[2] - motion[from + 11]),
  );
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) worst = Math.max(worst, 400 * Math.abs(axes[j][i] - motion[from + 3 * i + j]));
  return worst;
}
