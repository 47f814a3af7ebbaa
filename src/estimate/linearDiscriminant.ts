import type { ClassificationTable } from "./ClassificationTable.js";
import { numberColumn } from "./design/numberColumn.js";
import type { Dropped } from "./Dropped.js";
import { EstimateError } from "./EstimateError.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { addRow } from "./shape/addRow.js";
import type { ClassSums } from "./shape/ClassSums.js";
import { discriminantAxes } from "./shape/discriminantAxes.js";
import { discriminantPriors } from "./shape/discriminantPriors.js";
import { discriminantRows } from "./shape/discriminantRows.js";
import { discriminantRule } from "./shape/discriminantRule.js";
import { heldOutPosteriors } from "./shape/heldOutPosteriors.js";
import { tabulated } from "./shape/tabulated.js";
import { wilksTest, type WilksTest } from "./shape/wilksTest.js";

/** What to tell apart by what. */
export interface DiscriminantOptions {
  readonly rows: readonly object[];
  /** Column of the class: front or hind. */
  readonly label: string;
  /** Columns of numbers. */
  readonly terms: readonly string[];
  /** Column whose values are held out together, such as the horse; each row by itself when left out. */
  readonly foldBy?: string;
  /** Probability of each class before anything is measured, by its name; the shares of the rows when left out. */
  readonly priors?: Readonly<Record<string, number>>;
  /** Confidence level of the error rates; 0.95 when left out. */
  readonly level?: number;
}

/** What a rule says of one row. */
export interface ClassPrediction {
  readonly predicted: string;
  /** Probability of each class, by its name. */
  readonly posterior: Readonly<Record<string, number>>;
}

/** One used row. */
export interface DiscriminantRow extends ClassPrediction {
  /** Where it stands among the rows given, from 0. */
  readonly row: number;
  readonly label: string;
  /** Place along each axis, from the mean of all rows. */
  readonly scores: readonly number[];
  /** By the rule made without this row, or without its fold. */
  readonly heldOut: ClassPrediction;
}

/** One direction that tells classes apart. */
export interface DiscriminantAxis {
  readonly singularValue: number;
  /** Share of the spread between classes that lies along this axis. */
  readonly proportionOfTrace: number;
  /** One a term, in order; the spread within classes along the axis is 1. */
  readonly coefficients: readonly number[];
}

/** A linear discriminant analysis. */
export interface LinearDiscriminant {
  readonly classes: readonly string[];
  readonly terms: readonly string[];
  readonly priors: readonly number[];
  /** Rows of each class. */
  readonly counts: readonly number[];
  /** Mean of each term, one row a class. */
  readonly means: readonly (readonly number[])[];
  readonly axes: readonly DiscriminantAxis[];
  /** Squared Mahalanobis distance between the means of classes. */
  readonly distances: readonly { readonly from: string; readonly to: string; readonly d2: number }[];
  /** Test that all means are equal. It takes rows as independent. */
  readonly wilks: WilksTest;
  /** Tried on the rows the rule was made from: too good. */
  readonly resubstitution: ClassificationTable;
  /** Tried on rows held out. */
  readonly crossValidated: ClassificationTable;
  readonly rows: readonly DiscriminantRow[];
  readonly n: number;
  readonly dropped: readonly Dropped[];
  readonly method: string;
  readonly notes: readonly string[];
  /** Class of further rows; null for a row in which a term is null or missing. */
  readonly predict: (rows: readonly object[]) => readonly (ClassPrediction | null)[];
}

/**
 * Linear discriminant analysis: tells classes, such as front and hind feet, apart by several measures, and says how often it is wrong.
 *
 * Method: normal classes with one covariance, pooled within classes with divisor n less the number of classes; the class with the
 * largest posterior probability is predicted. Held out: each row by a rule made without it, or without all rows of its `foldBy` value,
 * priors kept. With feet of one horse in both parts an error rate comes out too low, so hold out by horse. Error rates have Wilson
 * limits, or limits that allow for horses when held out by horse. The sign of an axis is arbitrary.
 *
 * Missing: rows with a null in the label, a term or the fold are left out and counted in `dropped`.
 *
 * Errors (`EstimateError`): `unknown_column`; `empty`; `not_a_number`; `no_variation` for one class, or a term with one value in each
 * class; `collinear`, naming the columns, for a constant term or terms that repeat each other; `too_few` when a class or the rows run
 * out, held-out ones included; `out_of_range` for no terms, bad priors or a bad level.
 *
 * Source: Fisher RA (1936) Ann Eugen 7:179-188; Venables WN, Ripley BD (2002) Modern Applied Statistics with S, section 12.1; Rao CR
 * (1951) Bull Int Stat Inst 33:177-180 for F.
 */
