import { quantileSorted } from "simple-statistics";
import { numberColumn } from "./design/numberColumn.js";
import { designMatrix } from "./designMatrix.js";
import { fitLogistic, type LogisticFit } from "./fitLogistic.js";
import { EstimateError } from "./EstimateError.js";
import { linearPredictor } from "./numeric/linearPredictor.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { Term } from "./Term.js";

/** Which stretches of time had a visit, and what decides it. */
export interface VisitTimingOptions {
  /** One row for each horse and stretch of time in which a visit could have come: see `visitPeriods`. */
  readonly rows: readonly object[];
  /** Column: whether a visit came. */
  readonly visited: string;
  /** What the timing of visits may rest on without harm, because the analysis holds it equal: the time since the last visit, the season. */
  readonly numerator: readonly Term[];
  /** The same and what may distort it: what the last visit found. */
  readonly denominator: readonly Term[];
  readonly cluster?: string | readonly string[];
  /** Quantiles of the weights at which they are cut off; 0.01 and 0.99 when left out. */
  readonly truncateAt?: readonly [number, number];
}

/** Weights of visits against timing that follows the finding. */
export interface VisitTimingWeights {
  /** One a row given; null where no visit came or something is missing. */
  readonly weights: readonly (number | null)[];
  readonly visits: number;
  /** Visits without a weight, because a term is missing. */
  readonly missing: number;
  readonly mean: number;
  readonly smallest: number;
  readonly largest: number;
  /** Weights that were cut off. */
  readonly truncated: number;
  /** Number of equally weighted visits that would be as sure: (sum of weights)^2 / sum of squares. */
  readonly effectiveVisits: number;
  /** What decides whether a visit comes; look here first. */
  readonly denominatorFit: LogisticFit;
  readonly method: string;
}

/**
 * Weights for visits that did not come at random: a foot found bad is seen again sooner, so bad spells are over-represented. A visit that was
 * likely to come then and there counts for less.
 *
 * Method: two logistic regressions of a visit in a stretch of time, one on the numerator terms and one on the denominator terms; the weight of a visit is the chance by the first over
 * the chance by the second, in its own stretch, cut off at the quantiles `truncateAt` and divided by the mean. Use them in `fitGee` with correlation
 * "independence" and robust errors. It mends only what the terms know about.
 *
 * Missing: visits of rows with a term missing have no weight and are counted.
 *
 * Errors: those of `fitLogistic`; `out_of_range` for quantiles out of order.
 *
 * Source: Lin H, Scharfstein DO, Rosenheck RA (2004) J R Stat Soc B 66:791-813; Buzkova P, Lumley T (2007) Can J Stat 35:485-500 (stabilised).
 */
export function visitTimingWeights(options: VisitTimingOptions): VisitTimingWeights {
  const { rows, visited, numerator, denominator, cluster, truncateAt = [0.01, 0.99] } = options;
  const [low, high] = truncateAt;
  requireWithin("lower quantile", low, 0, 1);
  if (requireWithin("upper quantile", high, 0, 1) <= low) {
    throw new EstimateError(
      "out_of_range",
      `Weights cannot be cut off at the quantiles ${low} and ${high}.`,
      "Give the lower one first.",
    );
  }
  const also = [cluster ?? []].flat();
  // Both on the same rows, so that the quotient compares like with like.
  const { used } = designMatrix(rows, denominator, { outcome: visited, also });
  const numeratorRows = designMatrix(rows, numerator, { outcome: visited, also }).used;
  const inBoth = new Set(numeratorRows);
  const kept = [...used].filter((place) => inBoth.has(place));
  const chosen = kept.map((place) => rows[place]!);
  const chance = (terms: readonly Term[]) => {
    const fit = fitLogistic({ rows: chosen, outcome: visited, terms, interval: "wald" });
    const { columns } = designMatrix(chosen, terms, { outcome: visited });
    const eta = linearPredictor(
      columns,
      fit.coefficients.map(({ estimate }) => estimate),
    );
    return eta.map((value) => 1 / (1 + Math.exp(-value)));
  };
  const [top, bottom] = [chance(numerator), chance(denominator)];
  const came = numberColumn(chosen, Int32Array.from(chosen.keys()), visited);
  const raw = new Map<number, number>();
  kept.forEach((place, i) => {
    if (came[i] === 1) raw.set(place, top[i]! / bottom[i]!);
  });
  const sorted = [...raw.values()].sort((a, b) => a - b);
  const [least, most] = [quantileSorted(sorted, low), quantileSorted(sorted, high)];
  const cut = new Map([...raw].map(([place, value]) => [place, Math.min(most, Math.max(least, value))]));
  const mean = [...cut.values()].reduce((sum, value) => sum + value, 0) / cut.size;
  const values = [...cut.values()].map((value) => value / mean);
  const squares = values.reduce((sum, value) => sum + value * value, 0);
  const visits = rows.filter(
    (row) =>
      (row as Readonly<Record<string, unknown>>)[visited] === true || (row as Readonly<Record<string, unknown>>)[visited] === 1,
  ).length;
  return {
    weights: rows.map((_, place) => {
      const value = cut.get(place);
      return value === undefined ? null : value / mean;
    }),
    visits,
    missing: visits - raw.size,
    mean,
    smallest: Math.min(...values),
    largest: Math.max(...values),
    truncated: sorted.filter((value) => value < least || value > most).length,
    effectiveVisits: values.length ** 2 / squares,
    denominatorFit: fitLogistic({
      rows: chosen,
      outcome: visited,
      terms: denominator,
      ...(cluster === undefined ? { interval: "wald" as const } : { cluster }),
    }),
    method: `Stabilised inverse-intensity weights of ${raw.size} visits, cut off at quantiles ${low} and ${high}, mean 1`,
  };
}
