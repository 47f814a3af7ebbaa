import { expect, test } from "vitest";
import { daysInWords } from "../../../src/answer/words/daysInWords.js";

test("one day is one, all other numbers are several", () => {
  expect([0, 1, 7].map((days) => daysInWords(days))).toEqual(["0 days", "1 day", "7 days"]);
  expect(daysInWords(7, 14)).toBe("7, 14 days");
});
