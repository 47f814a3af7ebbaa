import { median } from "simple-statistics";
import { chiSquareQuantile } from "../numeric/chiSquareQuantile.js";
import type { FlipGaps } from "./FlipGaps.js";

/** Evidence with less than this says nothing of the scatter. */
const LEAST_INFORMATION = 0.5;
/** With fewer, the factor is not known and 1 is taken. */
const FEWEST = 30;

/**
 * By how much the gaps of `signFlips` scatter more than independent normal measures would: gaps and their information are divided by it.
 * At least 1.
 *
 * Method: median of (gap + D / 2)^2 / D over the median of a chi-square variable with one degree of freedom. Since most labels are
 * right, the few swapped ones hardly move the median.
 *
 * Source: magnitude adjustment of a composite likelihood, Pauli F, Racugno W, Ventura L (2011) Stat Sin 21:149-164 (from memory); the
 * median in place of the mean is own.
 */
export function flipInflation({ gap, information }: Pick<FlipGaps, "gap" | "information">): number {
  const squares = gap.flatMap((of, row) => {
    const told = information[row] ?? 0;
    return told < LEAST_INFORMATION ? [] : [(of + told / 2) ** 2 / told];
  });
  if (squares.length < FEWEST) return 1;
  return Math.max(1, median(squares) / chiSquareQuantile(0.5, 1));
}
