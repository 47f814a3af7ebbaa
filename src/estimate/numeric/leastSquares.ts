import { inverse, solve, type Matrix } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
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
 * Errors: `not_converged` when the rows with any weight no longer tell the coefficients apart, as at the end of an iteration that ran away.
 */
export function leastSquares(columns: readonly Float64Array[], response: Float64Array, rowScale?: Float64Array): LeastSquares {
  const p = columns.length;
  const triangle = stackedQr([...columns, response], rowScale);
  const root = triangle.subMatrix(0, p - 1, 0, p - 1);
  if (!root.diagonal().every((value) => Math.abs(value) > 0)) {
    throw new EstimateError(
      "not_converged",
      "The fit ran to where nearly every row is told for certain and the rest do not tell the coefficients apart.",
      "Look for a term that tells the outcome almost without error, or ask for Wald limits.",
    );
  }
  const estimate = Float64Array.from(solve(root, triangle.subMatrix(0, p - 1, p, p)).to1DArray());
  const unroot = inverse(root);
  return { estimate, inverse: unroot.mmul(unroot.transpose()) };
}
