import fc from "fast-check";
import { expect, test } from "vitest";
import { breslowDay } from "../../src/estimate/breslowDay.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { admissions } from "./strataData.js";

// R 4.2.2, metafor 3.8-1: rma.mh(measure = "OR", correct = FALSE)$BD and $TA with the Mantel-Haenszel odds ratio.
test("admissions by department", () => {
  const r = breslowDay(admissions, { oddsRatio: 0.904696828258623 });
  expectNear([r.breslowDay.statistic, r.breslowDay.df, r.breslowDay.p], [18.8255137052, 5, 0.00207139034992], 1e-10);
  expectNear([r.tarone.statistic, r.tarone.p], [18.8255012521, 0.00207140139788], 1e-10);
});

test("strata made with one odds ratio leave nothing over, whatever the ratio", () => {
  // a d / (b c) is the same in both by construction.
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 1, max: 30 }),
      fc.integer({ min: 1, max: 9 }),
      (x, y, times) => {
        const strata = [
          { a: x * times, b: y, c: x, d: y },
          { a: 2 * times, b: 3, c: 2, d: 3 },
        ];
        expect(breslowDay(strata, { oddsRatio: times }).breslowDay.statistic).toBeCloseTo(0, 8);
      },
    ),
  );
});

test("strata with an empty margin do not count, and one stratum is no test", () => {
  const [first, second] = admissions;
  const r = breslowDay([first!, second!, { a: 1, b: 2, c: 0, d: 0 }], { oddsRatio: 1.2 });
  expect(r.breslowDay.df).toBe(1);
  expect(breslowDay([first!], { oddsRatio: 1.2 }).tarone).toEqual({ statistic: null, df: 0, p: null });
});

test("an odds ratio of 0 is refused", () => {
  expect(faultCode(() => breslowDay(admissions, { oddsRatio: 0 }))).toBe("out_of_range");
});
