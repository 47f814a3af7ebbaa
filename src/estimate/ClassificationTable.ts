import type { Interval } from "./Interval.js";

/** How often a rule was wrong. */
export interface ClassificationTable {
  /** The classes, in the order of the rows and columns of `confusion`. */
  readonly classes: readonly string[];
  /** Rows are the true class, columns the one the rule said. */
  readonly confusion: readonly (readonly number[])[];
  readonly errors: number;
  readonly n: number;
  /** Errors over n. The limits allow for rows of one group being alike when the rows were held out by group. */
  readonly errorRate: Interval;
  /** How the rule was tried: on the rows it was made from, or on rows held out. */
  readonly method: string;
}
