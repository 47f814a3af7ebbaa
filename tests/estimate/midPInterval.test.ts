import fc from "fast-check";
import { expect, test } from "vitest";
import { clopperPearsonInterval } from "../../src/estimate/clopperPearsonInterval.js";
import { midPInterval } from "../../src/estimate/midPInterval.js";
import { closedForm, closedFormCases } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Method 6 of Newcombe 1998, Stat Med 17:857-872; values from R 4.2.2: uniroot of pbinom(x, n, p, FALSE) + dbinom(x, n, p)/2 - 0.025.
test.each([
  [81, 263, 0.2544021049, 0.3657734743],
  [15, 148, 0.0600636027, 0.1581217331],
  [0, 20, 0, 0.1391083407],
  [1, 29, 0.0017247701, 0.1585373837],
  [20, 20, 0.8608916593, 1],
  [29, 29, 0.9018553723, 1],
  [0, 1, 0, 0.95],
  [1, 1, 0.05, 1],
  [12, 100, 0.0666756851, 0.1950819308],
])("%d of %d", (cases, n, lower, upper) => {
  const interval = midPInterval(cases, n);
  expect(interval.lower).toBeCloseTo(lower, 9);
  expect(interval.upper).toBeCloseTo(upper, 9);
});

test.each(closedFormCases("mid-p "))("%s at other levels by R", (name) => {
  const [cases, n, level] = name.split(/[/ ]/).map(Number) as [number, number, number];
  const interval = midPInterval(cases, n, { level });
  // R's uniroot stops at 1e-15 absolute, which is 2e-12 of the smallest limit.
  expectNear([interval.lower, interval.upper], closedForm(`mid-p ${name}`), 1e-10);
});

test("for any counts limits hold the estimate and lie within the exact ones", () => {
  const counts = fc.integer({ min: 1, max: 500 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  fc.assert(
    fc.property(counts, fc.double({ min: 0.05, max: 0.999, noNaN: true }), ([cases, n], level) => {
      const { estimate, lower, upper } = midPInterval(cases, n, { level });
      const exact = clopperPearsonInterval(cases, n, { level });
      expect(exact.lower <= lower && lower <= estimate).toBe(true);
      expect(estimate <= upper && upper <= exact.upper).toBe(true);
    }),
  );
});

test("0 of 0 is empty, and more cases than examined out of range", () => {
  expect(faultCode(() => midPInterval(0, 0))).toBe("empty");
  expect(faultCode(() => midPInterval(2, 1))).toBe("out_of_range");
});
