import { expect, test } from "vitest";
import { headerMeaning } from "../../../src/read/draft/headerMeaning.js";

test.each([
  ["Toe (mm)", "toe", "mm"],
  ["Toe length [in.]", "toe length", "in"],
  ["hoof_width_cm", "hoof width", "cm"],
  ["Toe mm", "toe", "mm"],
  ["Weight, lbs", "weight", "lb"],
  ["Angle \u00b0", "angle", "deg"],
  ["Angle\u00b0", "angle", "deg"],
  ['Width "', "width", "in"],
  ["Height (hh)", "height", "hands"],
  ["Interval (weeks)", "interval", "weeks"],
  ["Day", "day", null],
  ["Vet involved", "vet involved", null],
  ["Marks (see note)", "marks (see note)", null],
  ["  Date   of.visit ", "date of visit", null],
])("%s", (header, words, unit) => {
  expect(headerMeaning(header)).toEqual({ words, unit });
});
