import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { requireWithin } from "./numeric/requireWithin.js";
import { tQuantile } from "./numeric/tQuantile.js";

/** Limits within which two measurements of the same thing usually differ. */
export interface LimitsOfAgreement {
  /** Mean difference, first minus second, with Student limits. */
  readonly bias: Interval & { readonly estimate: number };
  /** Standard deviation of the differences, divisor n - 1. */
  readonly sd: number;
  /** Lower and upper limit of agreement, each with its own confidence limits. */
  readonly lowerLimit: Interval & { readonly estimate: number };
  readonly upperLimit: Interval & { readonly estimate: number };
  /** Standard deviations that the limits lie from the bias. */
  readonly multiplier: number;
  /** Mean and difference of each pair, in the order given, to be drawn. */
  readonly points: readonly { readonly mean: number; readonly difference: number }[];
  readonly n: number;
  readonly missing: number;
}

/**
 * Bland-Altman limits of agreement of two ways of measuring, or two observers, on the same things.
 *
 * Method: bias is the mean of first minus second; the limits of agreement lie `multiplier` (1.96 unless given) standard
 * deviations of the differences on either side. Confidence limits use Student's t on n - 1 degrees of freedom with standard
 * errors sd / sqrt(n) for the bias and sd sqrt(1/n + m^2 / (2 (n - 1))) for the limits. Pairs must be independent; several pairs
 * of one horse make the limits too narrow. The limits assume that the differences do not grow with the size measured.
 *
 * Missing: pairs with a null are left out and counted in `missing`.
 *
 * Errors: `too_few` for fewer than two complete pairs; `not_a_number`; `out_of_range` for a multiplier that is negative or a
 * level not between 0 and 1.
 *
 * Source: Bland JM, Altman DG (1986) Lancet 327:307-310; Bland JM, Altman DG (1999) Stat Methods Med Res 8:135-160.
 */
export function blandAltman(
  pairs: readonly { readonly first: number | null; readonly second: number | null }[],
  options: { readonly multiplier?: number; readonly level?: number } = {},
): LimitsOfAgreement {
  const level = requireLevel(options.level ?? 0.95);
  const m = requireWithin("multiplier", options.multiplier ?? normalQuantile(0.975), 0, Infinity);
  const points: { mean: number; difference: number }[] = [];
  for (const { first, second } of pairs) {
    if (first === null || second === null) continue;
    requireNumber("first measurement", first);
    requireNumber("second measurement", second);
    points.push({ mean: (first + second) / 2, difference: first - second });
  }
  const n = points.length;
  if (n < 2) {
    throw new EstimateError("too_few", `There are ${n} complete pairs.`, "Give two pairs or more with both measurements.");
  }
  const bias = points.reduce((sum, { difference }) => sum + difference, 0) / n;
  const sd = Math.sqrt(points.reduce((sum, { difference }) => sum + (difference - bias) ** 2, 0) / (n - 1));
  const t = tQuantile((1 + level) / 2, n - 1);
  const around = (estimate: number, se: number, method: string): Interval & { readonly estimate: number } => {
    if (sd === 0) return { estimate, lower: null, upper: null, level, method, note: "All differences are equal; no limits." };
    return { estimate, lower: estimate - t * se, upper: estimate + t * se, level, method, note: null };
  };
  const limitSe = sd * Math.sqrt(1 / n + (m * m) / (2 * (n - 1)));
  return {
    bias: around(bias, sd / Math.sqrt(n), "Mean difference, Student limits"),
    sd,
    lowerLimit: around(bias - m * sd, limitSe, "Lower limit of agreement, approximate Student limits"),
    upperLimit: around(bias + m * sd, limitSe, "Upper limit of agreement, approximate Student limits"),
    multiplier: m,
    points,
    n,
    missing: pairs.length - n,
  };
}
