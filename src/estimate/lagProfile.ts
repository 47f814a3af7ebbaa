import { adjustedWords } from "./climate/adjustedWords.js";
import { fittedModel } from "./climate/fittedModel.js";
import { profileOf } from "./climate/profileOf.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import type { ExposureModel } from "./ExposureModel.js";
import { naturalSpline } from "./naturalSpline.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import type { RatioBand } from "./RatioBand.js";
import { waldTest, type WaldTest } from "./waldTest.js";

/** A model with an exposure by the day. */
export interface LagModel extends Omit<ExposureModel, "exposure" | "adjust"> {
  /** Column of lists: the exposure on the day of the visit, the day before, and so on, as long in every row; null where a day is not known. */
  readonly byDay: string;
  readonly adjust?: ExposureModel["adjust"];
  /** Inner knots of the curve over the days; 3, 9 and 21 days when left out, those within the lags. */
  readonly knots?: readonly number[];
  readonly random: RandomSource;
}

/** How the odds hang on the exposure of each day before the visit. */
export interface LagProfile {
  /** One a day: the odds ratio of `per` more units on that day, everything else as it was. */
  readonly days: readonly (RatioBand & { readonly lagDays: number })[];
  /** `per` more units on every day. */
  readonly everyDay: RatioBand;
  /** Test that no day matters. */
  readonly anyDay: WaldTest;
  readonly per: number;
  readonly level: number;
  readonly n: number;
  readonly cases: number;
  readonly missing: number;
  readonly clusteredBy: string;
  readonly clusters: number;
  readonly adjustedFor: readonly string[];
  readonly method: string;
  readonly notes: readonly string[];
}

/**
 * Distributed lag: which of the days before a visit count. The effects of single days are held to a smooth curve, since neighbouring days are wet together and
 * cannot be told apart one by one.
 *
 * Method: the log odds gain sum over lags of b(lag) x exposure(lag), b a natural cubic spline of the lag with a constant (`naturalSpline`), so that the model has one
 * column a basis function; the rest as `effectOfExposure`. Bands: Wald for each day, and simultaneous over all days (greatest t of 10,000 draws). Exploratory unless
 * declared beforehand.
 *
 * Missing: rows with a day missing are left out and counted.
 *
 * Errors: those of `effectOfExposure`, refusals too; `length_mismatch` for lists that differ in length; `out_of_range` for knots.
 *
 * Source: Gasparrini A, Armstrong B, Kenward MG (2010) Stat Med 29:2224-2234.
 */
export function lagProfile(model: LagModel): LagProfile {
  const { byDay, knots: asked, random, per = 1, adjust = [], ...choices } = model;
  const level = model.level ?? 0.95;
  const lags = lagsOf(model.rows, byDay);
  const last = lags - 1;
  const knots = asked ?? [3, 9, 21].filter((knot) => knot < last);
  const basis = naturalSpline({ knots, boundary: [0, last], intercept: true });
  const curve = Array.from({ length: lags }, (_, lag) => basis(lag));
  const names = curve[0]!.map((_, j) => `${byDay} curve ${j + 1}`);
  const rows = model.rows.map((row) => {
    const amounts = (row as Readonly<Record<string, unknown>>)[byDay] as readonly (number | null)[] | null | undefined;
    const known = Array.isArray(amounts) && amounts.every((amount) => amount !== null);
    const sums = names.map((_, j) =>
      known ? (amounts as readonly number[]).reduce((sum, amount, lag) => sum + (amount * curve[lag]![j]!) / per, 0) : null,
    );
    return { ...row, ...Object.fromEntries(names.map((name, j) => [name, sums[j]!])) };
  });
  const fitted = fittedModel({ ...choices, rows, terms: [...names, ...adjust] });
  const places = names.map((name) => fitted.design.names.indexOf(name));
  const total = names.map((_, j) => curve.reduce((sum, day) => sum + day[j]!, 0));
  const days = profileOf(fitted, places, curve, level, random);
  return {
    days: days.map((band, lagDays) => ({ lagDays, ...band })),
    everyDay: profileOf(fitted, places, [total], level, random)[0]!,
    anyDay: waldTest(fitted.fit, names),
    per,
    level,
    n: fitted.fit.n,
    cases: fitted.cases,
    missing: fitted.fit.dropped.reduce((sum, { count }) => sum + count, 0),
    clusteredBy: fitted.clusteredBy,
    clusters: fitted.clusters,
    adjustedFor: adjustedWords(adjust),
    method: `Distributed lag over ${lags} days, natural cubic spline with knots at ${knots.join(", ")} days; pointwise and simultaneous bands. ${fitted.fit.method}`,
    notes: fitted.fit.notes,
  };
}

function lagsOf(rows: readonly object[], byDay: string): number {
  requireRows(rows);
  const lists = rows.map((row) => (row as Readonly<Record<string, unknown>>)[byDay]).filter(Array.isArray);
  const lengths = new Set(lists.map((list) => list.length));
  if (lists.length === 0) throw new EstimateError("empty", `No row has ${byDay}.`, "Give the exposure of each day as a list.");
  const [length] = [...lengths] as [number];
  if (lengths.size === 1 && length >= 3) return length;
  throw new EstimateError(
    "length_mismatch",
    `The lists of ${byDay} hold ${[...lengths].sort((a, b) => a - b).join(", ")} days.`,
    "Give lists of one length, three days or more.",
  );
}
