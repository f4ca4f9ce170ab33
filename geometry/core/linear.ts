import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { Vector } from './vector';

/** Singular values, largest first, with the left singular vector of the smallest. */
export interface Singular {
  readonly values: readonly number[];
  /** one number a row of the matrix: which rows conflict where the smallest value is near 0 */
  readonly weakestRows: readonly number[];
}

/** @param rows - a matrix with at least as many columns as rows */
export function singularValues(rows: readonly (readonly number[])[]): Singular {
  const svd = new SingularValueDecomposition(new Matrix(rows.map((row) => [...row])), { autoTranspose: true });
  const values = svd.diagonal;
  let weakest = 0;
  for (let i = 0; i < values.length; i++) if (values[i] < values[weakest]) weakest = i;
  return { values: [...values].sort((a, b) => b - a), weakestRows: svd.leftSingularVectors.getColumn(weakest) };
}

/** A = U · diag(s) · Vᵀ of a 3 × 3 matrix; s largest first, the columns of U and V are `left[i]` and `right[i]`. */
export interface Decomposition {
  readonly values: Vector;
  readonly left: readonly [Vector, Vector, Vector];
  readonly right: readonly [Vector, Vector, Vector];
}

/** @param rows - of a 3 × 3 matrix */
export function decompose(rows: readonly [Vector, Vector, Vector]): Decomposition {
  const svd = new SingularValueDecomposition(new Matrix(rows.map((row) => [...row])));
  const order = [0, 1, 2].sort((a, b) => svd.diagonal[b] - svd.diagonal[a]);
  const columns = (of: Matrix): [Vector, Vector, Vector] => {
    const column = (i: number): Vector => [of.get(0, order[i]), of.get(1, order[i]), of.get(2, order[i])];
    return [column(0), column(1), column(2)];
  };
  const values: Vector = [svd.diagonal[order[0]], svd.diagonal[order[1]], svd.diagonal[order[2]]];
  return { values, left: columns(svd.leftSingularVectors), right: columns(svd.rightSingularVectors) };
}
