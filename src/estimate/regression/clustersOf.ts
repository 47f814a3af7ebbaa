import { groupIndex, type GroupIndex } from "../design/groupIndex.js";
import { EstimateError } from "../EstimateError.js";

/**
 * The clusters of a fit's rows, by the columns taken together; null for no column.
 *
 * Errors: `too_few` when all rows belong to one cluster, which leaves nothing to tell how clusters differ.
 */
export function clustersOf(rows: readonly object[], used: Int32Array, columns: readonly string[]): GroupIndex | null {
  if (columns.length === 0) return null;
  const groups = groupIndex(rows, used, columns);
  if (groups.count > 1) return groups;
  throw new EstimateError(
    "too_few",
    `All ${used.length} rows used belong to one cluster of ${columns.join(", ")}.`,
    "Cluster by a column with several values, or leave the clusters out and say so.",
  );
}
