import { grouped } from "../study/grouped.js";
import type { ChiSquareTest } from "./ChiSquareTest.js";
import { clusterBootstrap, type BootstrapEstimate } from "./clusterBootstrap.js";
import { cohenKappa } from "./cohenKappa.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareTest } from "./numeric/chiSquareTest.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireCount } from "./numeric/requireCount.js";
import { pairedRatings } from "./pairedRatings.js";

/** A foot scored by two observers on one day. */
export interface ScoredTwice {
  readonly horseId: string;
  /** `YYYY-MM-DD`. */
  readonly visitDate: string;
  readonly firstGrade: number | null;
  readonly secondGrade: number | null;
}

/** Agreement of two observers in one quarter of a year, or throughout. */
export interface QuarterAgreement {
  /** `2024-Q3`, or `all`. */
  readonly quarter: string;
  /** Feet scored by both. */
  readonly n: number;
  readonly missing: number;
  readonly horses: number;
  /** Null with fewer pairs than declared, and when only one grade was used. */
  readonly kappa: BootstrapEstimate | null;
  /** Second grade minus first, on average: whose eye is the more severe. Null with fewer pairs than declared. */
  readonly difference: BootstrapEstimate | null;
  readonly note: string | null;
}

/** Agreement by quarter. */
export interface ObserverDrift {
  readonly quarters: readonly QuarterAgreement[];
  readonly all: QuarterAgreement;
  /** Test that kappa is the same in all quarters; null with fewer than two of them. */
  readonly sameKappa: ChiSquareTest | null;
  /** Test that the difference is the same in all quarters; null with fewer than two. */
  readonly sameDifference: ChiSquareTest | null;
  readonly method: string;
}

/**
 * Agreement of two observers over time, from feet that both scored: weighted kappa and mean difference for each quarter of the calendar year.
 * Give the rows of one pair of observers, always the same one first. Agreement that stays the same can still drift: both may have grown more severe together.
 *
 * Method: kappa as in `cohenKappa`, quadratic weights unless others are named; limits by drawing horses with replacement (`clusterBootstrap`), because the feet of a horse
 * are alike. Tests of sameness: the sum over quarters of squared distances from the mean weighted by inverse variance, over the variance, chi-square with one
 * degree of freedom less than quarters; quarters without a spread are left out.
 *
 * Missing: rows with a grade null are left out and counted. A quarter with fewer than `minimumPairs` (10) pairs, or `minimumHorses` (3) horses, has no estimate.
 *
 * Errors: `empty` for no rows; `out_of_range` for a grade that is none of `categories`; those of `clusterBootstrap`.
 *
 * Source: Fleiss JL, Levin B, Paik MC (2003) Statistical Methods for Rates and Proportions, 3rd ed., chapter 18.
 */
export function observerDrift(
  rows: readonly ScoredTwice[],
  options: {
    readonly random: RandomSource;
    readonly categories?: readonly number[];
    readonly weights?: "none" | "linear" | "quadratic";
    readonly minimumPairs?: number;
    readonly minimumHorses?: number;
    readonly replicates?: number;
    readonly level?: number;
  },
): ObserverDrift {
  const { random, categories = [0, 1, 2, 3], weights = "quadratic", level } = options;
  const least = {
    pairs: requireCount("fewest pairs", options.minimumPairs ?? 10),
    horses: requireCount("fewest horses", options.minimumHorses ?? 3),
  };
  requireRows(rows);
  if (rows.length === 0) throw new EstimateError("empty", "No foot was scored twice.", "Score some feet twice on one day.");
  const settings = { replicates: options.replicates ?? 1000, ...(level === undefined ? {} : { level }) };
  const agreement = (quarter: string, list: readonly ScoredTwice[]): QuarterAgreement => {
    const known = list.filter(({ firstGrade, secondGrade }) => firstGrade !== null && secondGrade !== null);
    const horses = [...grouped(known, ({ horseId }) => horseId).values()];
    const base = { quarter, n: known.length, missing: list.length - known.length, horses: horses.length };
    if (known.length < least.pairs || horses.length < least.horses) {
      const note = `${known.length} feet of ${horses.length} horses were scored twice; ${least.pairs} feet of ${least.horses} horses are needed.`;
      return { ...base, kappa: null, difference: null, note };
    }
    const stream = random.stream(quarter);
    const drawn = (name: string, statistic: (sample: readonly ScoredTwice[]) => number | null) =>
      clusterBootstrap(horses, statistic, { random: stream.stream(name), ...settings });
    const kappa = drawn("kappa", (sample) => kappaOf(sample, categories, weights));
    const note = kappa.estimate === null ? "Only one grade was used, so agreement beyond chance has no meaning." : kappa.note;
    return { ...base, kappa: kappa.estimate === null ? null : kappa, difference: drawn("difference", meanDifference), note };
  };
  const quarters = [...grouped(rows, ({ visitDate }) => quarterOf(visitDate))]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([quarter, list]) => agreement(quarter, list));
  return {
    quarters,
    all: agreement("all", rows),
    sameKappa: sameness(quarters.map(({ kappa }) => kappa)),
    sameDifference: sameness(quarters.map(({ difference }) => difference)),
    method: `Cohen's kappa, ${weights === "none" ? "unweighted" : `${weights} weights`}, by quarter; percentile limits from horses drawn with replacement`,
  };
}

function quarterOf(date: string): string {
  return `${date.slice(0, 4)}-Q${Math.ceil(Number(date.slice(5, 7)) / 3)}`;
}

function kappaOf(
  rows: readonly ScoredTwice[],
  categories: readonly number[],
  weights: "none" | "linear" | "quadratic",
): number | null {
  const pairs = rows.map(({ firstGrade, secondGrade }) => ({ first: firstGrade, second: secondGrade }));
  return cohenKappa(pairedRatings(pairs, categories).matrix, { weights }).estimate;
}

function meanDifference(rows: readonly ScoredTwice[]): number {
  return rows.reduce((sum, { firstGrade, secondGrade }) => sum + (secondGrade! - firstGrade!), 0) / rows.length;
}

function sameness(list: readonly (BootstrapEstimate | null)[]): ChiSquareTest | null {
  const usable = list.flatMap((one) =>
    typeof one?.estimate === "number" && one.se !== null && one.se > 0 ? [{ value: one.estimate, weight: 1 / one.se ** 2 }] : [],
  );
  if (usable.length < 2) return null;
  const weight = usable.reduce((sum, one) => sum + one.weight, 0);
  const mean = usable.reduce((sum, one) => sum + one.weight * one.value, 0) / weight;
  const distance = usable.reduce((sum, one) => sum + one.weight * (one.value - mean) ** 2, 0);
  return chiSquareTest(distance, usable.length - 1);
}
