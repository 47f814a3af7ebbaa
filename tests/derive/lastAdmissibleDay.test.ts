import { expect, test } from "vitest";
import { lastAdmissibleDay } from "../../src/derive/lastAdmissibleDay.js";
import type { GaugeDayRule } from "../../src/study/Settings.js";

// Hours since the start of the visit day that a reading dated `offset` days from the visit covers, by the definition of each rule,
// for a gauge read at 9 in the morning.
const hoursCovered: Record<GaugeDayRule, (offset: number) => readonly [number, number]> = {
  ends_on_date: (offset) => [offset * 24 - 15, offset * 24 + 9],
  starts_on_date: (offset) => [offset * 24 + 9, offset * 24 + 33],
  calendar_day: (offset) => [offset * 24, offset * 24 + 24],
};
const working = 9; // no visit is taken to begin before the morning reading

test.each(["ends_on_date", "starts_on_date", "calendar_day"] as const)(
  "%s: no rain from after the visit, and none left out",
  (rule) => {
    const last = lastAdmissibleDay("2025-03-10", rule) === "2025-03-10" ? 0 : -1;
    expect(lastAdmissibleDay("2025-03-10", rule)).toBe(last === 0 ? "2025-03-10" : "2025-03-09");
    expect(hoursCovered[rule](last)[1]).toBeLessThanOrEqual(working);
    expect(hoursCovered[rule](last + 1)[1]).toBeGreaterThan(working);
  },
);

test("a morning reading of the visit day is used, a thrown-back one is not", () => {
  expect(lastAdmissibleDay("2025-03-10", "ends_on_date")).toBe("2025-03-10");
  expect(lastAdmissibleDay("2025-03-10", "starts_on_date")).toBe("2025-03-09");
  expect(lastAdmissibleDay("2024-03-01", "calendar_day")).toBe("2024-02-29");
});

test("a date that is none is refused", () => {
  expect(() => lastAdmissibleDay("10/03/2025", "calendar_day")).toThrow("no calendar day");
});
