import { quantileSorted } from "simple-statistics";
import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import { monthChange, type MonthChange } from "./climate/monthChange.js";
import { requireRows } from "./design/requireRows.js";
import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import type { RandomSource } from "./numeric/RandomSource.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireFinding } from "./numeric/requireFinding.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { tQuantile } from "./numeric/tQuantile.js";

/** A foot, or a horse, at one visit. */
export interface YardLook {
  /** Null when the yard is not known. */
  readonly yardId: string | null;
  readonly horseId: string;
  /** `YYYY-MM-DD`. */
  readonly visitDate: string;
  /** Null when it is not known. */
  readonly case: boolean | null;
}

/** What changed where, and how much must be there before anything is said. */
export interface ChangeOptions {
  readonly yardId: string;
  /** First day under the change, `YYYY-MM-DD`. */
  readonly changedOn: string;
  /** Yards to compare with; all others when left out. Leave out yards that changed something themselves. */
  readonly controls?: readonly string[];
  /** Days from the change on that count neither way; 0 when left out. */
  readonly washoutDays?: number;
  /** Fewest months of the year seen both before and after, in the changed yard and in a control; 3 when left out. */
  readonly minimumMonths?: number;
  /** Fewest control yards; 3 when left out. */
  readonly minimumControls?: number;
  /** Fewest horses of the changed yard seen both before and after; 3 when left out. */
  readonly minimumHorses?: number;
  readonly random: RandomSource;
  readonly replicates?: number;
  readonly level?: number;
}

/** How much more prevalence changed in the yard than in the others. */
export interface DifferenceInDifferences extends Interval {
  readonly kind: "difference";
  /** Change of prevalence in the changed yard, after minus before, in the same months of the year. */
  readonly changed: number;
  /** The same, on average over the control yards. */
  readonly controls: number;
  readonly controlYards: readonly { readonly yardId: string; readonly change: number; readonly months: number }[];
  /** The months compared, 1 to 12, with what was counted in the changed yard. */
  readonly months: readonly MonthChange[];
  /** Percentile limits from control yards drawn with replacement, and horses of the changed yard. */
  readonly bootstrap: { readonly lower: number; readonly upper: number; readonly replicates: number } | null;
  /** Share of yards, the changed one included, whose change stands out from the others' at least as much. */
  readonly placeboP: number;
  readonly horses: number;
  /** Looks in the changed yard that the estimate rests on. */
  readonly n: number;
  /** Rows of all yards left out because case or yard is not known. */
  readonly missing: number;
}

/** Why nothing can be said about a change. */
export interface CannotTell {
  readonly kind: "cannot_tell";
  readonly reason: string;
  readonly months: number;
  readonly controlYards: number;
  readonly horses: number;
}

/**
 * Whether prevalence changed more in one yard from a day on than in yards that changed nothing: difference in differences, months matched, so that a dry summer
 * after a wet winter is not put down to new bedding.
 *
 * Method: in each yard the change is prevalence after minus before within each month of the year seen in both, months weighted by
 * n_before n_after / (n_before + n_after), over the months of the changed yard only. The estimate is the change of the changed yard minus the mean change of the control yards. Limits:
 * the spread s of the control yards' changes is how much a yard changes by itself, so the standard error is s sqrt(1 + 1/K) for K controls, with t on K - 1
 * degrees of freedom. `bootstrap` draws control yards, and horses of the changed yard, with replacement; it cannot know what else befell the one yard that changed and is
 * usually too narrow. `placeboP` holds each control up as if it had changed. It went with the change; one yard is no experiment.
 *
 * Missing: rows with `case` or `yardId` null are left out and counted. `cannot_tell`, with the reason, when fewer months, controls or horses match than declared.
 *
 * Errors: `not_a_date`; `empty` when the yard has no row; `not_a_count`; `not_a_number`, `out_of_range` for a case that is neither yes nor no; `out_of_range` for the level.
 *
 * Source: Donald SG, Lang K (2007) Rev Econ Stat 89:221-233 (few groups); Mantel-Haenszel weights for months.
 */
