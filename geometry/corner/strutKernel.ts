import { anyPerpendicular, cross, dot, length, reject, scale, subtract, unit, type Vector } from '../core/vector';
import type { Linkage } from './corner';
import {
  CENTRE,
  RACK_TURN,
  RACK_VELOCITY,
  SOLVED,
  SOLVER_STATE,
  STRUT_TOO_SHORT,
  TIE_ROD_SHORT,
  TRAVEL_TURN,
  TRAVEL_VELOCITY,
  type Motion,
} from './motion';

/**
 * The strut in closed form. With the lower arm at angle θ the ball joint B is on its circle; |B − top| gives the slide of the
 * strut; the knuckle is then free only to turn about the line B–top, and the tie rod's length says how far:
 * a cos φ + b sin φ = c. One scalar is left, the height of the wheel centre as a function of θ.
 *
 * Flat arrays and scalars on purpose: this function is the inside of every study.
 * Knuckle coordinates are kept along (f, u, g): f from B square to the strut's axis, u along it, g = f × u.
 */
const K_CENTRE = 0; // centre of the ball joint's circle
const K_OUT = 3; // radius vector of the circle at θ = 0 (towards the design position)
const K_UP = 6; // radius vector a quarter turn on
const K_TOP = 9;
const K_RACK = 12; // inner tie-rod ball, rack centred
const K_RACK_STEP = 15; // its movement per mm of rack
const K_OFFSET = 18; // distance of B from the strut's axis
const K_TIE = 19; // outer tie-rod ball along (f, u, g) from B
const K_WHEEL = 22; // wheel centre along (f, u, g) from B
const K_TIE_SQ = 25;
const K_ROD_SQ = 26;
const K_BRANCH = 27; // which of the two turns about B–top: the design's
const K_FRAME = 28; // rows f, u, g in knuckle coordinates
const K_SLOPE_SIGN = 37; // sign of d height / dθ at design
const K_ZERO = 38; // height of the wheel centre at travel 0
const K_WIDTH = 39;

/** The scalars of the last evaluation that `writeStrutMotion` needs. */
const scratch = new Float64Array(40);
const S_HEIGHT = 0;
const S_SLOPE = 1;

export const strutHeight = (): number => scratch[S_HEIGHT];
/** d height / d arm angle of the last evaluation [mm/rad]. */
export const strutSlope = (): number => scratch[S_SLOPE];
export const strutSlopeSign = (kernel: Float64Array): number => kernel[K_SLOPE_SIGN];
export const strutZeroHeight = (kernel: Float64Array): number => kernel[K_ZERO];

/**
 * Constants of a strut linkage.
 * @param linkage - as adjusted
 * @param design - the same linkage with no adjuster: it decides the branch of the tie rod
 * @returns constants, or the number of mm that the two arm rods fall short of meeting
 */
export function strutKernel(linkage: Linkage, design: Linkage): Float64Array | { readonly armsShortBy: number } {
  const [front, rear, tie] = linkage.rods as readonly [Linkage['rods'][0], Linkage['rods'][0], Linkage['rods'][0]];
  const guide = linkage.guide!;
  const k = new Float64Array(K_WIDTH);
  const ballJoint = front.outer;

  const span = subtract(rear.inner, front.inner);
  const spanLength = length(span);
  const axis = scale(span, 1 / spanLength);
  const along = (front.length * front.length - rear.length * rear.length + spanLength * spanLength) / (2 * spanLength);
  const radiusSq = front.length * front.length - along * along;
  if (!(radiusSq > 0)) {
    const reach = front.length + rear.length;
    const armsShortBy = spanLength > reach ? spanLength - reach : Math.abs(front.length - rear.length) - spanLength;
    return { armsShortBy };
  }
  const centre: Vector = [front.inner[0] + along * axis[0], front.inner[1] + along * axis[1], front.inner[2] + along * axis[2]];
  const radius = Math.sqrt(radiusSq);
  const out = unit(reject(subtract(ballJoint, centre), axis));
  k.set(centre, K_CENTRE);
  k.set(scale(out, radius), K_OUT);
  k.set(scale(cross(axis, out), radius), K_UP);

  k.set(guide.top, K_TOP);
  k.set(tie.inner, K_RACK);
  k.set(tie.rack, K_RACK_STEP);
  const toAxis = reject(subtract(guide.foot, ballJoint), guide.axis);
  const offset = length(toAxis);
  const f = offset > 1e-9 ? scale(toAxis, 1 / offset) : anyPerpendicular(guide.axis);
  const g = cross(f, guide.axis);
  const local = (point: Vector): Vector => {
    const fromBall = subtract(point, ballJoint);
    return [dot(fromBall, f), dot(fromBall, guide.axis), dot(fromBall, g)];
  };
  k[K_OFFSET] = offset > 1e-9 ? offset : 0;
  const tieOuter = local(tie.outer);
  k.set(tieOuter, K_TIE);
  k.set(local(linkage.wheelCentre), K_WHEEL);
  k[K_TIE_SQ] = dot(tieOuter, tieOuter);
  k[K_BRANCH] = tieRodTriple(design) > 0 ? -1 : 1;
  k.set(f, K_FRAME);
  k.set(guide.axis, K_FRAME + 3);
  k.set(g, K_FRAME + 6);
  k[K_ZERO] = linkage.wheelCentre[2];
  return setTieRod(k, tie.length);
}

