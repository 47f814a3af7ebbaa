import type { ChiSquareTest } from "./ChiSquareTest.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { requireCases } from "./numeric/requireCases.js";
import { requireNumber } from "./numeric/requireNumber.js";

/** Test of a trend in proportions over ordered groups. */
export interface TrendTest extends ChiSquareTest {
  /** Signed root of the statistic: below 0 when the proportion falls as the score rises. */
  readonly z: number | null;
  /** Pearson chi-square for any difference between the groups. */
  readonly heterogeneity: ChiSquareTest;
  /** What the trend leaves unexplained: heterogeneity minus trend. */
  readonly departure: ChiSquareTest;
  readonly n: number;
  readonly cases: number;
}

/**
 * Cochran-Armitage test that the proportion of cases rises or falls over ordered groups, such as rain bands.
 *
 * Method: regression of the findings on the group scores (1, 2, 3 ... unless given), with variance p(1-p) sum n_i (x_i - mean)^2
 * taken over N, not N - 1; chi-square on 1 degree of freedom. Observations are taken as independent; for feet within horses fit
 * a model with clusters instead. Null when all or none are cases, or when only one score occurs.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `length_mismatch`; `too_few` for fewer than two groups; `not_a_number`, `not_a_count`, `out_of_range`; `empty` when a
 * group is empty.
 *
 * Source: Cochran WG (1954) Biometrics 10:417-451; Armitage P (1955) Biometrics 11:375-386.
 */
export function trendTest(cases: readonly number[], n: readonly number[], scores?: readonly number[]): TrendTest {
  const x = scores ?? cases.map((_, i) => i + 1);
  if (cases.length !== n.length || x.length !== n.length) {
    throw new EstimateError(
      "length_mismatch",
      `There are ${cases.length} case counts, ${n.length} group sizes and ${x.length} scores.`,
      "Give one case count, one group size and one score for each group.",
    );
  }
  if (n.length < 2) throw new EstimateError("too_few", "There are fewer than two groups.", "Give two groups or more.");
  cases.forEach((y, i) => {
    requireCases(y, n[i]!);
    requireNumber("group score", x[i]!);
  });
  const total = n.reduce((a, b) => a + b, 0);
  const positive = cases.reduce((a, b) => a + b, 0);
  const p = positive / total;
  const mean = n.reduce((sum, size, i) => sum + size * x[i]!, 0) / total;
  const spread = p * (1 - p) * n.reduce((sum, size, i) => sum + size * (x[i]! - mean) ** 2, 0);
  const slope = cases.reduce((sum, y, i) => sum + (x[i]! - mean) * (y - n[i]! * p), 0);
  const z = spread > 0 ? slope / Math.sqrt(spread) : null;
  const pearson = p > 0 && p < 1 ? n.reduce((sum, size, i) => sum + (cases[i]! - size * p) ** 2 / (size * p * (1 - p)), 0) : null;
  const departure = z === null || pearson === null ? null : Math.max(0, pearson - z * z);
  return {
    ...chiSquareTest(z === null ? null : z * z, 1),
    z,
    heterogeneity: chiSquareTest(pearson, n.length - 1),
    departure: chiSquareTest(departure, n.length - 2),
    n: total,
    cases: positive,
  };
}