export function differenceInDifferences(rows: readonly YardLook[], options: ChangeOptions): DifferenceInDifferences | CannotTell {
  const { yardId, changedOn, random, washoutDays = 0, minimumMonths = 3, minimumControls = 3, minimumHorses = 3 } = options;
  const level = requireLevel(options.level ?? 0.95);
  const replicates = requireCount("number of replicates", options.replicates ?? 2000);
  requireRows(rows);
  const known = rows
    .filter((row) => row.case !== null && row.yardId !== null)
    .map((row) => ({ ...row, case: requireFinding("case", row.case) }));
  known.forEach(({ visitDate }) => requireDay(visitDate));
  const yards = grouped(known, (row) => row.yardId!);
  const changedRows = yards.get(yardId);
  if (changedRows === undefined) {
    throw new EstimateError(
      "empty",
      `No row of yard "${yardId}" says whether there was a case.`,
      "Name a yard that was looked at.",
    );
  }
  const from = requireDay(changedOn);
  const changeOf = (list: readonly YardLook[], months: ReadonlySet<number> | null) =>
    monthChange(list, from, from + washoutDays, months);
  const changed = changeOf(changedRows, null);
  const months = new Set(changed.months.map(({ month }) => month));
  const names = options.controls ?? [...yards.keys()].filter((name) => name !== yardId);
  const controls = names.flatMap((name) => {
    const list = name === yardId ? undefined : yards.get(name);
    if (list === undefined) return [];
    const found = changeOf(list, months);
    return found.change === null || found.months.length < minimumMonths
      ? []
      : [{ yardId: name, change: found.change, months: found.months.length }];
  });
  const horses = [...grouped(changedRows, ({ horseId }) => horseId).values()];
  const seenTwice = horses.filter((list) => changeOf(list, null).both).length;
  const cannot = (reason: string): CannotTell => ({
    kind: "cannot_tell",
    reason,
    months: months.size,
    controlYards: controls.length,
    horses: seenTwice,
  });
  if (changed.change === null || months.size < minimumMonths) {
    return cannot(
      `The yard was seen before and after the change in ${months.size} months of the year; ${minimumMonths} are needed to hold the season equal.`,
    );
  }
  if (seenTwice < minimumHorses) {
    return cannot(`${seenTwice} horses of the yard were seen both before and after; ${minimumHorses} are needed.`);
  }
  if (controls.length < minimumControls) {
    return cannot(
      `${controls.length} other yards were seen in the same months before and after; ${minimumControls} are needed to know what would have changed anyway.`,
    );
  }
  const changes = controls.map(({ change }) => change);
  const mean = meanOf(changes);
  const estimate = changed.change - mean;
  const k = changes.length;
  const spread = k < 2 ? 0 : Math.sqrt(changes.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (k - 1));
  const reach = spread > 0 ? tQuantile((1 + level) / 2, k - 1) * spread * Math.sqrt(1 + 1 / k) : null;
  const others = changes.map((value, place) => value - meanOf(changes.filter((_, other) => other !== place)));
  const drawn = Array.from({ length: replicates }, () => {
    const sample = changeOf(
      horses.flatMap(() => random.pick(horses)),
      months,
    ).change;
    return sample === null ? null : sample - meanOf(changes.map(() => random.pick(changes)));
  });
  const values = drawn.filter((value) => value !== null).sort((a, b) => a - b);
  return {
    kind: "difference",
    estimate,
    lower: reach === null ? null : Math.max(-2, estimate - reach),
    upper: reach === null ? null : Math.min(2, estimate + reach),
    level,
    changed: changed.change,
    controls: mean,
    controlYards: controls,
    months: changed.months,
    bootstrap:
      values.length < 0.9 * replicates || values.length === 0
        ? null
        : {
            lower: quantileSorted(values, (1 - level) / 2),
            upper: quantileSorted(values, (1 + level) / 2),
            replicates: values.length,
          },
    placeboP: (1 + others.filter((value) => Math.abs(value) >= Math.abs(estimate)).length) / (k + 1),
    horses: seenTwice,
    n: changed.n,
    missing: rows.length - known.length,
    method: `Difference in differences, ${months.size} months of the year matched, ${k} control yards; t with ${k - 1} degrees of freedom on the spread of their changes`,
    note: reach === null ? "The control yards all changed alike, so there is no spread to judge the change by." : null,
  };
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function requireDay(date: string): number {
  const day = dayNumber(date);
  if (day !== null) return day;
  throw new EstimateError("not_a_date", `The day "${date}" is not a date.`, "Write dates as YYYY-MM-DD.");
}
