/** Fewer clusters than this and robust errors are known to come out too small (common practice: 40 to 50). */
const ENOUGH_CLUSTERS = 40;

/** What a reader must know about cluster-robust errors from this many clusters; empty when nothing. */
export function clusterNotes(clusters: number, coefficients: number): readonly string[] {
  if (clusters <= coefficients) {
    return [
      `There are ${clusters} clusters for ${coefficients} coefficients: the robust errors cannot be trusted, and no joint test can be made.`,
    ];
  }
  if (clusters >= ENOUGH_CLUSTERS) return [];
  return [`With ${clusters} clusters, fewer than ${ENOUGH_CLUSTERS}, robust errors tend to be too small.`];
}