/** Changes the constants to a tie rod of another length [mm]: nothing else depends on it. */
export function setTieRod(k: Float64Array, length: number): Float64Array {
  k[K_ROD_SQ] = length * length;
  k[K_SLOPE_SIGN] = evaluateStrut(k, 0, 0) === SOLVED && scratch[S_SLOPE] < 0 ? -1 : 1;
  return k;
}

/** Sine-like measure of how far the tie rod is from over centre at design: the triple product of the steering axis, lever and rod, as unit vectors. */
export function tieRodTriple(design: Linkage): number {
  const ballJoint = design.rods[0].outer;
  const tie = design.rods[2];
  const steeringAxis = unit(subtract(design.guide!.top, ballJoint));
  const lever = reject(subtract(tie.outer, ballJoint), steeringAxis);
  const rod = reject(subtract(tie.inner, ballJoint), steeringAxis);
  const product = length(lever) * length(rod);
  return product > 0 ? dot(rod, cross(steeringAxis, lever)) / product : 0;
}

/**
 * Evaluates the closed form at arm angle `theta` [rad, 0 at design] and `rack` [mm]; leaves height and slope in the scratch.
 * @returns SOLVED, STRUT_TOO_SHORT (ball joint nearer to the top than the strut's offset) or TIE_ROD_SHORT
 */
