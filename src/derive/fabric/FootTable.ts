import type { FootSet } from "./FootSet.js";

/** The sets of a herd, by horse and day, with their measures in columns, so that a million feet can be compared in seconds. */
export interface FootTable {
  readonly sets: readonly FootSet[];
  /** Place of the first set of each horse, and the number of sets at the end. */
  readonly starts: Int32Array;
  /** Number of the day of each set among the days of its horse, from 0. */
  readonly days: Int32Array;
  /** The measures of each set: those of `fabricMeasures` for each of `standingFeet`. NaN where a foot was not measured. */
  readonly values: Float64Array;
}
