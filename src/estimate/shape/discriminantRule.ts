import { CholeskyDecomposition, Matrix } from "ml-matrix";
import type { ClassSums } from "./ClassSums.js";

/** A linear rule made from the sums of some rows. */
export interface DiscriminantRule {
  /** Lower triangle of the Cholesky decomposition of the covariance within classes. */
  readonly triangle: Matrix;
  /** Class means in the space where that covariance is the unit matrix. */
  readonly means: readonly Float64Array[];
  /** Posterior probability of each class for one row. */
  readonly posterior: (row: Float64Array) => Float64Array;
}

/**
 * Linear discriminant rule with the covariance pooled within classes, divisor n less the number of classes. Null when that covariance
 * cannot be inverted.
 */
export function discriminantRule({ counts, sums, products }: ClassSums, priors: readonly number[]): DiscriminantRule | null {
  const p = sums[0]!.length;
  const df = counts.reduce((total, count) => total + count, 0) - counts.length;
  const means = sums.map((sum, c) => sum.map((value) => value / counts[c]!));
  const within = Matrix.zeros(p, p);
  for (let j = 0; j < p; j += 1) {
    for (let k = 0; k <= j; k += 1) {
      let value = products[j * p + k]!;
      means.forEach((mean, c) => (value -= sums[c]![j]! * mean[k]!));
      within.set(j, k, value / df);
      within.set(k, j, value / df);
    }
  }
  const decomposition = new CholeskyDecomposition(within);
  const triangle = decomposition.lowerTriangularMatrix;
  for (let j = 0; j < p; j += 1) if (!(triangle.get(j, j) > 1e-8 * Math.sqrt(within.get(j, j)))) return null;
  const whitened = (row: Float64Array): Float64Array => {
    const z = new Float64Array(p);
    for (let j = 0; j < p; j += 1) {
      let value = row[j]!;
      for (let k = 0; k < j; k += 1) value -= triangle.get(j, k) * z[k]!;
      z[j] = value / triangle.get(j, j);
    }
    return z;
  };
  const centres = means.map(whitened);
  const logPriors = priors.map(Math.log);
  return {
    triangle,
    means: centres,
    posterior: (row) => {
      const z = whitened(row);
      const logs = Float64Array.from(centres, (centre, c) => {
        let squares = 0;
        for (let j = 0; j < p; j += 1) squares += (z[j]! - centre[j]!) ** 2;
        return logPriors[c]! - squares / 2;
      });
      const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
      const weights = logs.map((value) => Math.exp(value - most));
      const total = weights.reduce((a, b) => a + b, 0);
      return weights.map((value) => value / total);
    },
  };
}
