import type { GroupIndex } from "../design/groupIndex.js";
import { EstimateError } from "../EstimateError.js";

/** Fewer groups than this and their SD is little more than a guess (common practice, no source). */
const FEW = 10;

/**
 * Checks that the rows can tell differences between groups from differences within them; `indices` are the groups, outermost first,
 * named by `names`. Returns what a reader must know.
 *
 * Errors: `too_few` for one group only, as many inner groups as outer ones, or as many groups as rows; `no_variation` when the
 * outcome never differs within an innermost group.
 */
export function requireReplicates(
  names: readonly string[],
  indices: readonly GroupIndex[],
  outcome: Float64Array,
): readonly string[] {
  const counts = [...indices.map(({ count }) => count), outcome.length];
  names.forEach((name, g) => {
    if (counts[g] === 1) {
      throw new EstimateError(
        "too_few",
        `All rows used belong to one group of ${name}, so differences between them cannot be estimated.`,
        `Leave "${name}" out of the groups, or use more of them.`,
      );
    }
    if (counts[g] === counts[g + 1]) {
      throw new EstimateError(
        "too_few",
        `Every group of ${name} holds one ${names[g + 1] ?? "row"}, so differences between the two cannot be told apart.`,
        `Leave "${name}" out of the groups.`,
      );
    }
  });
  const inner = indices.at(-1)!;
  const first = new Float64Array(inner.count).fill(NaN);
  const differs = outcome.some((value, row) => {
    const group = inner.index[row]!;
    if (Number.isNaN(first[group])) first[group] = value;
    return first[group] !== value;
  });
  if (!differs) {
    throw new EstimateError(
      "no_variation",
      `Within every group of ${names.at(-1)!} the outcome is always the same.`,
      `Use one row a group instead of mixed effects.`,
    );
  }
  return names.flatMap((name, g) =>
    counts[g]! < FEW ? [`With ${counts[g]!} groups of ${name}, fewer than ${FEW}, their SD is known poorly.`] : [],
  );
}
