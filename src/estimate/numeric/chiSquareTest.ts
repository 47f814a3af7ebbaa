import type { ChiSquareTest } from "../ChiSquareTest.js";
import { chiSquareUpper } from "./chiSquareUpper.js";

/** A chi-square test from its statistic; a statistic that is null or no number gives null. */
export function chiSquareTest(statistic: number | null, df: number): ChiSquareTest {
  if (statistic === null || !Number.isFinite(statistic) || df < 1) return { statistic: null, df, p: null };
  return { statistic, df, p: chiSquareUpper(statistic, df) };
}
