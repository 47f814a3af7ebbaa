import fc from "fast-check";
import { expect, test } from "vitest";
import { daysWithinInterval } from "../../src/derive/daysWithinInterval.js";
import { trimIntervals } from "../../src/derive/trimIntervals.js";
import { daysCovered } from "../../src/estimate/daysCovered.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { defaultSettings } from "../../src/study/defaultSettings.js";
import { footVisit } from "../footVisit.js";
import { horseStay } from "../study.js";

const days = (visits: readonly string[], planned: number | null, asOf: string, stay = {}) =>
  daysWithinInterval(
    trimIntervals({
      visits: visits.map((visitDate) => footVisit({ horseId: "A", visitDate })),
      horses: [horseStay({ horseId: "A", yardId: "North", plannedIntervalDays: planned, ...stay })],
      settings: { ...defaultSettings, asOf },
    }),
  ).map(({ first, last, days: all, within }) => [first, last, all, within]);

test("an early visit earns no days, a late one costs them, and the open gap counts up to the day of the review", () => {
  // 42 days agreed. 35 days, early: all within. 50 days: 42 within. 10 days to the day of the review: all within.
  expect(days(["2025-01-06", "2025-02-10", "2025-04-01"], 42, "2025-04-11")).toEqual([
    ["2025-01-06", "2025-02-09", 35, 35],
    ["2025-02-10", "2025-03-31", 50, 42],
    ["2025-04-01", "2025-04-10", 10, 10],
  ]);
});

test("a horse that left counts up to its last day, a lost one and one without a plan not at all", () => {
  expect(days(["2025-01-06"], 42, "2025-06-01", { leftOn: "2025-03-07" })).toEqual([["2025-01-06", "2025-03-06", 60, 42]]);
  expect(days(["2025-01-06"], null, "2025-06-01")).toEqual([]);
  expect(days(["2024-01-06", "2025-06-01"], 42, "2025-06-01")).toEqual([]);
});

test("the same count as the proportion of days covered over the whole of a horse's time", () => {
  const visits = fc.uniqueArray(fc.integer({ min: 20_000, max: 20_300 }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(visits, fc.integer({ min: 7, max: 90 }), (dayNumbers, planned) => {
      const sorted = [...dayNumbers].sort((a, b) => a - b);
      const rows = daysWithinInterval(
        trimIntervals({
          visits: sorted.map((day) => footVisit({ horseId: "A", visitDate: dateOfDay(day) })),
          horses: [horseStay({ horseId: "A", plannedIntervalDays: planned })],
          settings: { ...defaultSettings, asOf: dateOfDay(20_320) },
        }),
      );
      const { covered, windowDays } = daysCovered(
        sorted.map((day) => ({ start: dateOfDay(day), days: planned })),
        { first: dateOfDay(sorted[0]!), last: dateOfDay(20_319) },
      );
      expect(rows.reduce((sum, row) => sum + row.within, 0)).toBe(covered);
      expect(rows.reduce((sum, row) => sum + row.days, 0)).toBe(windowDays);
    }),
  );
});
