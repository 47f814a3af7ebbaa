import { median } from "simple-statistics";
import { fabricIssue } from "./fabricIssue.js";
import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { visitColumns } from "../../study/visitColumns.js";

interface Reading {
  readonly row: FootVisit;
  readonly value: number;
}

interface OtherUnit {
  readonly name: string;
  readonly factor: number;
}

const otherUnits: Readonly<Record<"mm" | "deg", readonly OtherUnit[]>> = {
  mm: [
    { name: "centimetres", factor: 10 },
    { name: "inches", factor: 25.4 },
  ],
  deg: [{ name: "radians", factor: 180 / Math.PI }],
};
const columns = [
  ...fabricMeasures,
  { field: "cleftDepthMm", column: "cleft_depth_mm", title: "cleft depth", unit: "mm" } as const,
];

/** So many readings written together, and this share of them, make a run; fewer are slips of the pen. Common practice, no source. */
const FEWEST = 3;
const SHARE = 0.75;
/** Where the usual range begins at 0, it is taken from the median of the column over this to the median times this. */
const ABOUT_MEDIAN = 2.5;

/**
 * Runs of measures in another unit: of one horse on one day, or of one observer on one or more days, where the column as a whole is in the
 * unit it should be in. Nothing is converted.
 *
 * Method: a reading looks like another unit when it lies below the usual range of its column and inside it once converted; three readings and
 * three quarters of those written together must. Readings that were not believed on reading are looked at too, as far as they are listed.
 *
 * Missing: a column that reading found to be in another unit throughout is passed over.
 *
 * Source: widths of 9 to 18 read as centimetres, 3 to 9 as inches, angles about 1 as radians (common practice, no source).
 */
export function unitRuns({ visits, report }: Pick<Study, "visits" | "report">): Issue[] {
  const throughout = new Set(report.issues.filter(({ code }) => code === "unit_smell").map(({ column }) => column));
  const refused = new Map<string, number>(
    report.issues
      .filter(({ code }) => code === "out_of_range")
      .map(({ file, line, column, value }) => [keyOf({ file, line }, column), Number(value)]),
  );
  return columns
    .filter(({ column }) => !throughout.has(column))
    .flatMap((column) => {
      const valueOf = (row: FootVisit) =>
        row[column.field] ?? (refused.size === 0 ? null : refused.get(keyOf(row, column.column))) ?? null;
      const soft = softRange(column.column);
      if (soft !== null && !severalLook(visits, valueOf, soft, otherUnits[column.unit])) return [];
      const readings = visits.flatMap((row): Reading[] => {
        const value = valueOf(row);
        return value === null || !Number.isFinite(value) ? [] : [{ row, value }];
      });
      if (readings.length === 0) return [];
      const usual = usualRange(column.column, readings);
      return otherUnits[column.unit].flatMap((unit) =>
        runsOf(readings, ({ value }) => looksLike(value, usual, unit)).map((run) => issueOf(run, column, unit, usual)),
      );
    });
}

function keyOf({ file, line }: { readonly file: string; readonly line: number | null }, column: string | null): string {
  return `${file}\n${line ?? ""}\n${column ?? ""}`;
}

/** The usual range of a column; null where it begins at 0. */
function softRange(name: string): readonly [number, number] | null {
  const column = visitColumns.find((each) => each.name === name);
  return column !== undefined && "soft" in column && column.soft[0] > 0 ? column.soft : null;
}

function looksLike(value: number, usual: readonly [number, number], { factor }: OtherUnit): boolean {
  return value > 0 && value < usual[0] && inside(value * factor, usual);
}

/** Whether so many readings look like another unit as a run needs; nearly always not, and then nothing more is looked at. */
function severalLook(
  visits: readonly FootVisit[],
  valueOf: (row: FootVisit) => number | null,
  usual: readonly [number, number],
  units: readonly OtherUnit[],
): boolean {
  let count = 0;
  for (const row of visits) {
    const value = valueOf(row);
    if (value === null || value >= usual[0]) continue;
    if (units.some((unit) => looksLike(value, usual, unit)) && ++count >= FEWEST) return true;
  }
  return false;
}

