/**
 * Gauss elimination of five equations, written out: a loop over so small a matrix costs more than its arithmetic.
 * The rows and columns come in the order that complete pivoting chose at design, so no pivot is searched for here;
 * where one turns out small, `factor5` says so and the caller takes `eliminateWithPivots`.
 */
const SMALL_PIVOT = 1e-3;

/** Replaces the row-major 5 × 5 matrix by its factors L (below the diagonal, unit diagonal) and U. False: a pivot was small, and `a` is as it was. */
export function factor5(a: Float64Array): boolean {
  const a00 = a[0],
    a01 = a[1],
    a02 = a[2],
    a03 = a[3],
    a04 = a[4];
  let a10 = a[5],
    a11 = a[6],
    a12 = a[7],
    a13 = a[8],
    a14 = a[9];
  let a20 = a[10],
    a21 = a[11],
    a22 = a[12],
    a23 = a[13],
    a24 = a[14];
  let a30 = a[15],
    a31 = a[16],
    a32 = a[17],
    a33 = a[18],
    a34 = a[19];
  let a40 = a[20],
    a41 = a[21],
    a42 = a[22],
    a43 = a[23],
    a44 = a[24];
  if (!(a00 > SMALL_PIVOT || a00 < -SMALL_PIVOT)) return false;
  const d0 = 1 / a00;
  a10 *= d0;
  a11 -= a10 * a01;
  a12 -= a10 * a02;
  a13 -= a10 * a03;
  a14 -= a10 * a04;
  a20 *= d0;
  a21 -= a20 * a01;
  a22 -= a20 * a02;
  a23 -= a20 * a03;
  a24 -= a20 * a04;
  a30 *= d0;
  a31 -= a30 * a01;
  a32 -= a30 * a02;
  a33 -= a30 * a03;
  a34 -= a30 * a04;
  a40 *= d0;
  a41 -= a40 * a01;
  a42 -= a40 * a02;
  a43 -= a40 * a03;
  a44 -= a40 * a04;
  if (!(a11 > SMALL_PIVOT || a11 < -SMALL_PIVOT)) return false;
  const d1 = 1 / a11;
  a21 *= d1;
  a22 -= a21 * a12;
  a23 -= a21 * a13;
  a24 -= a21 * a14;
  a31 *= d1;
  a32 -= a31 * a12;
  a33 -= a31 * a13;
  a34 -= a31 * a14;
  a41 *= d1;
  a42 -= a41 * a12;
  a43 -= a41 * a13;
  a44 -= a41 * a14;
  if (!(a22 > SMALL_PIVOT || a22 < -SMALL_PIVOT)) return false;
  const d2 = 1 / a22;
  a32 *= d2;
  a33 -= a32 * a23;
  a34 -= a32 * a24;
  a42 *= d2;
  a43 -= a42 * a23;
  a44 -= a42 * a24;
  if (!(a33 > SMALL_PIVOT || a33 < -SMALL_PIVOT)) return false;
  const d3 = 1 / a33;
  a43 *= d3;
  a44 -= a43 * a34;
  if (!(a44 > SMALL_PIVOT || a44 < -SMALL_PIVOT)) return false;
  a[1] = a01;
  a[2] = a02;
  a[3] = a03;
  a[4] = a04;
  a[5] = a10;
  a[6] = a11;
  a[7] = a12;
  a[8] = a13;
  a[9] = a14;
  a[10] = a20;
  a[11] = a21;
  a[12] = a22;
  a[13] = a23;
  a[14] = a24;
  a[15] = a30;
  a[16] = a31;
  a[17] = a32;
  a[18] = a33;
  a[19] = a34;
  a[20] = a40;
  a[21] = a41;
  a[22] = a42;
  a[23] = a43;
  a[24] = a44;
  return true;
}

/** Replaces b by the solution of A x = b, with A as factored by `factor5`. */
export function substitute5(a: Float64Array, b: Float64Array): void {
  const y0 = b[0];
  const y1 = b[1] - a[5] * y0;
  const y2 = b[2] - a[10] * y0 - a[11] * y1;
  const y3 = b[3] - a[15] * y0 - a[16] * y1 - a[17] * y2;
  const y4 = b[4] - a[20] * y0 - a[21] * y1 - a[22] * y2 - a[23] * y3;
  const x4 = y4 / a[24];
  const x3 = (y3 - a[19] * x4) / a[18];
  const x2 = (y2 - a[13] * x3 - a[14] * x4) / a[12];
  const x1 = (y1 - a[7] * x2 - a[8] * x3 - a[9] * x4) / a[6];
  const x0 = (y0 - a[1] * x1 - a[2] * x2 - a[3] * x3 - a[4] * x4) / a[0];
  b[0] = x0;
  b[1] = x1;
  b[2] = x2;
  b[3] = x3;
  b[4] = x4;
}

/**
 * The same with row pivots, for the rare place where the design's order does not do: solves A x = b for several right-hand sides.
 * @param a - row-major 5 × 5, overwritten
 * @param rightHandSides - each of length 5, overwritten by its solution
 * @returns the determinant of A; 0 where A is singular to rounding
 */
export function eliminateWithPivots(a: Float64Array, rightHandSides: readonly Float64Array[]): number {
  const n = 5;
  let determinant = 1;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i * n + k]) > Math.abs(a[best * n + k])) best = i;
    if (best !== k) {
      determinant = -determinant;
      for (let j = 0; j < n; j++) swap(a, k * n + j, best * n + j);
      for (const b of rightHandSides) swap(b, k, best);
    }
    const pivot = a[k * n + k];
    determinant *= pivot;
    if (Math.abs(pivot) < 1e-14) return 0;
    for (let i = k + 1; i < n; i++) {
      const factor = a[i * n + k] / pivot;
      for (let j = k; j < n; j++) a[i * n + j] = a[i * n + j] - factor * a[k * n + j];
      for (const b of rightHandSides) b[i] = b[i] - factor * b[k];
    }
  }
  for (const b of rightHandSides) {
    for (let i = n - 1; i >= 0; i--) {
      let sum = b[i];
      for (let j = i + 1; j < n; j++) sum -= a[i * n + j] * b[j];
      b[i] = sum / a[i * n + i];
    }
  }
  return determinant;
}

function swap(values: Float64Array, i: number, j: number): void {
  const kept = values[i];
  values[i] = values[j];
  values[j] = kept;
}
