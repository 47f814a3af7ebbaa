import { expect, test } from "vitest";
import { standardErrorOfMeasurement } from "../../src/estimate/standardErrorOfMeasurement.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

test("the residual standard deviation of R's lm with one mean a thing, chi-square limits", () => {
  const r = standardErrorOfMeasurement([[4, 6, 5], [9, 11], [3, 3.5, 8]]); // prettier-ignore
  expectNear([r.estimate, r.lower, r.upper], closedForm("sem limits"), 1e-11);
  expect([r.n, r.repeats, r.df]).toEqual([3, 8, 5]);
});

test("with two repeats each it is the root of half the mean squared difference", () => {
  expectNear([standardErrorOfMeasurement([[1, 3], [10, 11], [4, 4]]).estimate], [Math.sqrt((4 + 1 + 0) / 6)], 1e-14); // prettier-ignore
});

test("nulls and things measured once are left out and counted", () => {
  const r = standardErrorOfMeasurement([[1, 3, null], [7], [2, null]]);
  expect([r.n, r.repeats, r.missing]).toEqual([1, 2, 4]);
});

test("equal repeats have no limits; nothing measured twice is too few", () => {
  expect(standardErrorOfMeasurement([[2, 2]])).toMatchObject({ estimate: 0, lower: null, upper: null });
  expect(faultCode(() => standardErrorOfMeasurement([[1], [2]]))).toBe("too_few");
  expect(faultCode(() => standardErrorOfMeasurement([[1, NaN]]))).toBe("not_a_number");
});