function usualRange(name: string, readings: readonly Reading[]): readonly [number, number] {
  const soft = softRange(name);
  if (soft !== null) return soft;
  const middle = median(readings.map(({ value }) => value));
  return [middle / ABOUT_MEDIAN, middle * ABOUT_MEDIAN];
}

function inside(value: number, [low, high]: readonly [number, number]): boolean {
  return value >= low && value <= high;
}

/** The readings of each run of days of one observer, in order. */
function runsOf(all: readonly Reading[], looks: (reading: Reading) => boolean): Reading[][] {
  const dayOf = ({ row }: Reading) => `${row.observerId ?? ""}\n${row.visitDate}`;
  const horseDayOf = (reading: Reading) => `${dayOf(reading)}\n${reading.row.horseId}`;
  const told = new Set<Reading>();
  const suspects = all.filter(looks);
  if (suspects.length < FEWEST) return [];
  const observers = new Set(suspects.map(({ row }) => row.observerId));
  const readings = all.filter(({ row }) => observers.has(row.observerId));
  for (const keyOf of [horseDayOf, dayOf]) {
    for (const together of grouped(readings, keyOf).values()) {
      const like = together.filter(looks);
      if (like.length >= FEWEST && like.length >= SHARE * together.length) for (const reading of like) told.add(reading);
    }
  }
  if (told.size === 0) return [];
  return [...grouped(readings, ({ row }) => row.observerId).values()].flatMap((ofObserver) => {
    const days = [...grouped(ofObserver, ({ row }) => row.visitDate)].sort(([a], [b]) => (a < b ? -1 : 1));
    const runs: Reading[][] = [];
    let open = false;
    for (const [, ofDay] of days) {
      const like = ofDay.filter((reading) => told.has(reading));
      if (like.length > 0 && open) runs.at(-1)?.push(...like);
      else if (like.length > 0) runs.push(like);
      open = like.length > 0;
    }
    return runs;
  });
}

function issueOf(
  run: readonly Reading[],
  { column, title, unit }: (typeof columns)[number],
  other: OtherUnit,
  usual: readonly [number, number],
): Issue {
  const [first, last] = [run[0], run.at(-1)];
  const days = new Set(run.map(({ row }) => row.visitDate)).size;
  const horses = [...new Set(run.map(({ row }) => row.horseId))];
  const who = horses.length === 1 ? ` of ${horses[0] ?? ""}` : ` of ${horses.length} horses`;
  const observerId = first?.row.observerId ?? null;
  const by = observerId === null ? "" : ` by ${observerId}`;
  const when =
    days === 1
      ? `on ${first?.row.visitDate ?? ""}`
      : `on ${days} days from ${first?.row.visitDate ?? ""} to ${last?.row.visitDate ?? ""}`;
  return fabricIssue({
    file: first?.row.file ?? "visits.csv",
    line: first?.row.line ?? null,
    column,
    code: "unit_run",
    found:
      `${run.length} readings of ${title}${who}${by} ${when} look like ${other.name}, such as ${first?.value ?? ""}, where ` +
      `${round(usual[0])} to ${round(usual[1])} ${unit === "mm" ? "mm" : "degrees"} are usual; nothing was converted`,
    hint: `If it is so, multiply these by ${Number(other.factor.toFixed(4))}: lines ${listed(run.map(({ row }) => row.line))}.`,
  });
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

const LINES_SHOWN = 12;

function listed(lines: readonly number[]): string {
  const sorted = [...lines].sort((a, b) => a - b);
  const more = sorted.length > LINES_SHOWN ? ` and ${sorted.length - LINES_SHOWN} more` : "";
  return sorted.slice(0, LINES_SHOWN).join(", ") + more;
}
