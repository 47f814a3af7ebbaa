import type { AgeClass } from "../derive/ageClass.js";
import { type GrowthRates, growthRates } from "../derive/growthRates.js";
import type { MarkGrowth } from "../derive/markGrowth.js";
import type { Season } from "../derive/seasonOf.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { fitMixedLinear, type MixedLinearFit } from "./fitMixedLinear.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { tQuantile } from "./numeric/tQuantile.js";
import type { Term } from "./Term.js";

/** Growth of one group, mm a day. */
export interface GroupGrowth<Name extends string = string> extends Interval {
  readonly name: Name;
  readonly estimate: number;
  readonly n: number;
  readonly horses: number;
}

/** Growth of the wall in one herd, from marks that were followed. */
export interface HerdGrowth {
  /** Spans used, their horses and feet. */
  readonly n: number;
  readonly horses: number;
  readonly feet: number;
  /** Spans shorter than the least days, left out. */
  readonly short: number;
  /** Mean of the horses, mm a day; null when no model could be fitted, and `note` says why. */
  readonly mean: GroupGrowth | null;
  /** How much horses differ, standard deviation in mm a day. */
  readonly horseSd: number | null;
  readonly seasons: readonly GroupGrowth<Season>[];
  readonly ages: readonly GroupGrowth<AgeClass>[];
  /** Each horse, drawn towards the mean the less was seen of it. */
  readonly ofHorses: readonly GroupGrowth[];
  /** What a horse of this herd that was not followed may grow at this level; the usual published range without a model. */
  readonly rates: GrowthRates;
  readonly ratesFrom: "this herd" | "published studies";
  readonly method: string;
  readonly note: string | null;
}

/**
 * Growth of the wall pooled over a herd with a linear mixed model, by season, by age class and by horse.
 *
 * Method: growth in mm a day of each span between two sightings of a mark (`markGrowth`), on random intercepts of horses and of feet
 * within them; spans shorter than `leastDays` (21) are left out, since a reading error of 1 mm at both ends would be most of them. The
 * mean comes from a model without terms; seasons from one with the season of the middle of the span, age classes from one with the
 * age class. `rates` are the mean less and plus the normal quantile of the level times the root of the variance between horses and that of the mean; the
 * slower is kept above 0. Where a term has one value its group is the mean.
 *
 * Missing: spans without an age class are left out of `ages`. Without a model, for fewer than `leastHorses` (5) horses or spans that the model cannot be fitted to, the
 * mean is null and `rates` are those of `growthRates`, with their sources.
 *
 * Errors (`EstimateError`): `not_a_number`; `not_a_count`; `out_of_range` for a row that is no record or for a level not between 0 and 1; `not_converged`.
 *
 * Source: that only the distance from the coronet measures growth: Curtis S et al. 2014, Vet J 201:116; the rest as in `fitMixedLinear`.
 */
export function herdGrowth(
  spans: readonly MarkGrowth[],
  options: { readonly level?: number; readonly leastDays?: number; readonly leastHorses?: number } = {},
): HerdGrowth {
  const leastDays = requireCount("least number of days", options.leastDays ?? 21);
  const leastHorses = requireCount("least number of horses", options.leastHorses ?? 5);
  const level = requireLevel(options.level ?? 0.95);
  requireRows(spans);
  spans.forEach(({ days, grownMmPerDay }) => {
    requireNumber("days of a span", days);
    requireNumber("growth of a span", grownMmPerDay);
  });
  const used = spans.filter(({ days }) => days >= leastDays);
  const counts = { n: used.length, horses: horsesOf(used), feet: new Set(used.map(({ footId }) => footId)).size };
  const short = spans.length - used.length;
  const none = (note: string): HerdGrowth => ({
    ...{ ...counts, short, mean: null, horseSd: null, seasons: [], ages: [], ofHorses: [] },
    ...{ rates: growthRates.usual, ratesFrom: "published studies", method: "no model", note },
  });
  if (counts.horses < leastHorses) return none(`Marks were followed in ${counts.horses} horses; ${leastHorses} are needed.`);
  const plain = fitted(used, [], level);
  if (typeof plain === "string") return none(plain);
  const mean = groupOf("all", used, plain, [1]);
  const horseSd = plain.groups[0]!.sd;
  const reach = normalQuantile((1 + level) / 2) * Math.sqrt(horseSd ** 2 + plain.covariance[0]![0]!);
  return {
    ...{ ...counts, short, mean, horseSd },
    seasons: byTerm<Season>(used, "season", mean, level),
    ages: byTerm<AgeClass>(
      used.filter(({ ageClass }) => ageClass !== null),
      "ageClass",
      mean,
      level,
    ),
    ofHorses: ofHorses(used, plain, level),
    rates: { slowestMmPerDay: Math.max(0.01, mean.estimate - reach), fastestMmPerDay: mean.estimate + reach },
    ratesFrom: "this herd",
    method: plain.method,
    note: plain.notes.length === 0 ? null : plain.notes.join(" "),
  };
}

