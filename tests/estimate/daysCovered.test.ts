import fc from "fast-check";
import { expect, test } from "vitest";
import { daysCovered, type CoveredPeriod } from "../../src/estimate/daysCovered.js";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";
import { faultCode } from "./faultCode.js";

/** Day 1 is 1 January 2024, a leap year. */
const date = (day: number): string => dateOfDay(dayNumber("2023-12-31")! + day);
const periodsOf = (periods: readonly (readonly [number, number])[]): CoveredPeriod[] =>
  periods.map(([start, days]) => ({ start: date(start), days }));
const interval = (days: number, ...starts: number[]) => starts.map((start) => [start, days] as const);

// No published worked numbers: counted by hand and again by an independent Python script from the definition.
test.each([
  ["a gap between supplies", interval(30, 1, 31, 70), 90, 81, 81, 1, 0.9, 0.9],
  ["an early supply", interval(30, 1, 16, 76), 90, 60, 75, 1, 0.666667, 0.833333],
  ["intervals of 56 days, one early and two late", interval(56, 1, 50, 120, 190), 240, 212, 219, 224 / 240, 0.883333, 0.9125],
  ["intervals of 42 days, the last beyond the window", interval(42, 1, 43, 90), 120, 115, 115, 126 / 120, 0.958333, 0.958333],
  ["a visit before the window", interval(42, -20, 43), 100, 63, 63, 0.42, 0.63, 0.63],
])("%s", (_, periods, last, plain, shifted, supply, share, shareShifted) => {
  const window = { first: date(1), last: date(last) };
  const once = daysCovered(periodsOf(periods), window);
  expect(once).toMatchObject({ covered: plain, windowDays: last, proportion: plain / last, supplyRatio: supply, missing: 0 });
  expect(daysCovered(periodsOf(periods), window, { shift: true })).toMatchObject({ covered: shifted, supplyRatio: supply });
  expect(once.proportion).toBeCloseTo(share, 6);
  expect(daysCovered(periodsOf(periods), window, { shift: true }).proportion).toBeCloseTo(shareShifted, 6);
});

const someWindow = { first: "2024-01-01", last: "2024-01-31" };
const somePeriods = fc.array(fc.tuple(fc.integer({ min: -60, max: 200 }), fc.integer({ min: 0, max: 70 })), { maxLength: 8 });

test("equals the count of days one by one, whatever the order", () => {
  fc.assert(
    fc.property(somePeriods, fc.integer({ min: 1, max: 100 }), fc.integer({ min: 0, max: 100 }), (periods, first, length) => {
      const found = daysCovered(periodsOf(periods), { first: date(first), last: date(first + length) });
      let count = 0;
      for (let day = first; day <= first + length; day += 1) {
        if (periods.some(([start, days]) => start <= day && day < start + days)) count += 1;
      }
      expect(found.covered).toBe(count);
      expect(daysCovered(periodsOf([...periods].reverse()), { first: date(first), last: date(first + length) })).toEqual(found);
    }),
  );
});

test("shifting uses up every day supplied when the window holds them all", () => {
  fc.assert(
    fc.property(somePeriods, (periods) => {
      const window = { first: date(-60), last: date(1000) };
      const supplied = periods.reduce((sum, [, days]) => sum + days, 0);
      expect(daysCovered(periodsOf(periods), window, { shift: true }).covered).toBe(supplied);
      expect(daysCovered(periodsOf(periods), window).covered).toBeLessThanOrEqual(supplied);
    }),
  );
});

test("periods of unknown length are counted, not guessed", () => {
  const found = daysCovered(
    [
      { start: "2024-01-01", days: null },
      { start: "2024-01-11", days: 10 },
      { start: "2024-02-01", days: 10 },
    ],
    someWindow,
  );
  expect(found).toMatchObject({ covered: 10, periods: 1, missing: 1 });
  expect(daysCovered([], someWindow)).toMatchObject({ covered: 0, proportion: 0, periods: 0 });
});

test.each([
  [[{ start: "2024-02-30", days: 1 }], someWindow, "not_a_date"],
  [[], { first: "1 January", last: "2024-01-31" }, "not_a_date"],
  [[{ start: "2024-01-01", days: -1 }], someWindow, "not_a_count"],
  [[{ start: "2024-01-01", days: NaN }], someWindow, "not_a_number"],
  [[], { first: "2024-02-01", last: "2024-01-31" }, "out_of_range"],
] as const)("%j in %j is %s", (periods, window, code) => {
  expect(faultCode(() => daysCovered(periods, window))).toBe(code);
});
