import { expect, test } from "vitest";
import { dayNumber } from "../../src/study/dayNumber.js";

// Calendar arithmetic, worked from the calendar: 42, 49 and 56 days on, across a clock change and a leap day.
test("days between dates count calendar days, whatever the clocks do", () => {
  const days = (from: string, to: string) => dayNumber(to)! - dayNumber(from)!;
  expect(days("2024-02-05", "2024-03-18")).toBe(42);
  expect(days("2024-03-18", "2024-05-06")).toBe(49);
  expect(days("2024-01-29", "2024-03-31")).toBe(62);
  expect(dayNumber("1970-01-01")).toBe(0);
  expect(dayNumber("2000-02-29")).toBe(11016);
});

test("what is no real date gives null", () => {
  for (const text of [
    "2025-02-29",
    "2025-13-01",
    "2025-00-10",
    "2025-1-6",
    "06/01/2025",
    "",
    " 2025-01-06",
    "0999-01-01",
    "2025-01-06T00:00",
  ]) {
    expect(dayNumber(text), text).toBeNull();
  }
});
