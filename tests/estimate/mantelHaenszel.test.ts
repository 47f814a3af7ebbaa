import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mantelHaenszel } from "../../src/estimate/mantelHaenszel.js";
import { tableOf } from "../../src/estimate/tableOf.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { admissions, passengers, rabbits, seasons } from "./strataData.js";

// R 4.2.2: mantelhaen.test(UCBAdmissions, correct = FALSE), metafor 3.8-1 rma.mh(measure = "OR" | "RR" | "RD", correct = FALSE).
describe("admissions by department", () => {
  test("odds ratio", () => {
    const r = mantelHaenszel(admissions);
    expectNear(
      [r.estimate, Math.log(r.estimate!), r.se, r.lower, r.upper],
      [0.904696828259, -0.100155387805, 0.0809889096562, 0.771907361759, 1.060329764437],
      1e-10,
    );
    expectNear(
      [r.cmh.statistic, r.cmh.p, r.cmh.corrected.statistic, r.cmh.corrected.p],
      [1.524606660443, 0.216923697056, 1.426946228587, 0.232263462817],
      1e-10,
    );
    expectNear([r.breslowDay!.statistic, r.breslowDay!.p, r.breslowDay!.df], [18.8255137052, 0.00207139034992, 5], 1e-10);
    expectNear([r.tarone!.statistic, r.tarone!.p], [18.8255012521, 0.00207140139788], 1e-10);
  });

  test("risk ratio and risk difference", () => {
    const ratio = mantelHaenszel(admissions, { measure: "riskRatio" });
    expectNear(
      [ratio.estimate, ratio.se, ratio.lower, ratio.upper],
      [0.944905022596, 0.0442239944392, 0.866452232683, 1.030461308827],
      1e-10,
    );
    expectNear([Math.log(ratio.estimate!)], [-0.0566708617289], 1e-10);
    expect([ratio.breslowDay, ratio.tarone, ratio.n]).toEqual([null, null, 4526]);
    const difference = mantelHaenszel(admissions, { measure: "riskDifference" });
    expectNear(
      [difference.estimate, difference.se, difference.lower, difference.upper],
      [-0.0184251961909, 0.0148253944383, -0.0474824353465, 0.0106320429648],
      1e-9,
    );
  });

  test("each department alone", () => {
    // Nine printed decimals.
    expectNear(
      admissions.map(({ a, b, c, d }) => tableOf(a, b, c, d).oddsRatio.estimate),
      [0.349212047, 0.80250071, 1.133059647, 0.921283756, 1.221631206, 0.827872745],
      1e-8,
    );
  });

  test("without the first department", () => {
    const r = mantelHaenszel(admissions.slice(1));
    expectNear([r.estimate, r.lower, r.upper], [1.03102999724, 0.870128761867, 1.221684538881], 1e-10);
    expectNear([r.cmh.statistic], [0.124984052657], 1e-9);
    expectNear([r.breslowDay!.statistic, r.breslowDay!.p, r.breslowDay!.df], [2.55820921238, 0.6342437359, 4], 1e-10);
  });
});

test("rabbits, with empty margins: R's example of ?mantelhaen.test", () => {
  const r = mantelHaenszel(rabbits);
  expectNear([r.estimate, r.lower, r.upper], [7, 1.0267126884617, 47.7251333802226], 1e-10);
  expectNear([r.cmh.corrected.statistic, r.cmh.corrected.p], [3.92857142857, 0.0474722551], 1e-9);
  expectNear([r.cmh.statistic, r.cmh.p], [5.65714285714, 0.0173844204], 1e-8);
  expect([r.strata, r.dropped]).toEqual([3, 2]);
  expect(r.note).toMatch(/2 of 5 strata/);
});

test("the Titanic by class: R's mantelhaen.test", () => {
  const r = mantelHaenszel(passengers());
  expectNear([r.estimate, r.lower, r.upper], closedForm("titanic odds"), 1e-10);
  expectNear([r.cmh.statistic, r.cmh.p, r.cmh.corrected.statistic, r.cmh.corrected.p], closedForm("titanic cmh"), 1e-8);
});

test("seasons worked by hand: 2.50 and 2.25 pool to 2.3938, not to the 2.8116 of the joined table", () => {
  // R = 30 x 25 / 90 + 10 x 72 / 130, S = 20 x 15 / 90 + 40 x 8 / 130.
  expectNear([mantelHaenszel(seasons).estimate], [(750 / 90 + 720 / 130) / (300 / 90 + 320 / 130)], 1e-14);
  expect(mantelHaenszel(seasons).estimate).toBeCloseTo(2.3938, 4);
  expect(tableOf(40, 60, 23, 97).oddsRatio.estimate).toBeCloseTo(2.8116, 4);
});

const cell = fc.integer({ min: 1, max: 60 });
const table = fc.record({ a: cell, b: cell, c: cell, d: cell });

describe("for any strata", () => {
  test("one stratum is the plain table", () => {
    fc.assert(
      fc.property(table, (stratum) => {
        const plain = tableOf(stratum.a, stratum.b, stratum.c, stratum.d);
        for (const measure of ["oddsRatio", "riskRatio", "riskDifference"] as const) {
          const pooled = mantelHaenszel([stratum], { measure });
          expect(pooled.estimate).toBeCloseTo(plain[measure].estimate!, 10);
          // Pooled difference variances are Sato's, which is another estimator of the same.
          if (measure !== "riskDifference") expect(pooled.se).toBeCloseTo(plain[measure].se!, 10);
        }
      }),
    );
  });

  test("order does not matter; swapping the groups turns the effect round; a higher level is wider", () => {
    fc.assert(
      fc.property(fc.array(table, { minLength: 1, maxLength: 6 }), (strata) => {
        const swapped = strata.map(({ a, b, c, d }) => ({ a: c, b: d, c: a, d: b })).reverse();
        for (const measure of ["oddsRatio", "riskRatio"] as const) {
          const [one, other] = [mantelHaenszel(strata, { measure }), mantelHaenszel(swapped, { measure })];
          expectNear([other.lower, other.upper], [1 / one.upper!, 1 / one.lower!], 1e-9);
          expect(mantelHaenszel(strata, { measure, level: 0.99 }).upper!).toBeGreaterThan(one.upper!);
        }
        const measure = "riskDifference";
        const [one, other] = [mantelHaenszel(strata, { measure }), mantelHaenszel(swapped, { measure })];
        expect(other.estimate).toBeCloseTo(-one.estimate!, 10);
        expect(other.se).toBeCloseTo(one.se!, 10);
      }),
    );
  });
});

test("a side without cases leaves an infinite ratio, no limits and a note", () => {
  const r = mantelHaenszel([{ a: 3, b: 2, c: 0, d: 5 }]);
  expect([r.estimate, r.lower, r.upper, r.breslowDay]).toEqual([Infinity, null, null, null]);
  expect(r.note).toMatch(/one side/);
  const nothing = mantelHaenszel([{ a: 3, b: 2, c: 0, d: 0 }]);
  expect([nothing.estimate, nothing.strata, nothing.cmh.p]).toEqual([null, 0, null]);
});

test("no strata, empty strata and half counts are refused", () => {
  expect(faultCode(() => mantelHaenszel([]))).toBe("empty");
  expect(faultCode(() => mantelHaenszel([{ a: 0, b: 0, c: 0, d: 0 }]))).toBe("empty");
  expect(faultCode(() => mantelHaenszel([{ a: 1, b: 0.5, c: 0, d: 0 }]))).toBe("not_a_count");
});
