import type { ClusterCount } from "./ClusterCount.js";
import { requireClusters } from "./numeric/requireClusters.js";

/** How alike the members of a cluster are. Null where the clusters are too few, too small or all alike. */
export interface ClusterCorrelation {
  /** Analysis-of-variance estimate of the intraclass correlation. May be negative. */
  readonly icc: number | null;
  /** Fleiss-Cuzick estimate of the same. */
  readonly fleissCuzick: number | null;
  readonly betweenMeanSquare: number | null;
  readonly withinMeanSquare: number | null;
  /** Average cluster size that the variance analysis uses, n0. */
  readonly averageSize: number | null;
  /** 1 + (mean size - 1) x icc. */
  readonly designEffect: number | null;
  readonly clusters: number;
  readonly n: number;
  readonly cases: number;
}

/**
 * Intraclass correlation of a yes/no finding within clusters: how much more alike two feet of one horse are than two feet of
 * two horses.
 *
 * Method: one-way analysis of variance of the 0/1 findings: icc = (MSB - MSW) / (MSB + (n0 - 1) MSW), where n0 is
 * (N - sum n_i^2 / N) / (K - 1). Beside it the Fleiss-Cuzick estimate 1 - sum(y_i (n_i - y_i) / n_i) / ((N - K) p (1 - p)).
 * Clusters without an observation are left out.
 *
 * Missing: whoever counts leaves the missing out of `n`. One cluster, or clusters of one member each, give null.
 *
 * Errors: `not_a_number`, `not_a_count`, `out_of_range`; `empty` when no cluster holds an observation.
 *
 * Source: Ridout MS, Demetrio CGB, Firth D (1999) Biometrics 55:137-148, equations for the ANOVA and Fleiss-Cuzick estimators;
 * Fleiss JL, Cuzick J (1979) Appl Psychol Meas 3:537-542.
 */
export function clusterCorrelation(clusters: readonly ClusterCount[]): ClusterCorrelation {
  const filled = requireClusters(clusters);
  const k = filled.length;
  const n = filled.reduce((sum, cluster) => sum + cluster.n, 0);
  const cases = filled.reduce((sum, cluster) => sum + cluster.cases, 0);
  const between = filled.reduce((sum, c) => sum + (c.cases * c.cases) / c.n, 0) - (cases * cases) / n;
  const within = filled.reduce((sum, c) => sum + (c.cases * (c.n - c.cases)) / c.n, 0);
  const msb = k > 1 ? Math.max(0, between) / (k - 1) : null;
  const msw = n > k ? within / (n - k) : null;
  const averageSize = k > 1 ? (n - filled.reduce((sum, c) => sum + c.n * c.n, 0) / n) / (k - 1) : null;
  const spread = (cases / n) * (1 - cases / n);
  const known = msb !== null && msw !== null && averageSize !== null && spread > 0;
  const icc = known ? (msb - msw) / (msb + (averageSize - 1) * msw) : null;
  return {
    icc,
    fleissCuzick: known ? 1 - msw / spread : null,
    betweenMeanSquare: msb,
    withinMeanSquare: msw,
    averageSize,
    designEffect: icc === null ? null : 1 + (n / k - 1) * icc,
    clusters: k,
    n,
    cases,
  };
}
