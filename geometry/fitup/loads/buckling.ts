import type { SectionDocument } from '../../car/document';

/** When a straight pinned bar gives way under push. Null: the file does not give what it needs. */
export interface Buckling {
  /** π²EI/L² [N] */
  readonly euler: number | null;
  /** A·σ: short bars yield before they buckle [N] */
  readonly yields: number | null;
  /** the smaller of the two */
  readonly governs: 'euler' | 'yield' | null;
  /** the governing load ÷ the push; null in tension, and where nothing is carried */
  readonly times: number | null;
}

/** Second moment of area of a round bar or tube [mm⁴]. @param wall - 0: solid [mm] */
export function secondMoment(diameter: number, wall: number): number {
  const inside = wall === 0 ? 0 : diameter - 2 * wall;
  const outerSq = diameter * diameter;
  const insideSq = inside * inside;
  return (Math.PI * (outerSq * outerSq - insideSq * insideSq)) / 64;
}

export function areaOf(diameter: number, wall: number): number {
  const inside = wall === 0 ? 0 : diameter - 2 * wall;
  return (Math.PI * (diameter * diameter - inside * inside)) / 4;
}

/** P = π²EI/L², both ends pinned [N]. @see S. P. Timoshenko, J. M. Gere, Theory of Elastic Stability (from memory) */
export const eulerLoad = (modulus: number, second: number, length: number): number =>
  (Math.PI * Math.PI * modulus * second) / (length * length);

/** What is left of a balance by rounding is no push [N]. */
const LEAST_PUSH = 1e-6;

/**
 * @param section - in the file's unit of length; modulus and yield in N/mm²
 * @param mm - millimetres in that unit
 * @param length - between the two centres [mm]
 * @param axial - tension + [N]
 */
export function bucklingOf(section: SectionDocument, mm: number, length: number, axial: number): Buckling {
  const diameter = section.diameter * mm;
  const wall = (section.wall ?? 0) * mm;
  const euler = section.modulus === undefined ? null : eulerLoad(section.modulus, secondMoment(diameter, wall), length);
  const yields = section.yield === undefined ? null : areaOf(diameter, wall) * section.yield;
  const governs = smaller(euler, yields);
  const load = governs === 'euler' ? euler : yields;
  return { euler, yields, governs, times: load !== null && axial < -LEAST_PUSH ? load / -axial : null };
}

function smaller(euler: number | null, yields: number | null): Buckling['governs'] {
  if (euler === null) return yields === null ? null : 'yield';
  return yields === null || euler <= yields ? 'euler' : 'yield';
}