export function linearDiscriminant(options: DiscriminantOptions): LinearDiscriminant {
  const { label, terms, foldBy } = options;
  const level = requireLevel(options.level ?? 0.95);
  const data = discriminantRows(options.rows, label, terms, foldBy);
  const { classes, truth, values, centre, spread, folds } = data;
  const [n, p] = [values.length, terms.length];
  const sums: ClassSums = {
    counts: new Int32Array(classes.length),
    sums: classes.map(() => new Float64Array(p)),
    products: new Float64Array(p * p),
  };
  values.forEach((row, i) => {
    addRow(sums, truth[i]!, row, 1);
  });
  const counts = Array.from(sums.counts);
  const priors = discriminantPriors(classes, counts, options.priors);
  const rule = discriminantRule(sums, priors);
  if (rule === null) {
    throw new EstimateError("collinear", "The terms all but repeat each other within classes.", "Leave out one of them.");
  }
  const means = sums.sums.map((sum, c) => Array.from(sum, (value, j) => centre[j]! + (spread[j]! * value) / counts[c]!));
  const weights = priors.map((prior) => n * prior);
  const { singularValues, directions } = discriminantAxes(rule, weights);
  const trace = singularValues.reduce((sum, value) => sum + value * value, 0);
  const own = values.map(rule.posterior);
  const others = heldOutPosteriors(data, sums, priors);
  const spoken = (posterior: Float64Array): ClassPrediction => ({
    predicted: classes[likeliest(posterior)]!,
    posterior: Object.fromEntries(classes.map((name, c) => [name, posterior[c]!])),
  });
  const tried = (posteriors: readonly Float64Array[], method: string) =>
    tabulated(classes, truth, Int32Array.from(posteriors, likeliest), { groups: folds, level, method });
  const held =
    foldBy === undefined
      ? "each row by a rule made without it"
      : `each ${foldBy} by a rule made without it, ${folds!.count} in all`;
  return {
    classes,
    terms: [...terms],
    priors,
    counts,
    means,
    axes: singularValues.map((singularValue, k) => ({
      singularValue,
      proportionOfTrace: singularValue ** 2 / trace,
      coefficients: Array.from(directions[k]!, (value, j) => value / spread[j]!),
    })),
    distances: classes.flatMap((from, a) =>
      classes.slice(a + 1).map((to, step) => ({ from, to, d2: squaredDistance(rule.means[a]!, rule.means[a + 1 + step]!) })),
    ),
    wilks: wilksTest(discriminantAxes(rule, counts).singularValues, n, p, classes.length),
    resubstitution: tabulated(classes, truth, Int32Array.from(own, likeliest), {
      groups: folds,
      level,
      method: "Tried on the rows the rule was made from, which flatters it",
    }),
    crossValidated: tried(others, `Held out: ${held}`),
    rows: values.map((row, i) => ({
      row: data.used[i]!,
      label: classes[truth[i]!]!,
      ...spoken(own[i]!),
      scores: directions.map((direction) => direction.reduce((sum, value, j) => sum + value * row[j]!, 0)),
      heldOut: spoken(others[i]!),
    })),
    n,
    dropped: data.dropped,
    method: `Linear discriminant of ${label} by ${terms.join(", ")}; ${n} rows`,
    notes: foldBy === undefined ? ["Rows were held out one by one: when several come from one horse, hold out by horse."] : [],
    predict: (rows) =>
      rows.map((row) => {
        const fields = row as Readonly<Record<string, unknown>>;
        if (terms.some((term) => fields[term] === null || fields[term] === undefined)) return null;
        const own = terms.map((term, j) => (numberColumn([row], Int32Array.of(0), term)[0]! - centre[j]!) / spread[j]!);
        return spoken(rule.posterior(Float64Array.from(own)));
      }),
  };
}

function likeliest(posterior: Float64Array): number {
  return posterior.reduce((best, value, c) => (value > posterior[best]! ? c : best), 0);
}

function squaredDistance(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, j) => sum + (value - b[j]!) ** 2, 0);
}
