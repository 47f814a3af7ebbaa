import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";
import { wilsonLimits } from "./numeric/wilsonLimits.js";

/** Prevalence corrected for an imperfect examination. */
export interface TruePrevalence extends Interval {
  readonly estimate: number;
  /** The corrected value before it was cut to lie within 0 and 1. */
  readonly uncut: number;
  /** Standard error of `uncut`; null unless `n` was given. */
  readonly se: number | null;
  readonly apparent: number;
  readonly sensitivity: number;
  readonly specificity: number;
}

/**
 * True prevalence behind an apparent one, when the examination misses some cases (sensitivity below 1) and calls some others
 * cases (specificity below 1).
 *
 * Method: (apparent + specificity - 1) / (sensitivity + specificity - 1), cut to 0 and 1. With `n`, the number (or effective
 * number) examined, the standard error is sqrt(apparent (1 - apparent) / n) over the same divisor, and the limits are the
 * Wilson limits of the apparent prevalence taken through the same correction. Sensitivity and specificity count as known
 * exactly; if they are estimates, the truth is less sure than the limits say.
 *
 * Missing: not applicable. Without `n` there are no limits.
 *
 * Errors: `not_a_number`; `out_of_range` for a proportion outside 0 to 1, an `n` that is not positive, a level not between 0
 * and 1, or sensitivity + specificity of 1 or less, where the examination tells nothing.
 *
 * Source: Rogan WJ, Gladen B (1978) Am J Epidemiol 107:71-76.
 */
export function trueFromApparent(
  apparent: number,
  sensitivity: number,
  specificity: number,
  options: { readonly n?: number; readonly level?: number } = {},
): TruePrevalence {
  const level = requireLevel(options.level ?? 0.95);
  requireWithin("apparent prevalence", apparent, 0, 1);
  requireWithin("sensitivity", sensitivity, 0, 1);
  requireWithin("specificity", specificity, 0, 1);
  const divisor = sensitivity + specificity - 1;
  if (divisor < 1e-9) {
    throw new EstimateError(
      "out_of_range",
      `Sensitivity ${sensitivity} and specificity ${specificity} add up to 1 or less, so the examination tells nothing.`,
      "Give values whose sum is above 1.",
    );
  }
  const corrected = (p: number): number => (p + specificity - 1) / divisor;
  const cut = (p: number): number => Math.min(1, Math.max(0, corrected(p)));
  const base = { estimate: cut(apparent), uncut: corrected(apparent), level, apparent, sensitivity, specificity };
  const method = "Rogan-Gladen correction of the apparent prevalence";
  const outside =
    base.uncut < 0 || base.uncut > 1
      ? "The corrected value lies outside 0 to 1 and was cut; check sensitivity and specificity. "
      : "";
  if (options.n === undefined) {
    return {
      ...base,
      se: null,
      lower: null,
      upper: null,
      method,
      note: `${outside}No number examined was given, so there are no limits.`,
    };
  }
  const n = requireWithin("number examined", options.n, Number.MIN_VALUE, Infinity);
  const { lower, upper } = wilsonLimits(apparent, n, normalQuantile((1 + level) / 2));
  const se = Math.sqrt((apparent * (1 - apparent)) / n) / divisor;
  return { ...base, se, lower: cut(lower), upper: cut(upper), method: `${method}, Wilson limits`, note: outside.trim() || null };
}
