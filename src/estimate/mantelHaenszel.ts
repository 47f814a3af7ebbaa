import type { ChiSquareTest } from "./ChiSquareTest.js";
import type { EffectInterval } from "./EffectInterval.js";
import { EstimateError } from "./EstimateError.js";
import { breslowDay } from "./breslowDay.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import { ratioOf } from "./numeric/ratioOf.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireOneOf } from "./numeric/requireOneOf.js";
import { requireTable } from "./numeric/requireTable.js";
import { waldEffect } from "./numeric/waldEffect.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/** Which effect is pooled over strata. */
export type MantelHaenszelMeasure = "oddsRatio" | "riskRatio" | "riskDifference";

/** A pooled effect with its tests. */
export interface MantelHaenszelEstimate extends EffectInterval {
  readonly measure: MantelHaenszelMeasure;
  /** Cochran-Mantel-Haenszel test of no association, without and with continuity correction. */
  readonly cmh: ChiSquareTest & { readonly corrected: ChiSquareTest };
  /** Tests that the odds ratio is the same in all strata; null unless the measure is the odds ratio. */
  readonly breslowDay: ChiSquareTest | null;
  readonly tarone: ChiSquareTest | null;
  /** Strata that the estimate rests on. */
  readonly strata: number;
  /** Strata left out because they can say nothing about the measure. */
  readonly dropped: number;
  /** Observations in the strata used. */
  readonly n: number;
}

/**
 * Mantel-Haenszel effect of an exposure over several two-by-two tables (strata), so that what defines the strata, such as
 * season or yard, does not stand in for the exposure.
 *
 * Method: with R = ad/n and S = bc/n of each stratum the odds ratio is sum R / sum S, its log variance by Robins, Breslow and
 * Greenland; the risk ratio is sum a(c+d)/n over sum c(a+b)/n, its log variance by Greenland and Robins; the risk difference
 * weighs strata by (a+b)(c+d)/n, its variance by Sato, Greenland and Robins. The CMH test compares sum a with its expectation
 * given the margins. Strata without exposed or without unexposed are left out, for ratios also those without cases and, for
 * the odds ratio, those without others; `dropped` counts them. Limits are null, with a `note`, when the pooled ratio is 0,
 * infinite or unknown; `conditionalOddsRatio` has exact limits.
 *
 * Missing: whoever counts leaves the missing out and says how many there were.
 *
 * Errors: `empty` for no strata or an empty stratum; `not_a_number`, `not_a_count`; `out_of_range` for a level not between 0
 * and 1.
 *
 * Source: Mantel N, Haenszel W (1959) J Natl Cancer Inst 22:719-748; Robins J, Breslow N, Greenland S (1986) Biometrics
 * 42:311-323; Greenland S, Robins JM (1985) Biometrics 41:55-68; Sato T, Greenland S, Robins JM (1989) Biometrics
 * 45:1323-1324.
 */
export function mantelHaenszel(
  strata: readonly TwoByTwo[],
  options: { readonly measure?: MantelHaenszelMeasure; readonly level?: number } = {},
): MantelHaenszelEstimate {
  const { measure = "oddsRatio" } = options;
  requireOneOf("measure", measure, ["oddsRatio", "riskRatio", "riskDifference"]);
  const level = requireLevel(options.level ?? 0.95);
  if (strata.length === 0) throw new EstimateError("empty", "There are no strata.", "Give at least one two-by-two table.");
  for (const stratum of strata) requireTable(stratum);
  const used = strata.filter((stratum) => informs(stratum, measure));
  const dropped = strata.length - used.length;
  const { estimate, se } = { oddsRatio: pooledOdds, riskRatio: pooledRisks, riskDifference: pooledDifference }[measure](used);
  const words = { oddsRatio: "odds ratio", riskRatio: "risk ratio", riskDifference: "risk difference" }[measure];
  const effect = waldEffect(estimate, se, measure === "riskDifference" ? "difference" : "ratio", level, {
    method: `Mantel-Haenszel ${words}, ${used.length} strata`,
    why: "No stratum, or only one side of the comparison, informs the effect, so it has no Wald limits.",
  });
  const odds = measure === "oddsRatio" && effect.se !== null ? breslowDay(used, { oddsRatio: effect.estimate! }) : null;
  const left = dropped > 0 ? `${dropped} of ${strata.length} strata say nothing about the ${words} and were left out.` : null;
  return {
    ...effect,
    note: [left, effect.note].filter((text) => text !== null).join(" ") || null,
    measure,
    cmh: cochranMantelHaenszel(strata),
    breslowDay: odds?.breslowDay ?? null,
    tarone: odds?.tarone ?? null,
    strata: used.length,
    dropped,
    n: total(used, ({ a, b, c, d }) => a + b + c + d),
  };
}

