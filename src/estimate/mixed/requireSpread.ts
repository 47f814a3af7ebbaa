import type { GroupIndex } from "../design/groupIndex.js";
import { EstimateError } from "../EstimateError.js";

interface Observed {
  readonly cases: Float64Array;
  readonly n: Float64Array;
}

/** Fewer groups than this with more than one observation say little about differences between groups. */
const FEW = 10;

/**
 * Checks that the rows can tell differences between the groups from chance; `indices` are the groups, outermost first, named by
 * `names`. Returns what a reader must know.
 *
 * Errors: `too_few` for one group only, for one inner group in every outer group, or for one observation in every inner group;
 * `separation` when the outcome never differs within an inner group, so that their SD has no finite estimate.
 */
export function requireSpread(
  names: readonly string[],
  indices: readonly GroupIndex[],
  { cases, n }: Observed,
): readonly string[] {
  names.forEach((name, g) => {
    if (indices[g]!.count > 1) return;
    throw new EstimateError(
      "too_few",
      `All rows used belong to one group of ${name}, so differences between them cannot be estimated.`,
      `Leave "${name}" out of the groups, or use more of them.`,
    );
  });
  const inner = indices.at(-1)!;
  const name = names.at(-1)!;
  if (names.length === 2 && inner.count === indices[0]!.count) {
    throw new EstimateError(
      "too_few",
      `Every group of ${names[0]!} holds one of ${name}, so differences between the two kinds cannot be told apart.`,
      `Name one of them.`,
    );
  }
  const groupCases = new Float64Array(inner.count);
  const groupN = new Float64Array(inner.count);
  inner.index.forEach((group, row) => {
    groupCases[group]! += cases[row]!;
    groupN[group]! += n[row]!;
  });
  const several = groupN.reduce((count, size) => count + (size > 1 ? 1 : 0), 0);
  if (several === 0) {
    throw new EstimateError(
      "too_few",
      `Every group of ${name} has one observation, so differences between them cannot be told from chance.`,
      `Leave "${name}" out of the groups.`,
    );
  }
  if (groupCases.every((count, group) => count === 0 || count === groupN[group])) {
    throw new EstimateError(
      "separation",
      `Within every group of ${name} the outcome is always the same, so the spread between them has no finite estimate.`,
      `Count each group of ${name} once instead.`,
    );
  }
  if (several >= FEW) return [];
  return [
    `Only ${several === inner.count ? "" : `${several} of `}${inner.count} groups of ${name} have more than one observation; their SD is weakly identified.`,
  ];
}
