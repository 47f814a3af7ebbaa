import { inverse, Matrix } from "ml-matrix";
import type { ClusteredBinomial } from "./ClusteredBinomial.js";
import { clusterSums } from "./clusterSums.js";
import { linearPredictor } from "./linearPredictor.js";

/** The estimating equations at one value of the coefficients, for a dispersion of 1. */
export interface EstimatingEquations {
  /** Score of each cluster kept: one array a coefficient, one number a cluster. */
  readonly scores: readonly Float64Array[];
  /** Their sum over all clusters, a column. */
  readonly score: Matrix;
  /** Inverse of the sum of D'V^-1 D over clusters. */
  readonly inverse: Matrix;
  /** D'V^-1 D of each cluster kept. */
  readonly informations: () => readonly Matrix[];
}

/**
 * Generalised estimating equations of a logistic model under an exchangeable working correlation alpha (0: independence):
 * sum over clusters of D'V^-1 (y - mu), V = A^1/2 R A^1/2 with R one on the diagonal and alpha off it, A the variances over the
 * weights. Solved in closed form, R^-1 = (I - alpha / (1 + (n - 1) alpha) J) / (1 - alpha), so the work is linear in the rows.
 *
 * Source: Liang KY, Zeger SL (1986) Biometrika 73:13-22.
 */
export function exchangeable(data: ClusteredBinomial, estimate: Float64Array, alpha: number): EstimatingEquations {
  const { columns, cases, n, weights, groups, sizes, copies } = data;
  const rows = cases.length;
  const means = linearPredictor(columns, estimate);
  const [variances, roots, residuals] = [new Float64Array(rows), new Float64Array(rows), new Float64Array(rows)];
  const e = new Float64Array(groups.count);
  for (let i = 0; i < rows; i += 1) {
    const mean = 1 / (1 + Math.exp(-means[i]!));
    const spread = Math.sqrt(weights[i]! * mean * (1 - mean));
    residuals[i] = weights[i]! * (cases[i]! - n[i]! * mean);
    roots[i] = n[i]! * spread;
    variances[i] = n[i]! * spread * spread;
    e[groups.index[i]!]! += residuals[i]! / spread;
  }
  // Of each cluster: the sums of z, the rows of A^-1/2 D; of e, the standardised residuals, above.
  const z = clusterSums(columns, roots, groups);
  const shares = sizes.map((size) => alpha / (1 + (size - 1) * alpha));
  const scores = clusterSums(columns, residuals, groups);
  const sums = scores.map((score, j) => {
    const own = z[j]!;
    let sum = 0;
    for (let c = 0; c < score.length; c += 1) {
      score[c] = (score[c]! - shares[c]! * own[c]! * e[c]!) / (1 - alpha);
      sum += copies[c]! * score[c]!;
    }
    return sum;
  });
  const total = symmetric(columns.length, (j, k) => {
    const [a, b, za, zb] = [columns[j]!, columns[k]!, z[j]!, z[k]!];
    let sum = 0;
    for (let i = 0; i < rows; i += 1) sum += copies[groups.index[i]!]! * variances[i]! * a[i]! * b[i]!;
    for (let c = 0; c < shares.length; c += 1) sum -= copies[c]! * shares[c]! * za[c]! * zb[c]!;
    return sum / (1 - alpha);
  });
  const informations = () => {
    const squares = columns.map((column) =>
      clusterSums(
        columns,
        column.map((value, i) => value * variances[i]!),
        groups,
      ),
    );
    return Array.from(shares, (share, c) =>
      symmetric(columns.length, (j, k) => (squares[j]![k]![c]! - share * z[j]![c]! * z[k]![c]!) / (1 - alpha)),
    );
  };
  return { scores, score: Matrix.columnVector(sums), inverse: inverse(total), informations };
}

function symmetric(size: number, entry: (j: number, k: number) => number): Matrix {
  const matrix = Matrix.zeros(size, size);
  for (let j = 0; j < size; j += 1) {
    for (let k = 0; k <= j; k += 1) {
      const value = entry(j, k);
      matrix.set(j, k, value);
      matrix.set(k, j, value);
    }
  }
  return matrix;
}
