import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tableOf } from "../../src/estimate/tableOf.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Steering Committee of the Physicians' Health Study 1989, NEJM 321:129-135, infarction on placebo and aspirin; Agresti, Categorical Data
// Analysis, prints OR 1.832 (1.440, 2.331) and X2 25.01. Digits from R 4.2.2.
test("infarction on placebo against aspirin", () => {
  const { oddsRatio, riskRatio, riskDifference, chiSquare, chiSquareYates } = tableOf(189, 10845, 104, 10933);
  const all = [oddsRatio, riskRatio, riskDifference].flatMap(({ estimate, se, lower, upper }) => [estimate, se, lower, upper]);
  expectNear(
    all,
    [
      ...[1.83205394191, 0.122841623648, 1.44004239185, 2.33077975],
      ...[1.81780179445, 0.121347256296, 1.43303090305, 2.30588423242],
      ...[0.007706023976, 0.00153996365482, 0.00468775067505, 0.010724297277],
    ],
    1e-10,
  );
  expectNear([chiSquare.statistic, chiSquare.p], [25.0138839672, 5.69189697e-7], 1e-8);
  expectNear([chiSquareYates.statistic, chiSquareYates.p], [24.4290565152, 7.70970755e-7], 1e-8);
});

// datasets::UCBAdmissions of all departments together, R 4.2.2.
test("admissions, not stratified", () => {
  const { oddsRatio, riskRatio, riskDifference } = tableOf(1198, 1493, 557, 1278);
  expectNear(
    [oddsRatio.estimate, oddsRatio.se, oddsRatio.lower, oddsRatio.upper],
    [1.84108003718, 0.0638930485669, 1.62437690975, 2.08669286234],
    1e-10,
  );
  expectNear([riskRatio.estimate, riskRatio.lower, riskRatio.upper], [1.46664158139, 1.35234997538, 1.59059235214], 1e-10);
  expectNear(
    [riskDifference.estimate, riskDifference.lower, riskDifference.upper],
    [0.141645428247, 0.113446965491, 0.169843891002],
    1e-10,
  );
});

test("log effects and errors are those of R's glm with logit, log and identity link", () => {
  const { oddsRatio, riskRatio, riskDifference } = tableOf(12, 5, 7, 30);
  // glm iterates to about 1e-8 for the two links that are not canonical.
  expectNear([Math.log(oddsRatio.estimate!), oddsRatio.se], closedForm("glm logit 12 5 7 30"), 1e-8);
  expectNear([Math.log(riskRatio.estimate!), riskRatio.se], closedForm("glm log 12 5 7 30"), 1e-6);
  expectNear([riskDifference.estimate, riskDifference.se], closedForm("glm identity 12 5 7 30"), 1e-6);
});

test("chi-square by R's chisq.test", () => {
  const { chiSquare, chiSquareYates, smallestExpected, n } = tableOf(12, 5, 7, 30);
  expectNear([smallestExpected, n], [(17 * 19) / 54, 54], 1e-14);
  expectNear([chiSquare.statistic, chiSquare.p], closedForm("chisq 12 5 7 30"), 1e-10);
  expectNear([chiSquareYates.statistic, chiSquareYates.p], closedForm("chisq yates 12 5 7 30"), 1e-10);
});

// Differences of Newcombe 1998, Stat Med 17:873-890, Table II, the simple (Wald) method; R 4.2.2.
test.each([
  [56, 14, 48, 32, 0.0575049, 0.3424951],
  [9, 1, 3, 7, 0.26052428, 0.93947572],
  [6, 1, 2, 5, 0.14811614, 0.994741],
  [5, 51, 0, 29, 0.01460024, 0.16397119],
  [7, 27, 1, 33, 0.02916942, 0.32377176],
])("risk difference of %d, %d, %d, %d", (a, b, c, d, lower, upper) => {
  const { riskDifference } = tableOf(a, b, c, d);
  expect(riskDifference.lower).toBeCloseTo(lower, 7);
  expect(riskDifference.upper).toBeCloseTo(upper, 7);
});

describe("empty cells are said, not filled", () => {
  test("one empty cell: the ratio is 0 or infinite and has no Wald limits", () => {
    const none = tableOf(0, 10, 5, 5).oddsRatio;
    expect([none.estimate, none.se, none.lower, none.upper]).toEqual([0, null, null, null]);
    expect(none.note).toMatch(/fisherExact/);
    const all = tableOf(5, 5, 0, 10);
    expect([all.oddsRatio.estimate, all.riskRatio.estimate, all.riskRatio.lower]).toEqual([Infinity, Infinity, null]);
    expect(all.riskDifference.estimate).toBe(0.5);
    expect(all.riskDifference.lower).not.toBeNull();
  });

  test("an empty group leaves nothing to compare", () => {
    const { oddsRatio, riskRatio, riskDifference, chiSquare } = tableOf(3, 4, 0, 0);
    expect([oddsRatio.estimate, riskRatio.estimate, riskDifference.estimate, chiSquare.p]).toEqual([null, null, null, null]);
  });

  test("two groups without cases differ by 0, without a zero-width interval", () => {
    const { riskDifference } = tableOf(0, 10, 0, 20);
    expect([riskDifference.estimate, riskDifference.lower, riskDifference.upper]).toEqual([0, null, null]);
  });
});

test("swapping the groups inverts ratios and flips the difference", () => {
  const cell = fc.integer({ min: 1, max: 500 });
  fc.assert(
    fc.property(cell, cell, cell, cell, (a, b, c, d) => {
      const [one, other] = [tableOf(a, b, c, d), tableOf(c, d, a, b)];
      for (const ratio of ["oddsRatio", "riskRatio"] as const) {
        expectNear([other[ratio].lower, other[ratio].upper], [1 / one[ratio].upper!, 1 / one[ratio].lower!], 1e-9);
        expect(one[ratio].lower! <= one[ratio].estimate! && one[ratio].estimate! <= one[ratio].upper!).toBe(true);
        expect(tableOf(a, b, c, d, { level: 0.99 })[ratio].upper!).toBeGreaterThan(one[ratio].upper!);
      }
      expect(other.riskDifference.estimate).toBeCloseTo(-one.riskDifference.estimate!, 12);
      expect(other.riskDifference.lower).toBeCloseTo(-one.riskDifference.upper!, 12);
      expect(other.chiSquare.statistic).toBeCloseTo(one.chiSquare.statistic!, 6);
    }),
  );
});

test.each([
  [0, 0, 0, 0, "empty"],
  [1, 2, 3, -4, "not_a_count"],
  [1, 2.5, 3, 4, "not_a_count"],
  [1, NaN, 3, 4, "not_a_number"],
])("%d, %d, %d, %d is %s", (a, b, c, d, code) => {
  expect(faultCode(() => tableOf(a, b, c, d))).toBe(code);
});
