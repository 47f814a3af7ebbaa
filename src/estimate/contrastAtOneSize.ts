import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import { fitLinear } from "./fitLinear.js";
import { fitMixedLinear, type MixedLinearFit } from "./fitMixedLinear.js";
import type { Interval } from "./Interval.js";
import { type MeanInterval, meanInterval } from "./meanInterval.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";
import { grouped } from "../study/grouped.js";

const PLACES = 11;

/** One foot: its size and one measure of its shape. */
export interface SizedValue {
  readonly horseId: string;
  readonly end: "fore" | "hind";
  /** Any length or area above 0, taken in one way for all; null when it is not known. */
  readonly size: number | null;
  readonly value: number | null;
}

/** What the model expects of one end, from its smallest to its largest foot; straight in the logarithm of size. */
export interface SizeLine {
  readonly end: "fore" | "hind";
  readonly places: readonly { readonly size: number; readonly value: number }[];
}

/** Fore less hind within horses, before and after size is allowed for. */
export interface ContrastAtOneSize {
  /** Fore less hind for feet of one size, horse allowed for; without limits and estimate where no model can be fitted, `note` saying why. */
  readonly atOneSize: Interval;
  /** What a foot that is 10 % larger has more of the measure. */
  readonly perTenPercent: Interval;
  /** Fore less hind within horses, size left as it is. */
  readonly asMeasured: MeanInterval;
  /** Fore less hind for feet of one size, from differences within horses alone. */
  readonly withinHorses: Interval;
  /** Mean size of fore feet over that of hind feet of the same horse, less 1. */
  readonly foreLarger: Interval;
  readonly lines: readonly SizeLine[];
  /** Feet used, and horses with both ends among them. */
  readonly feet: number;
  readonly horses: number;
  /** Feet without size or value. */
  readonly missing: number;
  readonly method: string;
  readonly notes: readonly string[];
}

/**
 * Do fore and hind feet differ in a measure of shape once horse and size are allowed for? Feet of one horse are alike, fore feet are
 * larger, and larger feet may have another shape.
 *
 * Method: a linear mixed model of the measure on the end and on the logarithm of size, with random intercepts of horses; give one row a foot.
 * The effect of the end is `atOneSize`. Beside it: the mean over horses of fore less hind (`asMeasured`), and the same with the difference
 * of log size held at 0 by least squares (`withinHorses`), which owes nothing to differences between horses but is less sure. The two
 * answers at one size part when size goes otherwise with shape between horses than within them, or when a reading that varies is part of
 * both, as width is of width over length and of the size made of width and length: they are then the ends of a range.
 *
 * Missing: feet without size or value are left out and counted; horses with one end help to tell what size does.
 *
 * Errors (`EstimateError`): `empty` when no horse has both ends; `not_a_number`; `out_of_range` for a size that is not above 0, or a level.
 *
 * Source: Mosimann JE (1970) J Am Stat Assoc 65:930-945 for size and shape; the rest as in `fitMixedLinear` and `fitLinear`.
 */
export function contrastAtOneSize(rows: readonly SizedValue[], options: { readonly level?: number } = {}): ContrastAtOneSize {
  const level = requireLevel(options.level ?? 0.95);
  requireRows(rows);
  const used = rows.flatMap(({ horseId, end, size, value }) => {
    if (size === null || value === null) return [];
    requireWithin("size", size, Number.MIN_VALUE, Infinity);
    // Without the last digits, so that equal sizes reckoned in two ways are equal and cost no degree of freedom.
    return [{ horseId, end, fore: end === "fore", logSize: Number(Math.log(size).toFixed(12)), value }];
  });
  const pairs = [...grouped(used, ({ horseId }) => horseId).values()].flatMap((own) => {
    const [fore, hind] = [own.filter(({ fore }) => fore), own.filter(({ fore }) => !fore)];
    if (fore.length === 0 || hind.length === 0) return [];
    const less = (of: (row: (typeof used)[number]) => number) => mean(fore.map(of)) - mean(hind.map(of));
    return [{ difference: less(({ value }) => value), logSize: less(({ logSize }) => logSize) }];
  });
  const asMeasured = meanInterval(
    pairs.map(({ difference }) => difference),
    { level },
  );
  const larger = meanInterval(
    pairs.map(({ logSize }) => logSize),
    { level },
  );
  const fit = tried(() =>
    fitMixedLinear({
      ...{ rows: used, outcome: "value", groups: ["horseId"], level },
      terms: ["fore", { column: "logSize", centre: true }],
    }),
  );
  const within = tried(() => fitLinear({ rows: pairs, outcome: "difference", terms: ["logSize"], level }));
  const share = (value: number | null) => (value === null ? null : Math.expm1(value));
  return {
    atOneSize: effectOf(fit, 1, 1, level),
    perTenPercent: effectOf(fit, 2, Math.log(1.1), level),
    asMeasured,
    withinHorses: effectOf(within, 0, 1, level),
    foreLarger: { ...larger, estimate: share(larger.estimate), lower: share(larger.lower), upper: share(larger.upper) },
    lines: typeof fit === "string" ? [] : linesOf(used, fit),
    ...{ feet: used.length, horses: pairs.length, missing: rows.length - used.length },
    method: typeof fit === "string" ? "no model" : fit.method,
    notes: typeof fit === "string" ? [fit] : fit.notes,
  };
}

/** A fit, or in words why there is none. */
function tried<Fit>(fit: () => Fit): Fit | string {
  try {
    return fit();
  } catch (fault) {
    if (fault instanceof EstimateError && !["not_a_number", "out_of_range"].includes(fault.code)) return fault.message;
    throw fault;
  }
}

function effectOf(
  fit: Pick<MixedLinearFit, "coefficients" | "method"> | string,
  place: number,
  times: number,
  level: number,
): Interval {
  const none = { estimate: null, lower: null, upper: null, level };
  if (typeof fit === "string") return { ...none, method: "no model", note: fit };
  const { estimate, lower, upper } = fit.coefficients[place]!;
  return { estimate: times * estimate, lower: times * lower, upper: times * upper, level, method: fit.method, note: null };
}

function linesOf(rows: readonly { readonly end: "fore" | "hind"; readonly logSize: number }[], fit: MixedLinearFit): SizeLine[] {
  const [intercept, fore, slope] = fit.coefficients.map(({ estimate }) => estimate) as [number, number, number];
  const centre = mean(rows.map(({ logSize }) => logSize));
  return (["fore", "hind"] as const).map((end) => {
    const sizes = rows.filter((row) => row.end === end).map(({ logSize }) => logSize);
    const [least, greatest] = [Math.min(...sizes), Math.max(...sizes)];
    const places = Array.from({ length: PLACES }, (_, k) => {
      const logSize = least + ((greatest - least) * k) / (PLACES - 1);
      return { size: Math.exp(logSize), value: intercept + (end === "fore" ? fore : 0) + slope * (logSize - centre) };
    });
    return { end, places };
  });
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
