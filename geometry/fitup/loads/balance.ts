import { add, cross, subtract, type Vector } from '../../core/vector';

/** A force and its moment about a point that all that are added have in common [N, N·mm]. */
export interface Wrench {
  readonly force: Vector;
  readonly moment: Vector;
}

/** A force at a place, seen from another. */
export const wrenchAt = (force: Vector, at: Vector, about: Vector): Wrench => ({
  force,
  moment: cross(subtract(at, about), force),
});

export const addWrenches = (wrenches: readonly Wrench[]): Wrench =>
  wrenches.reduce((sum, one) => ({ force: add(sum.force, one.force), moment: add(sum.moment, one.moment) }), {
    force: [0, 0, 0],
    moment: [0, 0, 0],
  });

/** A pivot smaller than this part of the largest holds nothing. */
const SMALLEST_PIVOT = 1e-10;

/**
 * How much of each unknown keeps a body in balance under a load: Σ xᵢ unknownᵢ + load = 0, by elimination with complete pivoting.
 * Three unknowns through one point are as welcome as six on a body: equations that say nothing are left over.
 * @param unknowns - each with unit force; six at most
 * @param size - a length by which moments become comparable with forces [mm]
 * @returns one factor an unknown; null where they cannot hold the body, or hold it in more than one way
 * @see J. L. Meriam, L. G. Kraige, Engineering Mechanics: Statics, equilibrium in three dimensions (from memory)
 */
export function solveBalance(unknowns: readonly Wrench[], load: Wrench, size: number): number[] | null {
  const count = unknowns.length;
  const rows = [0, 1, 2, 3, 4, 5].map((i) => {
    const of = ({ force, moment }: Wrench): number => (i < 3 ? force[i] : moment[i - 3] / size);
    return [...unknowns.map(of), -of(load)];
  });
  const order = unknowns.map((_, i) => i);
  let first = 0;
  for (let step = 0; step < count; step++) {
    let [row, column] = [step, step];
    for (let i = step; i < 6; i++)
      for (let j = step; j < count; j++) if (Math.abs(rows[i][j]) > Math.abs(rows[row][column])) [row, column] = [i, j];
    const pivot = Math.abs(rows[row]?.[column] ?? 0);
    if (step === 0) first = pivot;
    if (!(pivot > SMALLEST_PIVOT * first)) return null;
    [rows[step], rows[row]] = [rows[row], rows[step]];
    for (const one of rows) [one[step], one[column]] = [one[column], one[step]];
    [order[step], order[column]] = [order[column], order[step]];
    for (let i = step + 1; i < 6; i++) {
      const factor = rows[i][step] / rows[step][step];
      for (let j = step; j <= count; j++) rows[i][j] -= factor * rows[step][j];
    }
  }
  const solution = unknowns.map(() => 0);
  for (let i = count - 1; i >= 0; i--) {
    let sum = rows[i][count];
    for (let j = i + 1; j < count; j++) sum -= rows[i][j] * solution[order[j]];
    solution[order[i]] = sum / rows[i][i];
  }
  return solution;
}
