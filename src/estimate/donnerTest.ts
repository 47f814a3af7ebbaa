import type { ClusterCount } from "./ClusterCount.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareUpper } from "./numeric/chiSquareUpper.js";
import { requireClusters } from "./numeric/requireClusters.js";

/** One group of the test. */
export interface DonnerGroup {
  readonly estimate: number;
  /** How many times larger the variance of the group's count is for its clusters; null when the correlation is not known. */
  readonly correction: number | null;
  readonly clusters: number;
  readonly n: number;
  readonly cases: number;
}

/** Test that groups of clusters have the same proportion, with one correlation for all. */
export interface DonnerTest {
  /** Adjusted chi-square; null when all or none of the observations are cases, or the correlation is not known. */
  readonly statistic: number | null;
  readonly df: number;
  readonly p: number | null;
  /** Intraclass correlation shared by the groups; null when no group can tell it. */
  readonly icc: number | null;
  readonly groups: readonly DonnerGroup[];
  readonly method: string;
  readonly note: string | null;
}

/**
 * Donner's adjusted chi-square test that two or more groups of clusters have the same proportion of cases, the members of a cluster
 * being as alike in one group as in another. `raoScott` does without that assumption and wants more clusters.
 *
 * Method: the common intraclass correlation r is the analysis-of-variance one, its mean squares pooled within groups. The term of
 * group i of the chi-square, (y_i - n_i p)^2 / (n_i p (1-p)), is divided by C_i = sum over its clusters of m (1 + (m - 1) r) / n_i, m
 * the members; groups - 1 degrees of freedom.
 *
 * Missing: whoever counts leaves the missing out. Clusters without an observation do not count.
 *
 * Errors: `too_few` for fewer than two groups or a group with one cluster; `not_a_number`, `not_a_count`, `out_of_range`; `empty`
 * for a group without an observation.
 *
 * Source: Donner A (1989) Biometrics 45:1159-1169.
 */
export function donnerTest(groups: readonly (readonly ClusterCount[])[]): DonnerTest {
  if (groups.length < 2) throw new EstimateError("too_few", "There are fewer than two groups.", "Give two groups or more.");
  const filled = groups.map(requireClusters);
  if (filled.some((clusters) => clusters.length < 2)) {
    throw new EstimateError("too_few", "A group has only one cluster.", "Give every group two clusters or more.");
  }
  const icc = commonCorrelation(filled);
  const parts = filled.map((clusters) => {
    const [n, cases] = [total(clusters, (c) => c.n), total(clusters, (c) => c.cases)];
    const correction = icc === null ? null : total(clusters, (c) => c.n * (1 + (c.n - 1) * icc)) / n;
    return { estimate: cases / n, correction, clusters: clusters.length, n, cases };
  });
  const p = total(parts, (part) => part.cases) / total(parts, (part) => part.n);
  const known = p > 0 && p < 1 && parts.every(({ correction }) => correction !== null && correction > 0);
  const statistic = known
    ? total(parts, ({ cases, n, correction }) => (cases - n * p) ** 2 / (n * correction! * p * (1 - p)))
    : null;
  const df = parts.length - 1;
  return {
    statistic,
    df,
    p: statistic === null ? null : chiSquareUpper(statistic, df),
    icc,
    groups: parts,
    method: "Donner's adjusted chi-square, one intraclass correlation",
    note: known ? null : why(p, icc),
  };
}

function total<Item>(items: readonly Item[], part: (item: Item) => number): number {
  return items.reduce((sum, item) => sum + part(item), 0);
}

/** Null when no cluster has two members, or nothing differs within the groups. */
function commonCorrelation(groups: readonly (readonly ClusterCount[])[]): number | null {
  const all = groups.flat();
  const [n, k, between] = [total(all, (c) => c.n), all.length, all.length - groups.length];
  if (n === k) return null;
  const within = total(all, (c) => (c.cases * (c.n - c.cases)) / c.n) / (n - k);
  const spread = total(groups, (clusters) => {
    const p = total(clusters, (c) => c.cases) / total(clusters, (c) => c.n);
    return total(clusters, (c) => c.n * (c.cases / c.n - p) ** 2);
  });
  const squares = total(groups, (clusters) => total(clusters, (c) => c.n * c.n) / total(clusters, (c) => c.n));
  const [meanSquare, size] = [spread / between, (n - squares) / between];
  const sum = meanSquare + (size - 1) * within;
  return sum > 0 ? (meanSquare - within) / sum : null;
}

function why(p: number, icc: number | null): string {
  if (p === 0 || p === 1) return `${p === 0 ? "None" : "All"} of the observations are cases, so there is nothing to test.`;
  if (icc === null)
    return "The correlation within clusters is not known: no cluster has two members, or groups differ throughout.";
  return "The correlation within clusters comes out too far below zero for a variance; use raoScott.";
}
