import type { SignFlip } from "./SignFlip.js";
import type { Prediction } from "./Prediction.js";

/** A reading farther than this many standard deviations from what either label would give is an error of another kind. */
const FITS_NEITHER = 4;

/**
 * Evidence that contrasts, such as left less right, have the wrong sign because two labels were swapped.
 *
 * Method: with reading d, expectation m and variance v of each measure, the log-likelihood ratio of -d against d under a normal law is
 * -2 d m / v; measures are taken as independent and added (see `flipInflation` for what that overstates). When nothing was swapped, it
 * has mean -D / 2 and variance D = sum of 4 m^2 / v; when swapped, mean D / 2.
 *
 * Missing: a measure that was not read or has no prediction, or that lies more than four standard deviations from both m and -m, says
 * nothing.
 *
 * Source: own, from the normal likelihood.
 */
export function flipEvidence(values: readonly (number | null)[], expectations: readonly Prediction[]): SignFlip {
  let information = 0;
  const parts = values.map((value, place) => {
    const prediction = expectations[place] ?? null;
    if (value === null || prediction === null) return 0;
    const { expected, variance } = prediction;
    const nearer = Math.min(Math.abs(value - expected), Math.abs(value + expected));
    if (nearer > FITS_NEITHER * Math.sqrt(variance)) return 0;
    information += (4 * expected ** 2) / variance;
    return (-2 * value * expected) / variance;
  });
  return { gap: parts.reduce((sum, part) => sum + part, 0), information, parts };
}
