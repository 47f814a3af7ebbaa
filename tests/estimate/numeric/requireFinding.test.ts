import { expect, test } from "vitest";
import { requireFinding } from "../../../src/estimate/numeric/requireFinding.js";
import { faultCode } from "../faultCode.js";

test("yes and no, in words and in numbers", () => {
  expect([true, false, 1, 0].map((value) => requireFinding("case", value))).toEqual([true, false, true, false]);
});

test.each([
  [NaN, "not_a_number"],
  [-Infinity, "not_a_number"],
  [2, "out_of_range"],
  ["yes", "out_of_range"],
  [null, "out_of_range"],
  [undefined, "out_of_range"],
])("%s is neither", (value, code) => {
  expect(faultCode(() => requireFinding("case", value))).toBe(code);
});
