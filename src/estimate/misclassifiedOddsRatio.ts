import type { ClassifiedOutcome } from "./ClassifiedOutcome.js";
import type { EffectInterval } from "./EffectInterval.js";
import { requireClassification } from "./numeric/requireClassification.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireTable } from "./numeric/requireTable.js";
import { waldEffect } from "./numeric/waldEffect.js";
import type { TwoByTwo } from "./TwoByTwo.js";

/** An odds ratio corrected for an imperfect examination. */
export interface CorrectedOddsRatio extends EffectInterval {
  /** Odds ratio of the table as it stands; null when 0/0. */
  readonly apparent: number | null;
  /** The table that would have been counted without error, on average; whole numbers no longer. Null when the values do not fit the counts. */
  readonly corrected: TwoByTwo | null;
}

/**
 * Odds ratio of a two-by-two table when the examination misses some cases and calls some clear feet cases, equally whatever the exposure.
 *
 * Method: in each exposure group of size n with p called cases the true share is (p + specificity - 1) / (sensitivity + specificity - 1). The log
 * standard error is the root of the sum over both groups of p(1 - p) / n over the square of (sensitivity + specificity - 1) t (1 - t), t the true share. Feet count as independent,
 * sensitivity and specificity as known: the truth is less sure than the limits say. `fitMisclassifiedLogistic` allows for clusters and other terms.
 *
 * Missing: when a true share would be 0 or less, or 1 or more, the values stated cannot have produced the counts: the estimate is null and `note`
 * says which values could.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty`; `out_of_range` for values outside 0 to 1, a sum of 1 or less, or the level.
 *
 * Source: Barron BA (1977) Biometrics 33:414-418; Greenland S (1988) Stat Med 7:745-757 (variance).
 */
export function misclassifiedOddsRatio(
  table: TwoByTwo,
  { sensitivity, specificity }: ClassifiedOutcome,
  options: { readonly level?: number } = {},
): CorrectedOddsRatio {
  const level = requireLevel(options.level ?? 0.95);
  requireTable(table);
  const informed = requireClassification({ sensitivity, specificity });
  const { a, b, c, d } = table;
  const method = `Odds ratio corrected for sensitivity ${sensitivity} and specificity ${specificity}, Wald limits on the log scale`;
  const apparent = b * c === 0 ? (a * d === 0 ? null : Infinity) : (a * d) / (b * c);
  const groups = [
    { name: "exposed", cases: a, n: a + b },
    { name: "unexposed", cases: c, n: c + d },
  ].map(({ name, cases, n }) => ({ name, n, p: cases / n, t: (cases / n + specificity - 1) / informed }));
  const misfit = groups.filter(({ t }) => !(t > 0 && t < 1));
  if (misfit.length > 0) {
    const words = misfit.map(({ name, n, p }) =>
      n === 0
        ? `nothing was ${name}`
        : `${(100 * p).toFixed(1)} % of the ${name} were called cases, which needs a specificity above ${(1 - p).toFixed(4)} and a sensitivity above ${p.toFixed(4)}`,
    );
    const none = { estimate: null, se: null, lower: null, upper: null };
    return { ...none, level, method, apparent, corrected: null, note: `Not these values: ${words.join("; ")}.` };
  }
  const [exposed, unexposed] = groups as [(typeof groups)[0], (typeof groups)[0]];
  const odds = ({ t }: { readonly t: number }) => t / (1 - t);
  const variance = groups.reduce((sum, { n, p, t }) => sum + (p * (1 - p)) / n / (informed * t * (1 - t)) ** 2, 0);
  return {
    ...waldEffect(odds(exposed) / odds(unexposed), Math.sqrt(variance), "ratio", level, {
      method,
      why: "A group is called all cases or all clear, so the odds ratio has no Wald limits.",
    }),
    apparent,
    corrected: {
      a: exposed.t * exposed.n,
      b: (1 - exposed.t) * exposed.n,
      c: unexposed.t * unexposed.n,
      d: (1 - unexposed.t) * unexposed.n,
    },
  };
}
