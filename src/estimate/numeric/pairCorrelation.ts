import type { ClusteredBinomial } from "./ClusteredBinomial.js";
import { linearPredictor } from "./linearPredictor.js";

/** Moments of the Pearson residuals e = (y - mu) / sqrt(mu (1 - mu)) of single feet. */
export interface ResidualMoments {
  /** Mean of e^2, unweighted. */
  readonly square: number;
  /** Sum of w e^2 over sum of w. */
  readonly weightedSquare: number;
  /** Sum of w_j w_k e_j e_k over the pairs of feet of one cluster, over the sum of w_j w_k; null when no cluster has a pair. */
  readonly product: number | null;
}

/**
 * Mean squares and mean products within clusters of the Pearson residuals at given coefficients. `less` is taken off the number of feet
 * and of pairs that the means are over.
 */
export function pairCorrelation(data: ClusteredBinomial, estimate: Float64Array, less = 0): ResidualMoments {
  const { columns, cases, n, weights, groups, copies } = data;
  const { index, count } = groups;
  const sums = new Float64Array(count);
  const totals = new Float64Array(count);
  let [feet, square, weight, weightedSquare, alone, aloneWeight] = [0, 0, 0, 0, 0, 0];
  const eta = linearPredictor(columns, estimate);
  for (let i = 0; i < eta.length; i += 1) {
    const [k, m, w, cluster] = [cases[i]!, n[i]!, weights[i]!, index[i]!];
    const many = copies[cluster]!;
    const root = Math.exp(eta[i]! / 2);
    const odds = root * root;
    // e^2 of a case is 1 / odds, of another foot the odds.
    const squares = k / odds + (m - k) * odds;
    feet += many * m;
    square += many * squares;
    weight += many * w * m;
    weightedSquare += many * w * squares;
    alone += many * w * w * squares;
    aloneWeight += many * w * w * m;
    sums[cluster]! += w * (k / root - (m - k) * root);
    totals[cluster]! += w * m;
  }
  const squared = (values: Float64Array) => values.reduce((sum, value, c) => sum + copies[c]! * value * value, 0);
  // Each pair twice.
  const pairs = squared(totals) - aloneWeight - 2 * less;
  return {
    square: square / (feet - less),
    weightedSquare: weightedSquare / (weight - less),
    product: pairs > 1e-9 * aloneWeight ? (squared(sums) - alone) / pairs : null,
  };
}
