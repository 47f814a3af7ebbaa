import { expect, test } from "vitest";
import { visitPeriods } from "../../src/derive/visitPeriods.js";

const at = (visitDate: string, thrush: boolean | null = null, horseId = "A") => ({ horseId, yardId: "North", visitDate, thrush });

test("weeks from a visit to the next: the last one holds it", () => {
  // 1 to 20 January is 19 days: weeks from days 0, 7 and 14. To 31 January: one whole week of 11 days.
  const rows = visitPeriods([at("2025-01-01", true), at("2025-01-20", false)], { lastDay: "2025-01-31" });
  expect(
    rows.map(({ from, daysSince, lastCase, visited, visitDate }) => [from, daysSince, lastCase, visited, visitDate]),
  ).toEqual([
    ["2025-01-02", 0, true, false, null],
    ["2025-01-09", 7, true, false, null],
    ["2025-01-16", 14, true, true, "2025-01-20"],
    ["2025-01-21", 0, false, false, null],
  ]);
});

test("a horse not seen again is waited for no longer than told; rows of one day are one visit, with thrush when any has it", () => {
  const rows = visitPeriods([at("2025-01-01", null), at("2025-01-01", true), at("2025-12-01", null)], {
    lastDay: "2025-12-01",
    lostAfterDays: 21,
  });
  expect(rows).toHaveLength(3);
  expect(rows.every(({ visited, lastCase }) => !visited && lastCase === true)).toBe(true);
});

test("no visits, no rows; a day that is none is refused", () => {
  expect(visitPeriods([], { lastDay: "2025-01-31" })).toEqual([]);
  expect(() => visitPeriods([at("2025-01-01")], { lastDay: "soon" })).toThrow();
});
