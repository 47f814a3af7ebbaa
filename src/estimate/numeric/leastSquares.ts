import { inverse, Matrix, solve } from "ml-matrix";
import { stackedQr } from "./stackedQr.js";

/** Solution of a least squares problem. */
export interface LeastSquares {
  readonly estimate: Float64Array;
  /** Inverse of X'WX. */
  readonly inverse: Matrix;
}

/**
 * The coefficients that make the sum of squares of `rowScale` times (response less columns times coefficients) smallest, by QR, and
 * the inverse of the weighted cross-product (`rowScale` is the root of the weights; 1 when left out). The columns must be independent.
 *
 * With `refined` the residuals are fitted once more and the correction added, which wins back the digits that rounding lost.
 */
export function leastSquares(
  columns: readonly Float64Array[],
  response: Float64Array,
  rowScale?: Float64Array,
  refined = false,
): LeastSquares {
  const p = columns.length;
  const triangle = stackedQr([...columns, response], rowScale);
  const root = triangle.subMatrix(0, p - 1, 0, p - 1);
  const estimate = backSolved(root, triangle);
  if (refined) {
    const residuals = response.slice();
    columns.forEach((column, j) => {
      for (let i = 0; i < residuals.length; i += 1) residuals[i]! -= column[i]! * estimate[j]!;
    });
    backSolved(root, stackedQr([...columns, residuals], rowScale)).forEach((step, j) => (estimate[j]! += step));
  }
  const unroot = inverse(root);
  return { estimate, inverse: unroot.mmul(unroot.transpose()) };
}

function backSolved(root: Matrix, triangle: Matrix): Float64Array {
  const p = root.rows;
  return Float64Array.from(solve(root, triangle.subMatrix(0, p - 1, p, p)).to1DArray());
}