export function evaluateStrut(k: Float64Array, theta: number, rack: number): 0 | 1 | 2 {
  const s = scratch;
  const c = Math.cos(theta);
  const sn = Math.sin(theta);
  const bx = k[0] + c * k[3] + sn * k[6];
  const by = k[1] + c * k[4] + sn * k[7];
  const bz = k[2] + c * k[5] + sn * k[8];
  // D = top − B; its length² is offset² + slide²
  const dx = k[9] - bx;
  const dy = k[10] - by;
  const dz = k[11] - bz;
  const hSq = dx * dx + dy * dy + dz * dz;
  const offset = k[18];
  const slideSq = hSq - offset * offset;
  if (!(slideSq > 0)) return STRUT_TOO_SHORT;
  const slide = Math.sqrt(slideSq);
  const ih = 1 / Math.sqrt(hSq);
  const nx = dx * ih;
  const ny = dy * ih;
  const nz = dz * ih;
  // outer tie-rod ball along (n, m, g): n the steering axis, m and g turned by φ
  const along = (offset * k[19] + slide * k[20]) * ih;
  const beta = (offset * k[20] - slide * k[19]) * ih;
  const gamma = k[21];
  // w = inner tie-rod ball − B; p its part square to n
  const rx = k[15];
  const ry = k[16];
  const rz = k[17];
  const wx = k[12] + rack * rx - bx;
  const wy = k[13] + rack * ry - by;
  const wz = k[14] + rack * rz - bz;
  const wn = wx * nx + wy * ny + wz * nz;
  const px = wx - wn * nx;
  const py = wy - wn * ny;
  const pz = wz - wn * nz;
  const pSq = px * px + py * py + pz * pz;
  const need = 0.5 * (k[25] + wx * wx + wy * wy + wz * wz - k[26]) - along * wn;
  const leverSq = beta * beta + gamma * gamma;
  const discriminant = leverSq * pSq - need * need;
  if (!(discriminant > 0)) return TIE_ROD_SHORT;
  const p = Math.sqrt(pSq);
  const root = k[27] * Math.sqrt(discriminant);
  const scaleBack = p / (leverSq * pSq);
  const cosPhi = (beta * need + gamma * root) * scaleBack;
  const sinPhi = (beta * root - gamma * need) * scaleBack;
  const ip = 1 / p;
  const ax = px * ip;
  const ay = py * ip;
  const az = pz * ip;
  const ux = ny * az - nz * ay;
  const uy = nz * ax - nx * az;
  const uz = nx * ay - ny * ax;
  const mx = cosPhi * ax + sinPhi * ux;
  const my = cosPhi * ay + sinPhi * uy;
  const mz = cosPhi * az + sinPhi * uz;
  const gx = cosPhi * ux - sinPhi * ax;
  const gy = cosPhi * uy - sinPhi * ay;
  const gz = cosPhi * uz - sinPhi * az;
  // lever arms of wheel centre and outer tie-rod ball from B
  const wheelN = (offset * k[22] + slide * k[23]) * ih;
  const wheelM = (offset * k[23] - slide * k[22]) * ih;
  const wheelG = k[24];
  const vx = wheelN * nx + wheelM * mx + wheelG * gx;
  const vy = wheelN * ny + wheelM * my + wheelG * gy;
  const vz = wheelN * nz + wheelM * mz + wheelG * gz;
  const tx = along * nx + beta * mx + gamma * gx;
  const ty = along * ny + beta * my + gamma * gy;
  const tz = along * nz + beta * mz + gamma * gz;
  // velocity of B per radian of arm; the strut's axis turns with the knuckle so that it keeps passing through the top
  const bvx = c * k[6] - sn * k[3];
  const bvy = c * k[7] - sn * k[4];
  const bvz = c * k[8] - sn * k[5];
  const slideN = slide * ih;
  const slideM = offset * ih;
  const axisX = slideN * nx + slideM * mx;
  const axisY = slideN * ny + slideM * my;
  const axisZ = slideN * nz + slideM * mz;
  const slip = (bvx * dx + bvy * dy + bvz * dz) / slide;
  const yx = slip * axisX - bvx;
  const yy = slip * axisY - bvy;
  const yz = slip * axisZ - bvz;
  const ihSq = ih * ih;
  let ox = (dy * yz - dz * yy) * ihSq;
  let oy = (dz * yx - dx * yz) * ihSq;
  let oz = (dx * yy - dy * yx) * ihSq;
  // the part of the turn about D that keeps the tie rod's length
  const ex = tx - wx;
  const ey = ty - wy;
  const ez = tz - wz;
  const stretch = (bvx + oy * tz - oz * ty) * ex + (bvy + oz * tx - ox * tz) * ey + (bvz + ox * ty - oy * tx) * ez;
  const perTurn = 1 / ((dy * tz - dz * ty) * ex + (dz * tx - dx * tz) * ey + (dx * ty - dy * tx) * ez);
  const turn = -stretch * perTurn;
  ox += turn * dx;
  oy += turn * dy;
  oz += turn * dz;
  s[S_HEIGHT] = bz + vz;
  s[S_SLOPE] = bvz + ox * vy - oy * vx;
  s[2] = bx + vx;
  s[3] = by + vy;
  s[4] = nx;
  s[5] = ny;
  s[6] = nz;
  s[7] = mx;
  s[8] = my;
  s[9] = mz;
  s[10] = gx;
  s[11] = gy;
  s[12] = gz;
  s[13] = slideN;
  s[14] = slideM;
  s[15] = bvx;
  s[16] = bvy;
  s[17] = bvz;
  s[18] = ox;
  s[19] = oy;
  s[20] = oz;
  s[21] = vx;
  s[22] = vy;
  s[23] = vz;
  const rackTurn = (ex * rx + ey * ry + ez * rz) * perTurn;
  s[24] = rackTurn * dx;
  s[25] = rackTurn * dy;
  s[26] = rackTurn * dz;
  return SOLVED;
}

