import { Matrix, SingularValueDecomposition } from 'ml-matrix';

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
