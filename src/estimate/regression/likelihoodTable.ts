import type { Coefficient } from "../Coefficient.js";
import { EstimateError } from "../EstimateError.js";
import { requireOneOf } from "../numeric/requireOneOf.js";
import { clusterNotes } from "./clusterNotes.js";
import { coefficientTable } from "./coefficientTable.js";

/** Kind of confidence limits of a likelihood fit. */
export type IntervalKind = "profile" | "wald";

interface Choices {
  readonly level: number;
  readonly interval: IntervalKind | undefined;
  readonly groups: { readonly count: number } | null;
  readonly by: readonly string[];
}

interface Estimated {
  readonly estimates: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly profile: (level: number) => readonly (readonly [number, number])[];
}

/**
 * The coefficients of a generalised linear model with the limits asked for, and how they were had in words. Without clusters profile
 * limits unless Wald ones are asked for, tests by z; with clusters Wald limits and tests by t with one degree of freedom less than
 * clusters.
 *
 * Errors: `out_of_range` for profile limits with clusters, since a likelihood that takes rows for independent cannot give them.
 */
export function likelihoodTable(
  names: readonly string[],
  { estimates, covariance, profile }: Estimated,
  { level, interval, groups, by }: Choices,
): { readonly coefficients: readonly Coefficient[]; readonly words: string; readonly notes: readonly string[] } {
  if (interval !== undefined) requireOneOf("interval", interval, ["profile", "wald"]);
  if (groups !== null && interval === "profile") {
    throw new EstimateError(
      "out_of_range",
      "Profile limits were asked for together with clusters; the likelihood takes rows for independent.",
      'Ask for interval: "wald", or leave the clusters out and say so.',
    );
  }
  const table = coefficientTable(names, estimates, covariance, level, groups === null ? null : groups.count - 1);
  if (groups !== null) {
    return {
      coefficients: table,
      words: `cluster-robust errors over ${groups.count} clusters of ${by.join(", ")}, factor G/(G-1); limits by t with ${groups.count - 1} degrees of freedom`,
      notes: clusterNotes(groups.count, names.length),
    };
  }
  if (interval === "wald") return { coefficients: table, words: "errors from the information; Wald limits", notes: [] };
  const limits = profile(level);
  return {
    coefficients: table.map((row, j) => ({ ...row, lower: limits[j]![0], upper: limits[j]![1] })),
    words: "errors from the information; profile likelihood limits",
    notes: [],
  };
}
