import fc from "fast-check";
import { expect, test } from "vitest";
import { calendarDay } from "../../../src/read/mapping/calendarDay.js";
import { dateOfDay } from "../../../src/study/dateOfDay.js";

test.each([
  ["2025-03-07", "year-month-day"],
  ["2025/3/7", "year-month-day"],
  ["20250307", "year-month-day"],
  ["07/03/2025", "day-month-year"],
  ["7.3.2025", "day-month-year"],
  ["7. 3. 2025", "day-month-year"],
  ["7-3-2025", "day-month-year"],
  ["7 Mar 2025", "day-month-year"],
  ["7th March 2025", "day-month-year"],
  ["07-MAR-2025", "day-month-year"],
  ["03/07/2025", "month-day-year"],
  ["Mar 7, 2025", "month-day-year"],
  ["March 7 2025", "month-day-year"],
  ["07/03/2025 00:00", "day-month-year"],
  ["2025-03-07T00:00:00", "year-month-day"],
] as const)("%s in the order %s is the seventh of March", (text, order) => {
  expect(calendarDay(text, order, null)).toBe("2025-03-07");
});

test("a year of four digits that stands first, and a month with a name, are what they are under every order", () => {
  for (const order of ["year-month-day", "day-month-year", "month-day-year"] as const) {
    expect(calendarDay("2025-03-07", order, null)).toBe("2025-03-07");
    expect(calendarDay("7 Mar 2025", order, null)).toBe("2025-03-07");
    expect(calendarDay("2025 Mar 7", order, null)).toBe("2025-03-07");
  }
});

test("two digits of a year need their hundred years declared, and mean the one year in them", () => {
  expect(calendarDay("7.3.25", "day-month-year", null)).toBeNull();
  expect(calendarDay("7.3.25", "day-month-year", 1950)).toBe("2025-03-07");
  expect(calendarDay("7.3.49", "day-month-year", 1950)).toBe("2049-03-07");
  expect(calendarDay("7.3.50", "day-month-year", 1950)).toBe("1950-03-07");
  expect(calendarDay("7.3.00", "day-month-year", 1999)).toBe("2000-03-07");
  expect(calendarDay("25-03-07", "year-month-day", 2000)).toBe("2025-03-07");
  expect(calendarDay("7 Mar 25", "day-month-year", 2000)).toBe("2025-03-07");
  expect(calendarDay("25 Mar 7", "year-month-day", 2000)).toBe("2025-03-07");
});

test.each([
  "31/02/2025",
  "32/1/2025",
  "7/13/2025",
  "0/3/2025",
  "7/3",
  "7/3/2025/1",
  "7 Mrz 2025",
  "Mar Mar 2025",
  "7/3/225",
  "7/3/02025",
  "",
  "7",
  "07/03/2025 14:30",
  "-7/3/2025",
  "7//3/2025",
  "seven/3/2025",
  "7/3/20 25",
])("%s is no day", (text) => {
  expect(calendarDay(text, "day-month-year", 2000)).toBeNull();
});

test("every day of two centuries is read back from every way of writing it", () => {
  const days = fc.integer({ min: -25_000, max: 45_000 }).map(dateOfDay);
  const separator = fc.constantFrom("/", ".", "-", " ", ". ");
  fc.assert(
    fc.property(days, separator, fc.boolean(), (date, mark, padded) => {
      const [year = "", month = "", day = ""] = date.split("-");
      const [m, d] = padded ? [month, day] : [String(Number(month)), String(Number(day))];
      expect(calendarDay([d, m, year].join(mark), "day-month-year", null)).toBe(date);
      expect(calendarDay([m, d, year].join(mark), "month-day-year", null)).toBe(date);
      expect(calendarDay([year, m, d].join(mark), "year-month-day", null)).toBe(date);
    }),
  );
});
