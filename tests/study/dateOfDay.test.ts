import fc from "fast-check";
import { expect, test } from "vitest";
import { dateOfDay } from "../../src/study/dateOfDay.js";
import { dayNumber } from "../../src/study/dayNumber.js";

test("date and day number are each other's inverse", () => {
  expect(dateOfDay(0)).toBe("1970-01-01");
  fc.assert(
    fc.property(fc.integer({ min: -350_000, max: 2_900_000 }), (day) => {
      expect(dayNumber(dateOfDay(day))).toBe(day);
    }),
  );
});
