import { Matrix } from "ml-matrix";
import type { GroupIndex } from "../design/groupIndex.js";
import type { DesignMatrix } from "../designMatrix.js";
import { clusterSums } from "../numeric/clusterSums.js";
import { irls, type IrlsProblem } from "../numeric/irls.js";
import { profileLimits } from "../numeric/profileLimits.js";
import { sandwich } from "../numeric/sandwich.js";
import { scoreCovariance } from "../numeric/scoreCovariance.js";
import { standardised } from "../numeric/standardised.js";
import { separationError } from "./separationError.js";

/** A fitted generalised linear model in numbers. */
interface GeneralisedLinear {
  readonly estimates: readonly number[];
  /** Inverse of the information, or with clusters the sandwich with the factor G/(G-1). */
  readonly covariance: number[][];
  /** Fitted means of one unit. */
  readonly means: Float64Array;
  readonly deviance: number;
  readonly nullDeviance: number;
  /** Sum of squared Pearson residuals. */
  readonly pearson: number;
  readonly iterations: number;
  /** Profile likelihood limits of each coefficient. */
  readonly profile: (level: number) => readonly (readonly [number, number])[];
}

/**
 * Fits the totals `y` over `m` units on the design by maximum likelihood.
 *
 * Errors: `separation`, naming the columns; `not_converged`.
 */
export function generalisedLinear(
  design: DesignMatrix,
  { family, y, m, offset }: Omit<IrlsProblem, "columns">,
  outcome: string,
  groups: GroupIndex | null,
): GeneralisedLinear {
  const { columns, transform } = standardised(design.columns, design.intercept);
  const problem = { family, y, m, offset, columns };
  const fit = irls(problem);
  if (fit.separation !== null) {
    const shares = y.map((value, i) => value / m[i]!);
    throw separationError(design.names, design.columns, fit.separation, shares, outcome);
  }
  const covariance =
    groups === null
      ? sandwich(transform, fit.inverse)
      : scoreCovariance(transform.mmul(fit.inverse), clusterSums(columns, fit.residuals, groups)).mul(
          groups.count / (groups.count - 1),
        );
  return {
    estimates: transform.mmul(Matrix.columnVector(fit.estimate)).to1DArray(),
    covariance: covariance.to2DArray(),
    means: fit.eta.map(family.mean),
    deviance: fit.deviance,
    nullDeviance: irls({ ...problem, columns: [new Float64Array(y.length).fill(1)] }).deviance,
    pearson: fit.residuals.reduce((sum, value, i) => (value === 0 ? sum : sum + value ** 2 / fit.weights[i]!), 0),
    iterations: fit.iterations,
    profile: (level) => design.names.map((_, j) => profileLimits(problem, fit, transform.getRow(j), j, level)),
  };
}
