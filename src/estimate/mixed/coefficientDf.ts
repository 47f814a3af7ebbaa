import type { GroupIndex } from "../design/groupIndex.js";
import type { DesignMatrix } from "../designMatrix.js";
import { EstimateError } from "../EstimateError.js";
import { containmentDf } from "./containmentDf.js";

/**
 * Containment degrees of freedom of each coefficient of a design.
 *
 * Errors: `too_few` when none are left for some.
 */
export function coefficientDf(
  { names, columns }: DesignMatrix,
  indices: readonly GroupIndex[],
  groups: readonly string[],
  total: number,
): readonly number[] {
  const kinds = indices.map(({ index }) => index);
  const df = containmentDf(columns, kinds, total);
  const short = names.filter((_, j) => df[j]! <= 0);
  if (short.length === 0) return df;
  const counts = groups.map((group, g) => `${indices[g]!.count} groups of ${group}`).join(" and ");
  throw new EstimateError(
    "too_few",
    `With ${counts}, nothing is left to judge ${short.map((name) => `"${name}"`).join(", ")} by: each changes only between groups of which there are too few.`,
    "Use more groups, or leave such terms out.",
  );
}
