import { expect, test } from "vitest";
import { minimumDetectableChange } from "../../src/estimate/minimumDetectableChange.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

test("2.77 standard errors at 95 % (Bland & Altman 1996, BMJ 312:1654), and qnorm(0.95) sqrt(2) at 90 %", () => {
  expect(minimumDetectableChange(1)).toBeCloseTo(2.77, 2);
  expectNear([minimumDetectableChange(2.5, { level: 0.9 })], [1.644853626951473 * Math.SQRT2 * 2.5], 1e-12);
  expect(minimumDetectableChange(0)).toBe(0);
});

test("a negative error and NaN are refused", () => {
  expect(faultCode(() => minimumDetectableChange(-1))).toBe("out_of_range");
  expect(faultCode(() => minimumDetectableChange(NaN))).toBe("not_a_number");
});
