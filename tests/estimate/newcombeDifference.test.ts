import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { newcombeDifference } from "../../src/estimate/newcombeDifference.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Newcombe 1998, Stat Med 17:873-890, Table II, cases a to h, methods 10 and 11, and 7/34 - 1/34 (Perondi et al. 2004, as used in the
// R package contingencytables); more digits from R 4.2.2, from the limits of prop.test.
// prettier-ignore
const table = [
  [56, 70, 48, 80, 0.05243147, 0.33387265, 0.04276787, 0.34218628],
  [9, 10, 3, 10, 0.17052272, 0.80901797, 0.10128723, 0.83866897],
  [6, 7, 2, 7, 0.05822793, 0.80624964, -0.02902412, 0.84226663],
  [5, 56, 0, 29, -0.03813715, 0.19256001, -0.06670854, 0.20369829],
  [0, 10, 0, 20, -0.16112516, 0.27753280, -0.20045335, 0.34453722],
  [0, 10, 0, 10, -0.27753280, 0.27753280, -0.34453722, 0.34453722],
  [10, 10, 0, 20, 0.67908604, 1, 0.60139313, 1],
  [10, 10, 0, 10, 0.60750935, 1, 0.51275079, 1],
  [7, 34, 1, 34, 0.01892144, 0.34036869, -0.00401296, 0.35682944],
] as const;

test.each(table)("%d/%d - %d/%d as published and by R", (x1, n1, x2, n2, lower, upper, lowerCorrected, upperCorrected) => {
  const plain = newcombeDifference(x1, n1, x2, n2);
  const corrected = newcombeDifference(x1, n1, x2, n2, { continuity: true });
  expect([plain.estimate, plain.n, plain.cases]).toEqual([x1 / n1 - x2 / n2, n1 + n2, x1 + x2]);
  expect(plain.lower).toBeCloseTo(lower, 7);
  expect(plain.upper).toBeCloseTo(upper, 7);
  expect(corrected.lower).toBeCloseTo(lowerCorrected, 7);
  expect(corrected.upper).toBeCloseTo(upperCorrected, 7);
});

test("at 90 % by R", () => {
  const plain = newcombeDifference(17, 60, 9, 71, { level: 0.9 });
  const corrected = newcombeDifference(17, 60, 9, 71, { level: 0.9, continuity: true });
  expectNear([plain.lower, plain.upper], closedForm("newcombe 17/60 9/71 0.9"), 1e-12);
  expectNear([corrected.lower, corrected.upper], closedForm("newcombe corrected 17/60 9/71 0.9"), 1e-12);
});

const counts = fc.integer({ min: 1, max: 300 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));

describe("for any counts", () => {
  test("limits hold the estimate, stay within -1 and 1 and leave a width", () => {
    fc.assert(
      fc.property(counts, counts, fc.boolean(), ([x1, n1], [x2, n2], continuity) => {
        const { estimate, lower, upper } = newcombeDifference(x1, n1, x2, n2, { continuity });
        expect(-1 <= lower && lower <= estimate && estimate <= upper && upper <= 1).toBe(true);
        expect(upper).toBeGreaterThan(lower);
      }),
    );
  });

  test("swapping the groups flips the sign, and a higher level is wider", () => {
    fc.assert(
      fc.property(counts, counts, ([x1, n1], [x2, n2]) => {
        const one = newcombeDifference(x1, n1, x2, n2);
        const other = newcombeDifference(x2, n2, x1, n1);
        expect(other.lower).toBeCloseTo(-one.upper, 12);
        expect(other.upper).toBeCloseTo(-one.lower, 12);
        const wide = newcombeDifference(x1, n1, x2, n2, { level: 0.99 });
        expect(wide.lower <= one.lower && wide.upper >= one.upper).toBe(true);
      }),
    );
  });
});

test("an empty group is refused", () => {
  expect(faultCode(() => newcombeDifference(0, 0, 3, 10))).toBe("empty");
  expect(faultCode(() => newcombeDifference(3, 10, 11, 10))).toBe("out_of_range");
});
