import { median } from "simple-statistics";
import type { SignFlip } from "./SignFlip.js";
import { chiSquareQuantile } from "../numeric/chiSquareQuantile.js";

/** Evidence with less than this says nothing of the scatter. */
const LEAST_INFORMATION = 0.5;
/** With fewer, the factor is not known and 1 is taken. */
const FEWEST = 30;

/**
 * By how much the gaps of `flipEvidence` scatter more than independent normal measures would: gaps and their information are divided by it.
 * At least 1.
 *
 * Method: median of (gap + D / 2)^2 / D over the median of a chi-square variable with one degree of freedom. Since most labels are
 * right, the few swapped ones hardly move the median.
 *
 * Source: magnitude adjustment of a composite likelihood, Pauli F, Racugno W, Ventura L (2011) Stat Sin 21:149-164 (from memory); the
 * median in place of the mean is own.
 */
export function flipInflation(evidence: readonly Pick<SignFlip, "gap" | "information">[]): number {
  const told = evidence.filter(({ information }) => information >= LEAST_INFORMATION);
  if (told.length < FEWEST) return 1;
  const squares = told.map(({ gap, information }) => (gap + information / 2) ** 2 / information);
  return Math.max(1, median(squares) / chiSquareQuantile(0.5, 1));
}
