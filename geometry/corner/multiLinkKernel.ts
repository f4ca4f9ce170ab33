import { writeRotation, turnQuaternion } from '../core/rotation';
import { NEWTON_STOP_MM } from '../core/tolerances';
import { eliminateWithPivots, factor5, substitute5 } from '../solve/eliminate5';
import { subtract, unit, cross, dot, type Vector } from '../core/vector';
import type { Linkage } from './corner';
import { CENTRE, RACK_TURN, RACK_VELOCITY, SOLVER_STATE, TRAVEL_TURN, TRAVEL_VELOCITY, type Motion } from './motion';

/**
 * Newton on the five constraints of a multi-link corner. The height of the wheel centre is given, so five unknowns are
 * left: the wheel centre's x and y, and a small turn of the knuckle. Row i of the Jacobian is [u_i, (q_i − W) × u_i], with
 * u_i the unit vector along rod i and q_i its outer end; a trailing arm's pivot gives two rows with u across its bolt.
 *
 * Flat arrays and a fixed elimination order on purpose: this is the inside of every study.
 */
const ROWS = 5;
const ROW = 13; // per row: outer from W₀ (3), inner (3), length or −1 for an arm pivot (1), rack step (3), direction of an arm-pivot row (3)
const K_COLUMN = ROWS * ROW; // which column holds vx, vy, turn x, y, z
const K_SCALE = K_COLUMN + 5; // rotations are counted in units of 1/scale rad, so that all columns are mm
const K_ZERO = K_SCALE + 1;
const K_SIGN = K_ZERO + 1; // sign of the determinant at design
const K_STEER = K_SIGN + 1; // row whose rod steers by its length; −1: the rack steers, or nothing
const K_ORDER = K_STEER + 1; // which constraint each row is
const K_WIDTH = K_ORDER + 5;

export const multiLinkZeroHeight = (k: Float64Array): number => k[K_ZERO];
export const designSign = (k: Float64Array): number => k[K_SIGN];

interface Constraint {
  readonly outer: Vector;
  readonly inner: Vector;
  /** −1: the pivot of a trailing arm, held along `across` only */
  readonly length: number;
  readonly rack: Vector;
  readonly across: Vector;
}

/** The five constraints of a linkage in the order of its rods, a trailing arm's two last. */
function constraintsOf(linkage: Linkage): Constraint[] {
  const constraints: Constraint[] = linkage.rods.map((rod) => ({ ...rod, across: [0, 0, 0] }));
  const pivot = linkage.pivot;
  if (pivot !== null) {
    for (const across of pivot.across)
      constraints.push({ outer: pivot.onArm, inner: pivot.onBody, length: -1, rack: [0, 0, 0], across });
  }
  return constraints;
}

export interface EliminationOrder {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
  /** smallest pivot ÷ largest: a rough sign of singularity */
  readonly spread: number;
}

/** Rows [vx, vy, turn·scale] of the Jacobian at design, for the order of elimination and for condition numbers. */
export function designJacobian(linkage: Linkage, scale: number): number[][] {
  return constraintsOf(linkage).map((c) => {
    const u = c.length < 0 ? c.across : unit(subtract(c.outer, c.inner));
    const moment = cross(subtract(c.outer, linkage.wheelCentre), u);
    return [u[0], u[1], moment[0] / scale, moment[1] / scale, moment[2] / scale, u[2]];
  });
}

/** Complete pivoting, once, at design. */
export function eliminationOrder(linkage: Linkage, scale: number): EliminationOrder {
  const a = designJacobian(linkage, scale);
  const rows = [0, 1, 2, 3, 4];
  const columns = [0, 1, 2, 3, 4];
  let largest = 0;
  let smallest = Infinity;
  for (let k = 0; k < ROWS; k++) {
    let bestRow = k;
    let bestColumn = k;
    for (let i = k; i < ROWS; i++) {
      for (let j = k; j < ROWS; j++) {
        if (Math.abs(a[rows[i]][columns[j]]) > Math.abs(a[rows[bestRow]][columns[bestColumn]])) {
          bestRow = i;
          bestColumn = j;
        }
      }
    }
    [rows[k], rows[bestRow]] = [rows[bestRow], rows[k]];
    [columns[k], columns[bestColumn]] = [columns[bestColumn], columns[k]];
    const pivot = a[rows[k]][columns[k]];
    largest = Math.max(largest, Math.abs(pivot));
    smallest = Math.min(smallest, Math.abs(pivot));
    if (pivot === 0) break;
    for (let i = k + 1; i < ROWS; i++) {
      const factor = a[rows[i]][columns[k]] / pivot;
      for (let j = k; j < ROWS; j++) a[rows[i]][columns[j]] -= factor * a[rows[k]][columns[j]];
    }
  }
  return { rows, columns, spread: smallest / largest };
}

/**
 * Constants of a multi-link corner.
 * @param linkage - as adjusted
 * @param order - from the design linkage, so that neighbouring linkages share it
 * @param scale - loaded radius of the wheel [mm]
 * @param steerRod - index of the rod that steers by its length, −1 for none
 */
