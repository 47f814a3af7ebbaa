import type { ClusterCount } from "./ClusterCount.js";
import { clusteredProportion } from "./clusteredProportion.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareUpper } from "./numeric/chiSquareUpper.js";
import { requireClusters } from "./numeric/requireClusters.js";
import { requireOneOf } from "./numeric/requireOneOf.js";

/** One group of the test. */
export interface RaoScottGroup {
  readonly estimate: number;
  /** Null when all clusters of the group are alike; it then counts as 1. */
  readonly designEffect: number | null;
  readonly clusters: number;
  readonly n: number;
  readonly cases: number;
}

/** Test that groups of clusters have the same proportion. */
export interface RaoScottTest {
  /** Adjusted chi-square; null when all or none of the observations are cases. */
  readonly statistic: number | null;
  readonly df: number;
  readonly p: number | null;
  /** Pearson chi-square that takes observations as independent, to compare. */
  readonly naive: { readonly statistic: number | null; readonly p: number | null };
  /** Design effect shared by the groups, when `designEffect` is `pooled`. */
  readonly pooledDesignEffect: number | null;
  readonly groups: readonly RaoScottGroup[];
  readonly method: string;
  readonly note: string | null;
}

/**
 * Rao-Scott chi-square test that two or more groups of clusters have the same proportion of cases, such as the feet of horses
 * on two kinds of bedding.
 *
 * Method: cases and observations of each group are divided by the design effect of the group (`separate`), and the Pearson
 * chi-square of the divided table has groups - 1 degrees of freedom. With `pooled`, the plain chi-square is divided by one
 * design effect, sum (1 - n_i/n) p_i(1-p_i)/(p(1-p)) d_i / (groups - 1), which suits groups with like correlation. A group
 * whose clusters are all alike has no measured design effect; it counts as 1 and `note` says so.
 *
 * Missing: whoever counts leaves the missing out. Clusters without an observation do not count.
 *
 * Errors: `too_few` for fewer than two groups or a group with one cluster; `not_a_number`, `not_a_count`, `out_of_range`,
 * `empty` as in `clusteredProportion`.
 *
 * Source: Rao JNK, Scott AJ (1992) Biometrics 48:577-585.
 */
export function raoScott(
  groups: readonly (readonly ClusterCount[])[],
  options: { readonly designEffect?: "separate" | "pooled" } = {},
): RaoScottTest {
  const { designEffect = "separate" } = options;
  requireOneOf("design effect", designEffect, ["separate", "pooled"]);
  if (groups.length < 2) throw new EstimateError("too_few", "There are fewer than two groups.", "Give two groups or more.");
  const parts = groups.map((clusters) => {
    const { estimate, designEffect: effect, clusters: k, n, cases } = clusteredProportion(requireClusters(clusters));
    if (k < 2) throw new EstimateError("too_few", "A group has only one cluster.", "Give every group two clusters or more.");
    return { estimate, designEffect: effect, clusters: k, n, cases };
  });
  const df = parts.length - 1;
  const unmeasured = parts.filter((part) => part.designEffect === null).length;
  const naive = pearson(parts, () => 1);
  const pooled = designEffect === "pooled" ? pooledEffect(parts) : null;
  const statistic = designEffect === "separate" ? pearson(parts, (part) => part.designEffect ?? 1) : quotient(naive, pooled);
  const p = (x: number | null): number | null => (x === null ? null : chiSquareUpper(x, df));
  return {
    statistic,
    df,
    p: p(statistic),
    naive: { statistic: naive, p: p(naive) },
    pooledDesignEffect: pooled,
    groups: parts,
    method: `Rao-Scott chi-square, ${designEffect} design effect`,
    note:
      unmeasured > 0
        ? `Clusters are all alike in ${unmeasured} of ${parts.length} groups; design effect 1 was taken there.`
        : null,
  };
}

function pearson(groups: readonly RaoScottGroup[], effect: (group: RaoScottGroup) => number): number | null {
  const n = groups.reduce((sum, group) => sum + group.n / effect(group), 0);
  const p = groups.reduce((sum, group) => sum + group.cases / effect(group), 0) / n;
  if (p <= 0 || p >= 1) return null;
  return groups.reduce((sum, group) => sum + ((group.n / effect(group)) * (group.estimate - p) ** 2) / (p * (1 - p)), 0);
}

function pooledEffect(groups: readonly RaoScottGroup[]): number | null {
  const n = groups.reduce((sum, group) => sum + group.n, 0);
  const p = groups.reduce((sum, group) => sum + group.cases, 0) / n;
  if (p === 0 || p === 1) return null;
  const part = (g: RaoScottGroup): number => (1 - g.n / n) * g.estimate * (1 - g.estimate) * (g.designEffect ?? 1);
  return groups.reduce((sum, group) => sum + part(group), 0) / (p * (1 - p)) / (groups.length - 1);
}

function quotient(a: number | null, b: number | null): number | null {
  return a === null || b === null || b === 0 ? null : a / b;
}
