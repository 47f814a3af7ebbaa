import { expect, test } from "vitest";
import { trimIntervals } from "../../src/derive/trimIntervals.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import type { FootVisit } from "../../src/study/FootVisit.js";
import type { HorseStay } from "../../src/study/HorseStay.js";
import type { Settings } from "../../src/study/Settings.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf } from "../study.js";

interface Case {
  readonly stays?: readonly Partial<HorseStay>[];
  readonly settings?: Partial<Settings>;
}

const gaps = (visits: readonly FootVisit[], { stays = [{ plannedIntervalDays: 42 }], settings = {} }: Case = {}) =>
  trimIntervals(
    studyOf({
      visits,
      horses: stays.map((stay) => horseStay({ horseId: "A", yardId: "Low", ...stay })),
      settings: { ...defaultSettings, ...settings },
    }),
  );
const on = (visitDate: string, cells: Partial<FootVisit> = {}) => footVisit({ visitDate, ...cells });

// Calendar arithmetic by hand, over the European clock change of 31 March 2024 and over the leap day.
test.each([
  ["2024-02-05", 42, "2024-03-18", "2024-03-25", 49, 7, 1.1667],
  ["2024-03-18", 42, "2024-04-29", "2024-05-06", 49, 7, 1.1667],
  ["2023-10-16", 49, "2023-12-04", "2023-12-18", 63, 14, 1.2857],
  ["2024-01-29", 56, "2024-03-25", "2024-03-31", 62, 6, 1.1071],
])("%s + %i days is due %s; seen %s is %i days, %i late", (from, plannedIntervalDays, dueOn, to, gapDays, daysLate, ratio) => {
  const [gap] = gaps([on(from), on(to)], { stays: [{ plannedIntervalDays }] });
  expect(gap).toMatchObject({ from, to, gapDays, dueOn, daysLate, plannedBy: "horse", yardId: "Low" });
  expect(gap!.ratio).toBeCloseTo(ratio, 4);
});

test("the tolerance has two sides and includes its edges", () => {
  const status = (to: string) => gaps([on("2025-01-06"), on(to)])[0]!.status;
  // Due on 2025-02-17.
  expect(["2025-02-09", "2025-02-10", "2025-02-24", "2025-02-25"].map(status)).toEqual(["early", "kept", "kept", "late"]);
  const strict = gaps([on("2025-01-06"), on("2025-02-18")], { settings: { toleranceDays: 0 } });
  expect(strict[0]).toMatchObject({ status: "late", daysLate: 1 });
});

test("the interval agreed at the visit stands before that of the horse; the shortest, where feet differ", () => {
  const [gap] = gaps([
    on("2025-01-06", { nextIntervalDays: 35 }),
    on("2025-01-06", { nextIntervalDays: 28, foot: "RH" }),
    on("2025-02-10"),
  ]);
  expect(gap).toMatchObject({ plannedDays: 28, plannedBy: "visit", daysLate: 7, status: "kept" });
});

test("without a plan there are no days late", () => {
  const rows = gaps([on("2025-01-06"), on("2025-02-17")], { stays: [{}] });
  expect(rows[0]).toMatchObject({
    status: "no_plan",
    plannedDays: null,
    plannedBy: null,
    dueOn: null,
    daysLate: null,
    ratio: null,
  });
  expect(rows[1]).toMatchObject({ status: "open", overdueDays: null });
});

test("visits that are not routine are counted and do not reset the clock", () => {
  const rows = gaps([
    on("2025-01-06"),
    on("2025-01-20", { reason: "lost_shoe" }),
    on("2025-01-20", { reason: "lost_shoe", foot: "RF" }),
    on("2025-02-03", { reason: "lame" }),
    on("2025-02-10", { reason: "follow_up" }),
    on("2025-02-17"),
    on("2025-02-20", { reason: "other" }),
  ]);
  expect(rows).toMatchObject([
    { from: "2025-01-06", to: "2025-02-17", gapDays: 42, daysLate: 0, status: "kept", unscheduledVisits: 3 },
    { from: "2025-02-17", to: null, gapDays: 3, status: "open", unscheduledVisits: 1 },
  ]);
});

test("a visit without a reason counts as routine and is told; one routine row makes the day routine", () => {
  const rows = gaps([on("2025-01-06", { reason: null }), on("2025-02-17", { reason: null }), on("2025-03-31", { reason: null })]);
  expect(rows.map((row) => row.assumedRoutine)).toEqual([2, 2, 1]);
  const mixed = gaps([on("2025-01-06", { reason: "lame" }), on("2025-01-06", { foot: "RF" }), on("2025-02-17")]);
  expect(mixed[0]).toMatchObject({ from: "2025-01-06", gapDays: 42, assumedRoutine: 0 });
});

