import { Matrix, solve } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import { requireNumber } from "../numeric/requireNumber.js";

/** Coefficients and SDs to start from, as a caller gives them. */
export interface MixedStart {
  readonly coefficients: readonly number[];
  readonly sds: readonly number[];
}

const USUAL_SD = 0.5;

/**
 * Parameters to start from: standardised coefficients, outer SD (0 when there is no outer group), inner SD. Without a start given:
 * `plain`, the coefficients without random effects, and SDs of a half.
 *
 * Errors: `length_mismatch`; `not_a_number`; `out_of_range` for an SD that is not positive.
 */
export function startOf(
  given: MixedStart | undefined,
  plain: Float64Array,
  transform: Matrix,
  groups: readonly string[],
): Float64Array {
  const sds = given?.sds ?? groups.map(() => USUAL_SD);
  const theta = new Float64Array(plain.length + 2);
  theta.set(plain);
  if (sds.length !== groups.length || (given !== undefined && given.coefficients.length !== plain.length)) {
    throw new EstimateError(
      "length_mismatch",
      `The start has ${given?.coefficients.length ?? 0} coefficients and ${sds.length} SDs; the fit has ${plain.length} and ${groups.length}.`,
      "Give one number a coefficient, the intercept included, and one a group.",
    );
  }
  if (given !== undefined) {
    const wanted = given.coefficients.map((value) => requireNumber("coefficient to start from", value));
    theta.set(solve(transform, Matrix.columnVector(wanted)).to1DArray());
  }
  sds.forEach((sd, g) => {
    if (!(requireNumber("SD to start from", sd) > 0)) {
      throw new EstimateError(
        "out_of_range",
        `The SD to start from is ${sd}; at 0 the climb would never leave.`,
        "Give a positive one.",
      );
    }
    theta[theta.length - groups.length + g] = sd;
  });
  return theta;
}
