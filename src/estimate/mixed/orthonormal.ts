import { inverse, Matrix } from "ml-matrix";
import { linearPredictor } from "../numeric/linearPredictor.js";
import { standardised } from "../numeric/standardised.js";
import { stackedQr } from "../numeric/stackedQr.js";

/** A design in coordinates in which its columns have mean square 1 and are at right angles. */
export interface Orthonormal {
  readonly columns: readonly Float64Array[];
  /** Takes coefficients of these columns to those of the given ones. */
  readonly transform: Matrix;
  /** Logarithm of the size of the determinant of `transform`. */
  readonly logDeterminant: number;
}

/** Turns the columns of a design, the first the intercept's, into orthonormal ones, so that rounding does least harm. */
export function orthonormal(given: readonly Float64Array[]): Orthonormal {
  const { columns, transform } = standardised(given, true);
  const root = Matrix.mul(stackedQr(columns), 1 / Math.sqrt(given[0]!.length));
  const turn = inverse(root);
  const logs = (matrix: Matrix) => matrix.diag().reduce((sum, value) => sum + Math.log(Math.abs(value)), 0);
  return {
    columns: columns.map((_, j) => linearPredictor(columns, turn.getColumn(j))),
    transform: transform.mmul(turn),
    logDeterminant: logs(transform) - logs(root),
  };
}
