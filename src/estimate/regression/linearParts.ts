import { Matrix } from "ml-matrix";
import { leastSquares } from "../numeric/leastSquares.js";
import { linearPredictor } from "../numeric/linearPredictor.js";
import { sandwich } from "../numeric/sandwich.js";
import { scoreCovariance } from "../numeric/scoreCovariance.js";
import { standardised } from "../numeric/standardised.js";
import { clusterSums } from "../numeric/clusterSums.js";
import { weightedSum } from "../numeric/weightedSum.js";
import type { GroupIndex } from "../design/groupIndex.js";

/** A least squares fit in numbers. */
interface LinearParts {
  readonly estimates: readonly number[];
  /** Weighted sums of squares: of the residuals, about the mean (or 0), of what is explained. */
  readonly residual: number;
  readonly about: number;
  readonly explained: number;
  readonly covariance: number[][];
}

/**
 * Least squares of the response on the columns, with sums of squares and the covariance of the estimates: from the residual
 * variance, or, given clusters, the sandwich with the factor G/(G-1) (n-1)/(n-p).
 */
export function linearParts(
  given: readonly Float64Array[],
  intercept: boolean,
  response: Float64Array,
  weights: Float64Array,
  groups: GroupIndex | null,
): LinearParts {
  const { columns, transform } = standardised(given, intercept);
  const [n, p] = [response.length, columns.length];
  const solved = leastSquares(columns, response, weights.map(Math.sqrt));
  const fitted = linearPredictor(columns, solved.estimate);
  const residuals = response.map((value, i) => value - fitted[i]!);
  const mean = intercept ? weightedSum(response, weights) / weights.reduce((sum, weight) => sum + weight, 0) : 0;
  const squares = (values: Float64Array, middle: number) =>
    weightedSum(
      values.map((value) => (value - middle) ** 2),
      weights,
    );
  const residual = squares(residuals, 0);
  const model = Matrix.mul(sandwich(transform, solved.inverse), residual / (n - p));
  const weighted = residuals.map((value, i) => value * weights[i]!);
  const covariance =
    groups === null
      ? model
      : scoreCovariance(transform.mmul(solved.inverse), clusterSums(columns, weighted, groups)).mul(
          ((groups.count / (groups.count - 1)) * (n - 1)) / (n - p),
        );
  return {
    estimates: transform.mmul(Matrix.columnVector(solved.estimate)).to1DArray(),
    residual,
    about: squares(response, mean),
    explained: squares(fitted, mean),
    covariance: covariance.to2DArray(),
  };
}
