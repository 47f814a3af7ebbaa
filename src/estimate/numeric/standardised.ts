import { Matrix } from "ml-matrix";

/** A design in coordinates in which its columns have mean 0 and mean square 1, the intercept excepted. */
export interface Standardised {
  readonly columns: readonly Float64Array[];
  /** Takes coefficients of the standardised columns to those of the given ones: b = T g. */
  readonly transform: Matrix;
}

/**
 * The columns of a design moved (when the first is the intercept's) and scaled so that rounding does least harm. Fits are made in
 * these coordinates and taken back with `transform`; a covariance matrix goes back as T V T'.
 */
export function standardised(columns: readonly Float64Array[], intercept: boolean): Standardised {
  const transform = Matrix.eye(columns.length);
  const moved = columns.map((column, j) => {
    if (intercept && j === 0) return column;
    const n = column.length;
    const middle = intercept ? column.reduce((sum, value) => sum + value, 0) / n : 0;
    const spread = Math.sqrt(column.reduce((sum, value) => sum + (value - middle) ** 2, 0) / n);
    transform.set(j, j, 1 / spread);
    if (intercept) transform.set(0, j, -middle / spread);
    return column.map((value) => (value - middle) / spread);
  });
  return { columns: moved, transform };
}