export function multiLinkKernel(linkage: Linkage, order: EliminationOrder, scale: number, steerRod: number): Float64Array {
  const k = new Float64Array(K_WIDTH);
  const { rods, pivot, wheelCentre } = linkage;
  let isSteered = false;
  for (let row = 0; row < ROWS; row++) {
    const index = order.rows[row];
    const at = row * ROW;
    k[K_ORDER + row] = index;
    if (index < rods.length) {
      const { outer, inner, length, rack } = rods[index];
      writeEnds(k, at, outer, inner, wheelCentre);
      k[at + 6] = length;
      for (let i = 0; i < 3; i++) k[at + 7 + i] = rack[i];
      isSteered ||= dot(rack, rack) > 0;
    } else if (pivot !== null) {
      writeEnds(k, at, pivot.onArm, pivot.onBody, wheelCentre);
      k[at + 6] = -1;
      for (let i = 0; i < 3; i++) k[at + 10 + i] = pivot.across[index - rods.length][i];
    }
  }
  order.columns.forEach((column, place) => (k[K_COLUMN + column] = place));
  k[K_SCALE] = scale;
  k[K_ZERO] = wheelCentre[2];
  k[K_STEER] = steerRod < 0 || isSteered ? -1 : order.rows.indexOf(steerRod);
  return withDesignSign(k, wheelCentre);
}

function writeEnds(k: Float64Array, at: number, outer: Vector, inner: Vector, wheelCentre: Vector): void {
  for (let i = 0; i < 3; i++) {
    k[at + i] = outer[i] - wheelCentre[i];
    k[at + 3 + i] = inner[i];
  }
}

/** Changes the constants to a rod of another length [mm]: the sign at design hangs on directions, which stay. */
export function setRodLength(k: Float64Array, rod: number, length: number): void {
  let row = 0;
  while (k[K_ORDER + row] !== rod) row += 1;
  k[row * ROW + 6] = length;
}

/** Where constants are judged: the knuckle where it is at design. */
const atDesign = new Float64Array(28);

function withDesignSign(k: Float64Array, wheelCentre: Vector): Float64Array {
  atDesign.fill(0);
  atDesign[0] = atDesign[4] = atDesign[8] = 1;
  atDesign.set(wheelCentre, CENTRE);
  evaluateRods(k, atDesign, 0);
  const determinant = factor5(jacobian) ? pivotProduct() : (evaluateRods(k, atDesign, 0), eliminateWithPivots(jacobian, []));
  k[K_SIGN] = determinant < 0 ? -1 : 1;
  return k;
}

/** The knuckle where it is at design. */
export function designMotion(linkage: Linkage): Motion {
  const motion = new Float64Array(28);
  motion[0] = motion[4] = motion[8] = 1;
  motion.set(linkage.wheelCentre, CENTRE);
  motion[SOLVER_STATE] = 1;
  return motion;
}

const jacobian = new Float64Array(25);
const residual = new Float64Array(5);
/** u_z of each row: the column of the wheel centre's height, which is not an unknown */
const rise = new Float64Array(5);
/** the row's answer to one mm of rack */
const rackPull = new Float64Array(5);

const pivotProduct = (): number => jacobian[0] * jacobian[6] * jacobian[12] * jacobian[18] * jacobian[24];

/** Fills Jacobian and residuals at the pose in `motion` (rotation, centre). @returns largest |residual| [mm] */
function evaluateRods(k: Float64Array, motion: Motion, rack: number): number {
  const cx = k[65];
  const cy = k[66];
  const co = k[67];
  const cp = k[68];
  const cq = k[69];
  const perScale = 1 / k[K_SCALE];
  const r0 = motion[0];
  const r1 = motion[1];
  const r2 = motion[2];
  const r3 = motion[3];
  const r4 = motion[4];
  const r5 = motion[5];
  const r6 = motion[6];
  const r7 = motion[7];
  const r8 = motion[8];
  const px = motion[9];
  const py = motion[10];
  const pz = motion[11];
  let worst = 0;
  for (let row = 0; row < ROWS; row++) {
    const at = row * ROW;
    const qx = k[at];
    const qy = k[at + 1];
    const qz = k[at + 2];
    const ax = r0 * qx + r1 * qy + r2 * qz;
    const ay = r3 * qx + r4 * qy + r5 * qz;
    const az = r6 * qx + r7 * qy + r8 * qz;
    const sx = k[at + 7];
    const sy = k[at + 8];
    const sz = k[at + 9];
    let ex = px + ax - k[at + 3] - rack * sx;
    let ey = py + ay - k[at + 4] - rack * sy;
    let ez = pz + az - k[at + 5] - rack * sz;
    const rodLength = k[at + 6];
    let miss: number;
    if (rodLength >= 0) {
      const now = Math.sqrt(ex * ex + ey * ey + ez * ez);
      const inverse = 1 / now;
      miss = now - rodLength;
      ex *= inverse;
      ey *= inverse;
      ez *= inverse;
    } else {
      miss = ex * k[at + 10] + ey * k[at + 11] + ez * k[at + 12];
      ex = k[at + 10];
      ey = k[at + 11];
      ez = k[at + 12];
    }
    residual[row] = miss;
    if (miss > worst) worst = miss;
    else if (-miss > worst) worst = -miss;
    const o = row * 5;
    jacobian[o + cx] = ex;
    jacobian[o + cy] = ey;
    jacobian[o + co] = (ay * ez - az * ey) * perScale;
    jacobian[o + cp] = (az * ex - ax * ez) * perScale;
    jacobian[o + cq] = (ax * ey - ay * ex) * perScale;
    rise[row] = ez;
    rackPull[row] = ex * sx + ey * sy + ez * sz;
  }
  return worst;
}

