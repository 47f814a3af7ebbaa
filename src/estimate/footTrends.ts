import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import type { ShapeMeasureRow } from "../derive/ShapeMeasureRow.js";
import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { fitMixedLinear, type MixedLinearFit } from "./fitMixedLinear.js";
import type { Interval } from "./Interval.js";
import { normalQuantile } from "./numeric/normalQuantile.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireNumber } from "./numeric/requireNumber.js";
import { requireWithin } from "./numeric/requireWithin.js";

/** Where one foot is going. */
export interface FootTrend extends Pick<ShapeMeasureRow, "horseId" | "footId" | "foot" | "end" | "yardId"> {
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly times: number;
  /** Change over those days by the trend, in the unit of the measure, drawn towards that of the herd the less was seen of the foot. */
  readonly change: Interval & { readonly estimate: number };
  /** Change of the trend in 90 days. */
  readonly per90Days: number;
  /** The change is larger than the minimum detectable one and its interval leaves out 0; null when the minimum is not known. */
  readonly real: boolean | null;
}

/** Trends of one measure over the feet of a herd. */
export interface FootTrends {
  readonly measure: ShapeMeasure;
  /** Mean change in 90 days over the herd; null without a model. */
  readonly herdPer90Days: Interval | null;
  readonly feet: readonly FootTrend[];
  readonly minimumDetectable: number | null;
  readonly method: string;
  /** Why there is no model, or what a reader must know of it; null when nothing. */
  readonly note: string | null;
}

/**
 * Trends of one measure, foot by foot, by a linear mixed model: rows of one measure at one stage, each foot with its own level and slope.
 *
 * Method: value on days, random intercept and slope of feet, uncorrelated (`fitMixedLinear`), days counted from the middle of all days. A foot's slope is that of the herd plus
 * its conditional mode; its limits take the spread of the mode, the error of the herd's slope and the normal quantile. The change is
 * slope times the days from the first to the last time the foot was measured. A change is called real only when it exceeds
 * `minimumDetectable` (`minimumDetectableChange`, made from repeated measurement) and its limits leave out 0.
 *
 * Missing: specimens and feet measured on one day have no trend. Without a model, for fewer than three feet with three days or data that carry
 * none, `feet` is empty and `note` says why.
 *
 * Errors (`EstimateError`): `not_a_number`; `not_a_date`; `out_of_range` for a row that is no record, a negative minimum or for a level not between 0 and 1; `not_converged`.
 *
 * Source: Laird NM, Ware JH (1982) Biometrics 38:963-974, random-effects models for longitudinal data, from memory; the rest as in `fitMixedLinear`.
 */
export function footTrends(
  rows: readonly ShapeMeasureRow[],
  options: { readonly minimumDetectable?: number | null; readonly level?: number } = {},
): FootTrends {
  const { minimumDetectable = null } = options;
  const level = requireLevel(options.level ?? 0.95);
  if (minimumDetectable !== null) requireWithin("minimum detectable change", minimumDetectable, 0, Infinity);
  requireRows(rows);
  rows.forEach(({ value }) => requireNumber("value of a measure", value));
  const measure = rows[0]?.measure ?? "shapeIndex";
  const histories = [...grouped(oneADay(rows), ({ footId }) => footId).values()].filter((history) => history.length > 1);
  const none = (note: string): FootTrends => ({
    ...{ measure, herdPer90Days: null, feet: [], minimumDetectable, method: "no model", note },
  });
  if (histories.filter((history) => history.length > 2).length < 3)
    return none("Fewer than three feet were measured on three days or more at one stage.");
  const fit = fitted(histories.flat(), level);
  if (typeof fit === "string") return none(fit);
  const slope = fit.coefficients[1]!;
  const modes = new Map((fit.slopeModes ?? []).map(({ group, mode, sd }) => [String(group), { mode, sd }]));
  const z = normalQuantile((1 + level) / 2);
  const feet = histories.map((history): FootTrend => {
    const [first, last] = [history[0]!, history.at(-1)!];
    const { horseId, footId, foot, end, yardId } = last;
    const { mode, sd } = modes.get(footId) ?? { mode: 0, sd: 0 };
    const days = last.day - first.day;
    const estimate = (slope.estimate + mode) * days;
    const half = z * Math.hypot(sd, slope.se) * days;
    const change = {
      ...{ estimate, lower: estimate - half, upper: estimate + half, level },
      ...{ method: "slope of the herd plus conditional mode of the foot", note: null },
    };
    const clear = change.lower > 0 || change.upper < 0;
    return {
      ...{ horseId, footId, foot, end, yardId, from: first.visitDate, to: last.visitDate, days, times: history.length, change },
      per90Days: (slope.estimate + mode) * 90,
      real: minimumDetectable === null ? null : clear && Math.abs(estimate) > minimumDetectable,
    };
  });
  return {
    measure,
    herdPer90Days: {
      ...{ estimate: slope.estimate * 90, lower: slope.lower * 90, upper: slope.upper * 90, level },
      ...{ method: fit.method, note: null },
    },
    feet,
    minimumDetectable,
    method: fit.method,
    note: fit.notes.length === 0 ? null : fit.notes.join(" "),
  };
}

type Dated = ShapeMeasureRow & { readonly day: number };

/** The first reading of each foot and day, in order; days counted from the middle of all. */
function oneADay(rows: readonly ShapeMeasureRow[]): Dated[] {
  const seen = new Set<string>();
  const sided = rows.filter(({ side, footId, visitDate }) => {
    const key = `${footId}\n${visitDate}`;
    if (side === null || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  const dated = sided.map((row) => ({ ...row, day: requireDay(row.visitDate) }));
  const middle = dated.reduce((sum, { day }) => sum + day, 0) / Math.max(1, dated.length);
  return dated.map((row) => ({ ...row, day: row.day - middle })).sort((a, b) => a.day - b.day || (a.footId < b.footId ? -1 : 1));
}

function requireDay(date: string): number {
  const day = dayNumber(date);
  if (day !== null) return day;
  throw new EstimateError("not_a_date", `The day "${date}" is not a date.`, "Write dates as YYYY-MM-DD.");
}

function fitted(rows: readonly Dated[], level: number): MixedLinearFit | string {
  // The slope in units of 90 days keeps the two spreads on a like scale.
  const scaled = rows.map((row) => ({ ...row, quarters: row.day / 90 }));
  try {
    const fit = fitMixedLinear({
      ...{ rows: scaled, outcome: "value", terms: ["quarters"], groups: ["footId"] as const, level },
      slope: { column: "quarters", correlated: false },
    });
    return perDay(fit);
  } catch (fault) {
    if (fault instanceof EstimateError && fault.code !== "out_of_range") return fault.message;
    throw fault;
  }
}

/** Slopes of a quarter turned into slopes of a day. */
function perDay(fit: MixedLinearFit): MixedLinearFit {
  const [intercept, slope] = [fit.coefficients[0]!, fit.coefficients[1]!];
  const { estimate, se, lower, upper } = slope;
  return {
    ...fit,
    coefficients: [intercept, { ...slope, estimate: estimate / 90, se: se / 90, lower: lower / 90, upper: upper / 90 }],
    slopeModes: (fit.slopeModes ?? []).map((mode) => ({ ...mode, mode: mode.mode / 90, sd: mode.sd / 90 })),
  };
}