interface Pooled {
  readonly estimate: number | null;
  readonly se: number | null;
}

/** A stratum with its total. */
type Cells = TwoByTwo & { readonly n: number };

function total(strata: readonly TwoByTwo[], part: (cells: Cells) => number): number {
  return strata.reduce((sum, { a, b, c, d }) => sum + part({ a, b, c, d, n: a + b + c + d }), 0);
}

function informs({ a, b, c, d }: TwoByTwo, measure: MantelHaenszelMeasure): boolean {
  const groups = a + b > 0 && c + d > 0;
  if (measure === "riskDifference") return groups;
  return groups && a + c > 0 && (measure === "riskRatio" || b + d > 0);
}

function pooledOdds(strata: readonly TwoByTwo[]): Pooled {
  const r = total(strata, ({ a, d, n }) => (a * d) / n);
  const s = total(strata, ({ b, c, n }) => (b * c) / n);
  const pr = total(strata, ({ a, d, n }) => ((a + d) / n) * ((a * d) / n));
  const mixed = total(strata, ({ a, b, c, d, n }) => ((a + d) / n) * ((b * c) / n) + ((b + c) / n) * ((a * d) / n));
  const qs = total(strata, ({ b, c, n }) => ((b + c) / n) * ((b * c) / n));
  const variance = pr / (2 * r * r) + mixed / (2 * r * s) + qs / (2 * s * s);
  return { estimate: ratioOf(r, s), se: Math.sqrt(variance) };
}

function pooledRisks(strata: readonly TwoByTwo[]): Pooled {
  const r = total(strata, ({ a, c, d, n }) => (a * (c + d)) / n);
  const s = total(strata, ({ a, b, c, n }) => (c * (a + b)) / n);
  const top = total(strata, ({ a, b, c, d, n }) => ((a + b) * (c + d) * (a + c) - a * c * n) / (n * n));
  return { estimate: ratioOf(r, s), se: Math.sqrt(top / (r * s)) };
}

function pooledDifference(strata: readonly TwoByTwo[]): Pooled {
  const weight = total(strata, ({ a, b, c, d, n }) => ((a + b) * (c + d)) / n);
  if (weight === 0) return { estimate: null, se: null };
  const estimate = total(strata, ({ a, b, c, d, n }) => (a * (c + d) - c * (a + b)) / n) / weight;
  const p = total(
    strata,
    ({ a, b, c, d, n }) => ((a + b) ** 2 * c - (c + d) ** 2 * a + ((a + b) * (c + d) * (c + d - (a + b))) / 2) / (n * n),
  );
  const q = total(strata, ({ a, b, c, d, n }) => (a * d + c * b) / (2 * n));
  return { estimate, se: Math.sqrt((estimate * p + q) / (weight * weight)) };
}

function cochranMantelHaenszel(strata: readonly TwoByTwo[]): MantelHaenszelEstimate["cmh"] {
  const usable = strata.filter(({ a, b, c, d }) => a + b + c + d > 1);
  const gap = Math.abs(total(usable, ({ a, b, c, n }) => a - ((a + b) * (a + c)) / n));
  const variance = total(usable, ({ a, b, c, d, n }) => ((a + b) * (c + d) * (a + c) * (b + d)) / (n * n * (n - 1)));
  const test = (distance: number): ChiSquareTest => chiSquareTest(variance > 0 ? (distance * distance) / variance : null, 1);
  return { ...test(gap), corrected: test(gap >= 0.5 ? gap - 0.5 : gap) };
}
