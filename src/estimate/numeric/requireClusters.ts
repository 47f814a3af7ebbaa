import type { ClusterCount } from "../ClusterCount.js";
import { EstimateError } from "../EstimateError.js";
import { requireCases } from "./requireCases.js";

/**
 * The clusters that hold at least one observation, checked.
 *
 * Errors: `not_a_number`, `not_a_count`, `out_of_range` for a cluster that is no proportion; `empty` when nothing is left.
 */
export function requireClusters(clusters: readonly ClusterCount[]): readonly ClusterCount[] {
  const filled = clusters.filter(({ cases, n }) => cases !== 0 || n !== 0);
  for (const { cases, n } of filled) requireCases(cases, n);
  if (filled.length === 0) {
    throw new EstimateError("empty", "No cluster holds an observation.", "Give at least one cluster with something examined.");
  }
  return filled;
}