/**
 * Newton from the pose in `motion` to the one with the wheel centre at `height`; on success both twists are written too.
 * @param least - so many steps at least: one from a pose that is so near that it would pass for the answer
 * @returns the angle by which the knuckle turned on the way [rad, sum of the steps]; −1 when it did not converge, or ended
 * where the determinant has not the design's sign
 */
export function closeMultiLink(k: Float64Array, motion: Motion, height: number, rack: number, least = 0): number {
  const cx = k[65];
  const cy = k[66];
  const co = k[67];
  const cp = k[68];
  const cq = k[69];
  const perScale = 1 / k[K_SCALE];
  motion[CENTRE + 2] = height;
  let turned = 0;
  for (let i = 0; i < 10; i++) {
    writeRotation(motion, SOLVER_STATE, motion);
    const worst = evaluateRods(k, motion, rack);
    if (worst < NEWTON_STOP_MM && i >= least) return writeRates(k, motion, rack) * designSign(k) > 0 ? turned : -1;
    if (factor5(jacobian)) substitute5(jacobian, residual);
    else if (eliminateWithPivots(jacobian, [residual]) === 0) return -1;
    motion[CENTRE] -= residual[cx];
    motion[CENTRE + 1] -= residual[cy];
    const ox = residual[co] * perScale;
    const oy = residual[cp] * perScale;
    const oz = residual[cq] * perScale;
    const step = Math.sqrt(ox * ox + oy * oy + oz * oz);
    turned += step;
    if (!(turned < 0.5)) return -1;
    turnQuaternion(motion, SOLVER_STATE, -ox, -oy, -oz);
  }
  return -1;
}

const travelRates = new Float64Array(5);
const rackRates = new Float64Array(5);

/** Twists per mm of travel and of rack (or of the steering rod's length), from the Jacobian just evaluated. @returns its determinant */
function writeRates(k: Float64Array, motion: Motion, rack: number): number {
  const steer = k[K_STEER];
  for (let row = 0; row < ROWS; row++) {
    travelRates[row] = -rise[row];
    rackRates[row] = steer < 0 ? rackPull[row] : row === steer ? 1 : 0;
  }
  let determinant: number;
  if (factor5(jacobian)) {
    determinant = pivotProduct();
    substitute5(jacobian, travelRates);
    substitute5(jacobian, rackRates);
  } else {
    determinant = eliminateWithPivots(jacobian, [travelRates, rackRates]);
    if (determinant === 0) return 0;
    // leave factors that nobody can use by mistake: a later reader evaluates anew
    evaluateRods(k, motion, rack);
  }
  const perScale = 1 / k[K_SCALE];
  motion[TRAVEL_VELOCITY] = travelRates[k[65]];
  motion[TRAVEL_VELOCITY + 1] = travelRates[k[66]];
  motion[TRAVEL_VELOCITY + 2] = 1;
  motion[TRAVEL_TURN] = travelRates[k[67]] * perScale;
  motion[TRAVEL_TURN + 1] = travelRates[k[68]] * perScale;
  motion[TRAVEL_TURN + 2] = travelRates[k[69]] * perScale;
  motion[RACK_VELOCITY] = rackRates[k[65]];
  motion[RACK_VELOCITY + 1] = rackRates[k[66]];
  motion[RACK_VELOCITY + 2] = 0;
  motion[RACK_TURN] = rackRates[k[67]] * perScale;
  motion[RACK_TURN + 1] = rackRates[k[68]] * perScale;
  motion[RACK_TURN + 2] = rackRates[k[69]] * perScale;
  return determinant;
}

/** Largest residual of the constraints at a pose, rack centred [mm]. */
export const worstMiss = (k: Float64Array, motion: Motion): number => evaluateRods(k, motion, 0);

/** Constants a fraction of the way from one linkage to another of the same order. */
export function blendKernels(from: Float64Array, to: Float64Array, fraction: number): Float64Array {
  return to.map((value, i) => (i < K_COLUMN || i === K_ZERO ? from[i] + fraction * (value - from[i]) : value));
}
