/** Standard error of a statistic by leaving out each cluster in turn. */
interface Jackknife {
  readonly estimate: number;
  /** Null when a replicate has no value, or there are fewer than two clusters. */
  readonly se: number | null;
}

/**
 * Delete-one-cluster jackknife: the root of (K - 1) / K times the sum of squared distances of the K replicates from their mean. Null when the
 * statistic has no finite value on all clusters.
 *
 * Source: Shao J, Tu D (1995) The Jackknife and Bootstrap, chapter 2.
 */
export function clusterJackknife<Item>(
  clusters: readonly Item[],
  statistic: (clusters: readonly Item[]) => number | null,
): Jackknife | null {
  const finite = (value: number | null) => value !== null && Number.isFinite(value);
  const estimate = statistic(clusters);
  if (estimate === null || !finite(estimate)) return null;
  const k = clusters.length;
  if (k < 2) return { estimate, se: null };
  const replicates = clusters.map((_, left) => statistic(clusters.filter((__, place) => place !== left)));
  if (!replicates.every(finite)) return { estimate, se: null };
  const values = replicates as number[];
  const mean = values.reduce((sum, value) => sum + value, 0) / k;
  const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { estimate, se: Math.sqrt(((k - 1) / k) * squares) };
}
