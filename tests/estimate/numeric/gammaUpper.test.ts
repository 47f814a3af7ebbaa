import { expect, test } from "vitest";
import { chiSquareUpper } from "../../../src/estimate/numeric/chiSquareUpper.js";
import { gammaUpper } from "../../../src/estimate/numeric/gammaUpper.js";
import { normalUpper } from "../../../src/estimate/numeric/normalUpper.js";

test("tails as far as R 4.2.2 pnorm and pchisq can tell them, and 0 beyond", () => {
  // pnorm(37, lower = FALSE), pchisq(1400, 1, lower = FALSE)
  expect(normalUpper(37) / 5.725571222524e-300).toBeCloseTo(1, 10);
  expect(chiSquareUpper(1400, 1) / 2.101014516264e-306).toBeCloseTo(1, 10);
  expect([normalUpper(40), normalUpper(1e6), chiSquareUpper(1500, 3), chiSquareUpper(1e9, 3)]).toEqual([0, 0, 0, 0]);
});

test("shape 1 is the exponential distribution", () => {
  for (const x of [0, 0.1, 1, 10, 700]) expect(gammaUpper(1, x)).toBeCloseTo(Math.exp(-x), 14);
  expect(gammaUpper(1, 800)).toBe(0);
});
