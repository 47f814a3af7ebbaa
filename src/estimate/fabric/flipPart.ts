/** A reading farther than this many standard deviations from what either label would give is an error of another kind. */
const FITS_NEITHER = 4;

/**
 * Log-likelihood that a contrast has the wrong sign less that it has the right one, from a reading, what it should be, and the variance of a
 * reading about that: -2 d m / v under a normal law.
 *
 * Missing: NaN, which says nothing, when one of the three is NaN or the reading lies more than four standard deviations from both m and -m.
 *
 * Source: own, from the normal likelihood.
 */
export function flipPart(value: number, expected: number, variance: number): number {
  const nearer = Math.abs(Math.abs(value) - Math.abs(expected));
  return nearer <= FITS_NEITHER * Math.sqrt(variance) ? (-2 * value * expected) / variance : NaN;
}
