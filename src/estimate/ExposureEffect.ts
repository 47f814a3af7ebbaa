import type { EstimateErrorCode } from "./EstimateErrorCode.js";
import type { Interval } from "./Interval.js";

/** One effect of an exposure, a line of a forest chart. `estimate` is an odds ratio; null when the records cannot carry it. */
export interface ExposureEffect extends Interval {
  readonly name: string;
  /** What is compared: `rainMm14d per 10`. */
  readonly contrast: string;
  /** What was held equal, in words; empty for a crude effect. */
  readonly adjustedFor: readonly string[];
  /** Standard error of the log odds ratio. */
  readonly seLog: number | null;
  /** Two-sided, of no effect. */
  readonly p: number | null;
  /** Degrees of freedom of t; null for z. */
  readonly df: number | null;
  /** Observations used; null when there is no estimate. */
  readonly n: number | null;
  /** Cases among them. */
  readonly cases: number | null;
  /** Rows left out because something was not recorded; null when there is no estimate. */
  readonly missing: number | null;
  /** Column whose groups the limits allow to be alike; null when observations count as independent. */
  readonly clusteredBy: string | null;
  readonly clusters: number | null;
  /** Why there is no estimate; `note` says it in words. Null when there is one. */
  readonly refused: EstimateErrorCode | null;
}
