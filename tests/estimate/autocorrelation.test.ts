import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { autocorrelation } from "../../src/estimate/autocorrelation.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// NIST StRD univariate sets; certified lag-1 values as printed in the files.
test.each([
  ["Lew", -0.307304800605679],
  ["Lottery", -0.120948622967393],
  ["NumAcc3", -0.999],
  ["NumAcc4", -0.999],
])("%s", (name, certified) => {
  const text = readFileSync(`${import.meta.dirname}/../reference/nist/${name}.dat`, "utf8");
  const values = text
    .split(/Data: *Y\r?\n-+\r?\n/)[1]!
    .trim()
    .split(/\s+/)
    .map(Number);
  expectNear([autocorrelation(values)], [certified], 1e-10);
});

test("lags 1 to 3 by R's acf", () => {
  const toes = [81.5, 78, 90.25, 84, 84, 76.5, 101, 88.75, 79.5];
  expectNear([1, 2, 3].map((lag) => autocorrelation(toes, lag)), closedForm("toes autocorrelation"), 1e-12); // prettier-ignore
});

test("lag 0 is 1, and two values are enough for lag 1", () => {
  expect(autocorrelation([1, 2])).toBe(-0.5);
  expect(autocorrelation([1, 5, 2], 0)).toBe(1);
});

test.each([
  [[1], 1, "too_few"],
  [[1, 2], 2, "too_few"],
  [[3, 3, 3], 1, "no_variation"],
  [[1, NaN, 2], 1, "not_a_number"],
  [[1, 4, 2], 1.5, "not_a_count"],
])("%j at lag %d is %s", (values, lag, code) => {
  expect(faultCode(() => autocorrelation(values, lag))).toBe(code);
});
