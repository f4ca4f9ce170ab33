import type { PlacedCorner, Vector } from '../../geometry/index';
import { cross, dot, scale, subtract, unit } from '../../geometry/core/vector';

/** A force and its moment about the car's origin, the moments divided by a length of the wheel's size. */
export type Wrench = readonly [number, number, number, number, number, number];

const SIZE_MM = 300;
export const UP: Vector = [0, 0, 1];

export function wrench(force: Vector, at: Vector): Wrench {
  const moment = scale(cross(at, force), 1 / SIZE_MM);
  return [...force, ...moment];
}

/** Two unit vectors square to a direction and to each other. */
function across(direction: Vector): readonly [Vector, Vector] {
  const first = unit(cross(direction, Math.abs(direction[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]));
  return [first, unit(cross(direction, first))];
}

/** What the five links of a corner can put on its knuckle, each with unit force: rods along themselves, a guide or a bolt across. */
export function linkForces({ rods, strut, trailingArm }: PlacedCorner): Wrench[] {
  const forces = rods.map(({ inner, outer }) => wrench(unit(subtract(outer, inner)), outer));
  if (strut !== null) for (const u of across(unit(subtract(strut.top, strut.foot)))) forces.push(wrench(u, strut.top));
  if (trailingArm !== null) for (const u of across(unit(trailingArm.axis))) forces.push(wrench(u, trailingArm.pivot));
  return forces;
}

/**
 * The force along `held` (a wrench of unit force) that keeps the knuckle in balance under `load`: six equations for five link
 * forces and this one.
 */
export function holdingForce(corner: PlacedCorner, held: Wrench, load: Wrench): number {
  const columns = [...linkForces(corner), held];
  if (columns.length !== 6) throw new Error(`${columns.length - 1} links`);
  const rows = load.map((value, i) => [...columns.map((column) => column[i]), -value]);
  return solveSix(rows)[5];
}

/** Gaussian elimination with row exchange. @param rows - six equations, the right-hand side last */
function solveSix(rows: number[][]): number[] {
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    const pivot = rows
      .slice(column)
      .reduce((best, row, i) => (Math.abs(row[column]) > Math.abs(rows[best][column]) ? column + i : best), column);
    [rows[column], rows[pivot]] = [rows[pivot], rows[column]];
    for (let i = column + 1; i < n; i++) {
      const factor = rows[i][column] / rows[column][column];
      for (let j = column; j <= n; j++) rows[i][j] -= factor * rows[column][j];
    }
  }
  const solution: number[] = [];
  for (let i = n - 1; i >= 0; i--) {
    const known = rows[i].slice(i + 1, n).reduce((sum, value, k) => sum + value * solution[i + 1 + k], 0);
    solution[i] = (rows[i][n] - known) / rows[i][i];
  }
  return solution;
}

/** What a push at a point of a lower arm (two rods to one joint) does at the joint: balance of moments about the arm's own axis. */
export function pushThroughArm(innerA: Vector, innerB: Vector, outer: Vector, force: Vector, at: Vector): Wrench {
  const axis = unit(subtract(innerB, innerA));
  const square = unit(cross(axis, subtract(outer, innerA)));
  const momentOf = (f: Vector, p: Vector): number => dot(cross(subtract(p, innerA), f), axis);
  return wrench(scale(square, momentOf(force, at) / momentOf(square, outer)), outer);
}