function horsesOf(rows: readonly MarkGrowth[]): number {
  return new Set(rows.map(({ horseId }) => horseId)).size;
}

/** Horses and feet, or horses alone where no foot was followed over several spans. */
function fitted(rows: readonly MarkGrowth[], terms: readonly Term[], level: number): MixedLinearFit | string {
  let why = "";
  for (const groups of [["horseId", "footId"], ["horseId"]] as const) {
    try {
      return fitMixedLinear({ rows, outcome: "grownMmPerDay", terms, groups, level });
    } catch (fault) {
      if (!(fault instanceof EstimateError) || fault.code === "out_of_range") throw fault;
      why = fault.message;
    }
  }
  return why;
}

function byTerm<Name extends string>(
  rows: readonly MarkGrowth[],
  column: "season" | "ageClass",
  mean: GroupGrowth,
  level: number,
): GroupGrowth<Name>[] {
  const counts = new Map<Name, number>();
  for (const row of rows) counts.set(row[column] as Name, (counts.get(row[column] as Name) ?? 0) + 1);
  const names = [...counts.keys()].sort((a, b) => counts.get(b)! - counts.get(a)! || (a < b ? -1 : 1));
  const own = (name: Name) => rows.filter((row) => row[column] === name);
  if (names.length === 0) return [];
  if (names.length === 1) return [{ ...mean, name: names[0]!, n: rows.length, horses: horsesOf(rows) }];
  const fit = fitted(rows, [{ column, reference: names[0]!, levels: names }], level);
  if (typeof fit === "string") return [];
  return names.map((name, place) => {
    const weights = fit.coefficients.map((_, k) => (k === 0 || k === place ? 1 : 0));
    return groupOf(name, own(name), fit, weights);
  });
}

/** A sum of coefficients with t limits; the fewest degrees of freedom of those that take part. */
function groupOf<Name extends string>(
  name: Name,
  rows: readonly MarkGrowth[],
  { coefficients, covariance, level }: MixedLinearFit,
  weights: readonly number[],
): GroupGrowth<Name> {
  const estimate = coefficients.reduce((sum, { estimate: of }, k) => sum + weights[k]! * of, 0);
  let variance = 0;
  for (const [j, row] of covariance.entries())
    for (const [k, value] of row.entries()) variance += weights[j]! * weights[k]! * value;
  const df = Math.min(...coefficients.flatMap((of, k) => (weights[k] === 0 || of.df === null ? [] : [of.df])));
  const half = tQuantile((1 + level) / 2, df) * Math.sqrt(variance);
  return {
    ...{ name, n: rows.length, horses: horsesOf(rows), estimate, lower: estimate - half, upper: estimate + half, level },
    ...{ method: "sum of coefficients of a linear mixed model, t limits", note: null },
  };
}

function ofHorses(rows: readonly MarkGrowth[], fit: MixedLinearFit, level: number): GroupGrowth[] {
  const mean = fit.coefficients[0]!.estimate;
  const z = normalQuantile((1 + level) / 2);
  return fit.conditionalModes[0]!.map(({ group, mode, sd }) => {
    const own = rows.filter(({ horseId }) => horseId === String(group));
    const [estimate, half] = [mean + mode, z * sd];
    return {
      ...{ name: String(group), n: own.length, horses: 1, estimate, lower: estimate - half, upper: estimate + half, level },
      ...{ method: "conditional mode of the horse about the mean of the herd", note: null },
    };
  });
}
