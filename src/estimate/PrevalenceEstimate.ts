import type { Interval } from "./Interval.js";

/** What is counted: a foot at a visit, a visit of a horse, a horse, a yard. */
export type PrevalenceUnit = "foot-visit" | "visit" | "horse" | "yard";

/** Prevalence counted in one unit. */
export interface PrevalenceEstimate extends Interval {
  readonly unit: PrevalenceUnit;
  readonly cases: number;
  /** Units in which the finding is known. */
  readonly n: number;
  /** Units in which it is not. */
  readonly missing: number;
  /** Units counted as clear although some of their rows are not known. */
  readonly partlyKnown: number;
  /** What the limits allow to be alike; null when units count as independent. */
  readonly clusteredBy: "horse" | "yard" | null;
  /** Clusters with a known unit; equals `n` when units count as independent. */
  readonly clusters: number;
  readonly designEffect: number | null;
  readonly icc: number | null;
  readonly effectiveN: number | null;
}
