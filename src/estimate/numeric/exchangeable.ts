import { inverse, Matrix } from "ml-matrix";
import { clusterScores } from "./clusterScores.js";
import { linearPredictor } from "./linearPredictor.js";

/** A clustered yes-or-no outcome: `cases` of `n` feet alike in each row, each with the row's weight. */
export interface ClusteredBinomial {
  readonly columns: readonly Float64Array[];
  readonly cases: Float64Array;
  readonly n: Float64Array;
  readonly weights: Float64Array;
  readonly groups: { readonly index: Int32Array; readonly count: number };
  /** Feet in each cluster. */
  readonly sizes: Float64Array;
}

/** The estimating equations at one value of the coefficients, for a dispersion of 1. */
export interface EstimatingEquations {
  /** Score of each cluster: one column a cluster. */
  readonly scores: Matrix;
  /** Inverse of the sum of D'V^-1 D over clusters. */
  readonly inverse: Matrix;
  /** D'V^-1 D of one cluster. */
  readonly information: (cluster: number) => Matrix;
}

/**
 * Generalised estimating equations of a logistic model under an exchangeable working correlation alpha (0: independence):
 * sum over clusters of D'V^-1 (y - mu), V = A^1/2 R A^1/2 with R one on the diagonal and alpha off it, A the variances over the
 * weights. Solved in closed form, R^-1 = (I - alpha / (1 + (n - 1) alpha) J) / (1 - alpha), so the work is linear in the rows.
 *
 * Source: Liang KY, Zeger SL (1986) Biometrika 73:13-22.
 */
export function exchangeable(data: ClusteredBinomial, estimate: Float64Array, alpha: number): EstimatingEquations {
  const { columns, cases, n, weights, groups, sizes } = data;
  const { index, count } = groups;
  const means = linearPredictor(columns, estimate).map((eta) => 1 / (1 + Math.exp(-eta)));
  const spreads = means.map((mean, i) => Math.sqrt(weights[i]! * mean * (1 - mean)));
  const residuals = cases.map((k, i) => weights[i]! * (k - n[i]! * means[i]!));
  // Of each cluster: the sum of z, the rows of A^-1/2 D, and of e, the standardised residuals.
  const z = clusterScores(
    columns,
    spreads.map((spread, i) => spread * n[i]!),
    groups,
  );
  const e = new Float64Array(count);
  residuals.forEach((residual, i) => (e[index[i]!]! += residual / spreads[i]!));
  const shares = sizes.map((size) => alpha / (1 + (size - 1) * alpha));
  const p = columns.length;
  const scores = clusterScores(columns, residuals, groups);
  for (let j = 0; j < p; j += 1) {
    for (let c = 0; c < count; c += 1) scores.set(j, c, (scores.get(j, c) - shares[c]! * z.get(j, c) * e[c]!) / (1 - alpha));
  }
  // D'V^-1 D of each cluster, one entry of the upper triangle after another.
  const entries = columns.map((a, j) =>
    columns.slice(0, j + 1).map((b, k) => {
      const sums = new Float64Array(count);
      for (let i = 0; i < a.length; i += 1) sums[index[i]!]! += n[i]! * spreads[i]! * spreads[i]! * a[i]! * b[i]!;
      for (let c = 0; c < count; c += 1) sums[c] = (sums[c]! - shares[c]! * z.get(j, c) * z.get(k, c)) / (1 - alpha);
      return sums;
    }),
  );
  const symmetric = (entry: (sums: Float64Array) => number) => {
    const matrix = Matrix.zeros(p, p);
    entries.forEach((row, j) => {
      row.forEach((sums, k) => {
        const value = entry(sums);
        matrix.set(j, k, value);
        matrix.set(k, j, value);
      });
    });
    return matrix;
  };
  return {
    scores,
    inverse: inverse(symmetric((sums) => sums.reduce((total, value) => total + value, 0))),
    information: (cluster) => symmetric((sums) => sums[cluster]!),
  };
}