/** Writes pose and both twists of the last evaluation, made at arm angle `theta`, into a motion record. */
export function writeStrutMotion(k: Float64Array, theta: number, out: Motion): void {
  const s = scratch;
  const slideN = s[13];
  const slideM = s[14];
  // where f, u, g point now
  for (let i = 0; i < 3; i++) {
    const n = s[4 + i];
    const m = s[7 + i];
    const g = s[10 + i];
    const f = slideM * n - slideN * m;
    const u = slideN * n + slideM * m;
    const row = 3 * i;
    out[row] = f * k[28] + u * k[31] + g * k[34];
    out[row + 1] = f * k[29] + u * k[32] + g * k[35];
    out[row + 2] = f * k[30] + u * k[33] + g * k[36];
  }
  out[CENTRE] = s[2];
  out[CENTRE + 1] = s[3];
  out[CENTRE + 2] = s[S_HEIGHT];
  const vx = s[21];
  const vy = s[22];
  const vz = s[23];
  const perTravel = 1 / s[S_SLOPE];
  let ox = s[18] * perTravel;
  let oy = s[19] * perTravel;
  let oz = s[20] * perTravel;
  out[TRAVEL_VELOCITY] = s[15] * perTravel + oy * vz - oz * vy;
  out[TRAVEL_VELOCITY + 1] = s[16] * perTravel + oz * vx - ox * vz;
  out[TRAVEL_VELOCITY + 2] = 1;
  out[TRAVEL_TURN] = ox;
  out[TRAVEL_TURN + 1] = oy;
  out[TRAVEL_TURN + 2] = oz;
  // rack: the arm follows so that the wheel centre keeps its height
  const perRack = -(s[24] * vy - s[25] * vx) * perTravel;
  ox = s[24] + perRack * s[18];
  oy = s[25] + perRack * s[19];
  oz = s[26] + perRack * s[20];
  out[RACK_VELOCITY] = s[15] * perRack + oy * vz - oz * vy;
  out[RACK_VELOCITY + 1] = s[16] * perRack + oz * vx - ox * vz;
  out[RACK_VELOCITY + 2] = 0;
  out[RACK_TURN] = ox;
  out[RACK_TURN + 1] = oy;
  out[RACK_TURN + 2] = oz;
  out[SOLVER_STATE] = theta;
  out[SOLVER_STATE + 1] = perTravel;
  out[SOLVER_STATE + 2] = perRack;
}

/**
 * How many mm are missing where the closed form fails at arm angle `theta`.
 * @returns for a strut: offset − |top − B|; for a tie rod: how much too short (or too long) it is
 */
export function strutShortfall(k: Float64Array, theta: number, rack: number): number {
  const c = Math.cos(theta);
  const sn = Math.sin(theta);
  const at = (i: number): number => k[K_CENTRE + i] + c * k[K_OUT + i] + sn * k[K_UP + i];
  const ball: Vector = [at(0), at(1), at(2)];
  const toTop = subtract([k[K_TOP], k[K_TOP + 1], k[K_TOP + 2]], ball);
  const h = length(toTop);
  const offset = k[K_OFFSET];
  if (h <= offset) return offset - h;
  const n = scale(toTop, 1 / h);
  const inner = [0, 1, 2].map((i) => k[K_RACK + i] + rack * k[K_RACK_STEP + i]) as unknown as Vector;
  const w = subtract(inner, ball);
  const slide = Math.sqrt(h * h - offset * offset);
  const along = (offset * k[K_TIE] + slide * k[K_TIE + 1]) / h;
  const beta = (offset * k[K_TIE + 1] - slide * k[K_TIE]) / h;
  const lever = Math.sqrt(beta * beta + k[K_TIE + 2] * k[K_TIE + 2]);
  const reach = length(reject(w, n));
  const rise = dot(w, n) - along;
  const rod = Math.sqrt(k[K_ROD_SQ]);
  const nearest = Math.sqrt(rise * rise + (reach - lever) * (reach - lever));
  const farthest = Math.sqrt(rise * rise + (reach + lever) * (reach + lever));
  return rod < nearest ? nearest - rod : Math.max(0, rod - farthest);
}
