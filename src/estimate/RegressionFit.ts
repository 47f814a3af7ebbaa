import type { Coefficient } from "./Coefficient.js";
import type { Dropped } from "./Dropped.js";

/** What every regression reports. */
export interface RegressionFit<C extends Coefficient = Coefficient> {
  /** Intercept first, then the terms in the order given. */
  readonly coefficients: readonly C[];
  /** Covariance matrix of the estimates, rows and columns in the order of `coefficients`; the standard errors are the roots of its diagonal. */
  readonly covariance: readonly (readonly number[])[];
  /** Observations used. */
  readonly n: number;
  /** Rows left out, by reason. */
  readonly dropped: readonly Dropped[];
  /** Confidence level of the limits. */
  readonly level: number;
  /** What was fitted, how the errors and limits were had. */
  readonly method: string;
  /** What a reader must know before believing the numbers; empty when nothing. */
  readonly notes: readonly string[];
}
