import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { LogLikelihood } from "./LogLikelihood.js";
import type { MarginalMoments, MomentsAt } from "./MarginalMoments.js";

/** Coefficients and residual variance that are best at given relative covariance parameters. */
export interface ProfiledSolution {
  readonly estimate: Float64Array;
  /** Inverse of X'V^-1 X; times the residual variance the covariance of the estimates. */
  readonly inverse: Matrix;
  readonly residualVariance: number;
  readonly logLik: number;
}

/** A linear mixed model as a function of its relative covariance parameters alone. */
export interface ProfiledLinear {
  readonly logLikelihood: LogLikelihood;
  readonly solve: (theta: Float64Array) => ProfiledSolution | null;
}

/**
 * The log-likelihood of a linear mixed model of `n` rows, or with `restricted` that of its error contrasts, coefficients and residual
 * variance being put at their best for each theta; its gradient in closed form. `shift` is added: what a change of coordinates
 * takes from the logarithm.
 *
 * Source: Bates D, Maechler M, Bolker B, Walker S (2015) J Stat Softw 67(1), sections 3.4-3.5 (profiled criteria).
 */
export function profiledLinear(momentsAt: MomentsAt, n: number, restricted: boolean, shift: number): ProfiledLinear {
  const solveFor = (moments: MarginalMoments): ProfiledSolution | null => {
    const size = Math.sqrt(moments.cross.length);
    const p = size - 1;
    const whole = Matrix.from1DArray(size, size, moments.cross);
    const triangle = new CholeskyDecomposition(whole.subMatrix(0, p - 1, 0, p - 1));
    if (!triangle.isPositiveDefinite()) return null;
    const right = whole.subMatrix(0, p - 1, p, p);
    const solution = triangle.solve(right);
    const rest = whole.get(p, p) - right.transpose().mmul(solution).get(0, 0);
    if (!(rest > 0)) return null;
    const df = n - (restricted ? p : 0);
    const residualVariance = rest / df;
    const logA = triangle.lowerTriangularMatrix.diag().reduce((sum, value) => sum + 2 * Math.log(value), 0);
    const criterion = df * (Math.log(2 * Math.PI * residualVariance) + 1) + moments.logDeterminant + (restricted ? logA : 0);
    return {
      estimate: Float64Array.from(solution.to1DArray()),
      inverse: triangle.solve(Matrix.eye(p)),
      residualVariance,
      logLik: shift - criterion / 2,
    };
  };
  const logLikelihood: LogLikelihood = (theta, gradient) => {
    const moments = momentsAt(theta);
    const solved = solveFor(moments);
    if (solved === null) return -Infinity;
    const { estimate, inverse, residualVariance, logLik } = solved;
    const size = estimate.length + 1;
    const contrast = Float64Array.from({ length: size }, (_, j) => (j < estimate.length ? -estimate[j]! : 1));
    for (let k = 0; k < theta.length; k += 1) {
      const by = moments.crossBy[k]!;
      let [rest, trace] = [0, 0];
      for (let i = 0; i < size; i += 1) {
        for (let j = 0; j < size; j += 1) {
          rest += contrast[i]! * by[i * size + j]! * contrast[j]!;
          if (restricted && i < size - 1 && j < size - 1) trace += inverse.get(i, j) * by[i * size + j]!;
        }
      }
      gradient[k] = -(rest / residualVariance + moments.logDeterminantBy[k]! + trace) / 2;
    }
    return logLik;
  };
  return { logLikelihood, solve: (theta) => solveFor(momentsAt(theta)) };
}