test("the last gap is open: censored on the day of the review, with the days overdue", () => {
  const visits = [on("2025-01-06"), on("2025-02-17")];
  const at = (asOf: string) => gaps(visits, { settings: { asOf } }).at(-1);
  expect(at("2025-03-31")).toMatchObject({
    to: null,
    gapDays: 42,
    status: "open",
    censoredBy: "as_of",
    overdueDays: 0,
    daysLate: null,
  });
  expect(at("2025-04-10")).toMatchObject({ gapDays: 52, dueOn: "2025-03-31", overdueDays: 10 });
  expect(gaps(visits).at(-1)).toMatchObject({ gapDays: 0, overdueDays: 0 });
});

test("visits after the day of the review are left out", () => {
  const rows = gaps([on("2025-01-06"), on("2025-02-17")], { settings: { asOf: "2025-02-16" } });
  expect(rows).toHaveLength(1);
  expect(rows[0]).toMatchObject({ from: "2025-01-06", to: null, gapDays: 41, status: "open" });
  expect(gaps([on("2025-01-06")], { settings: { asOf: "2025-01-05" } })).toEqual([]);
});

test("a very long gap is lost to follow-up, ended or not", () => {
  const rows = gaps([on("2024-01-01"), on("2025-02-05"), on("2025-02-06")], { settings: { asOf: "2026-06-01" } });
  expect(rows).toMatchObject([
    { gapDays: 401, status: "lost", daysLate: null, ratio: null, to: "2025-02-05" },
    { gapDays: 1, status: "early" },
    { to: null, gapDays: 480, status: "lost", censoredBy: "as_of", overdueDays: 438 },
  ]);
  expect(gaps([on("2024-01-01"), on("2025-02-04")])[0]).toMatchObject({ gapDays: 400, status: "late" });
});

test("leaving cuts the gap, and nobody is overdue for a horse that is gone", () => {
  const stays = [{ plannedIntervalDays: 42, leftOn: "2025-02-20" }];
  const rows = gaps([on("2025-01-06")], { stays, settings: { asOf: "2025-06-01" } });
  expect(rows).toMatchObject([{ to: null, gapDays: 45, status: "open", censoredBy: "left", overdueDays: null }]);
});

test("a horse that comes back starts anew; its absence is no gap", () => {
  const stays = [
    { plannedIntervalDays: 42, leftOn: "2025-01-31" },
    { plannedIntervalDays: 42, joinedOn: "2025-05-01" },
  ];
  const rows = gaps([on("2025-01-06"), on("2025-05-05"), on("2025-06-16")], { stays });
  expect(rows).toMatchObject([
    { from: "2025-01-06", to: null, gapDays: 25, censoredBy: "left" },
    { from: "2025-05-05", to: "2025-06-16", gapDays: 42 },
    { from: "2025-06-16", to: null, censoredBy: "as_of" },
  ]);
});

test("moving from yard to yard cuts nothing; the gap belongs to the yard where it began", () => {
  const stays = [
    { plannedIntervalDays: 42, leftOn: "2025-01-31" },
    { plannedIntervalDays: 35, yardId: "High", joinedOn: "2025-02-01" },
  ];
  const rows = gaps([on("2025-01-06"), on("2025-02-17"), on("2025-03-24")], { stays });
  expect(rows).toMatchObject([
    { yardId: "Low", plannedDays: 42, gapDays: 42, status: "kept" },
    { yardId: "High", plannedDays: 35, gapDays: 35, status: "kept" },
    { yardId: "High", to: null },
  ]);
});

test("the first visit of a new horse starts the clock and does not stop an older one", () => {
  const rows = gaps([on("2025-01-06"), on("2025-03-03", { reason: "new_horse" }), on("2025-04-14")]);
  expect(rows).toMatchObject([
    { from: "2025-01-06", to: null, gapDays: 56, status: "open", censoredBy: "new_start", overdueDays: null },
    { from: "2025-03-03", to: "2025-04-14", gapDays: 42, status: "kept" },
    { from: "2025-04-14", to: null },
  ]);
});

test("horses are kept apart and rows come by day and horse, whatever the order of the input", () => {
  const visits = [on("2025-02-17"), on("2025-01-06", { horseId: "B" }), on("2025-01-06"), on("2025-03-03", { horseId: "B" })];
  const rows = gaps(visits);
  expect(rows.map((row) => [row.from, row.horseId, row.to])).toEqual([
    ["2025-01-06", "A", "2025-02-17"],
    ["2025-01-06", "B", "2025-03-03"],
    ["2025-02-17", "A", null],
    ["2025-03-03", "B", null],
  ]);
  expect(gaps([...visits].reverse())).toEqual(rows);
  expect(rows[1]).toMatchObject({ yardId: null, status: "no_plan" });
});

test("no visits, no gaps", () => {
  expect(gaps([])).toEqual([]);
});
