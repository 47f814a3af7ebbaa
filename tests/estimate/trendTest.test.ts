import fc from "fast-check";
import { expect, test } from "vitest";
import { trendTest } from "../../src/estimate/trendTest.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Smokers among patients in four groups, example of R's ?prop.trend.test (Fleiss 1981); R 4.2.2. z is minus the root: falling.
test("smokers", () => {
  const r = trendTest([83, 90, 129, 70], [86, 93, 136, 82]);
  expectNear([r.statistic, r.p, r.z], [8.2249222852, 0.00413189747764, -2.86791253095], 1e-10);
  expectNear([r.heterogeneity.statistic, r.heterogeneity.df, r.heterogeneity.p], [12.6004112971, 3, 0.00558547666], 1e-8);
  // Packages that take the variance over N - 1 print this z instead; the doc comment says which is used here.
  expectNear([r.z! * Math.sqrt((r.n - 1) / r.n)], [-2.86429827302], 1e-10);
  const last = trendTest([83, 90, 129, 70], [86, 93, 136, 82], [0, 0, 0, 1]);
  expectNear([last.statistic, last.p], [12.1731462207, 0.000484824593], 1e-8);
});

test("rising, and with scores of one's own, by R's prop.trend.test and prop.test", () => {
  const rising = trendTest([2, 5, 9, 14], [30, 32, 28, 30]);
  expectNear([rising.statistic, rising.p], closedForm("trend"), 1e-11);
  expect(rising.z).toBeGreaterThan(0);
  const scored = trendTest([20, 15, 9, 5, 4], [31, 28, 30, 33, 29], [0, 1, 2, 4, 8]);
  expectNear([scored.statistic, scored.p], closedForm("trend scores"), 1e-11);
  expectNear([scored.heterogeneity.statistic, scored.heterogeneity.p], closedForm("trend heterogeneity"), 1e-11);
  expectNear([scored.departure.statistic], [scored.heterogeneity.statistic! - scored.statistic!], 1e-12);
  expect(scored.departure.df).toBe(3);
});

test("shifting or stretching the scores changes nothing; turning them round flips z", () => {
  const counts = fc.array(
    fc.integer({ min: 1, max: 60 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n))),
    { minLength: 2, maxLength: 6 },
  );
  fc.assert(
    fc.property(counts, (groups) => {
      const [cases, n] = [groups.map(([y]) => y), groups.map(([, size]) => size)];
      const one = trendTest(cases, n);
      fc.pre(one.z !== null);
      const scaled = trendTest(cases, n, cases.map((_, i) => 7 + 3 * i)); // prettier-ignore
      const turned = trendTest(cases, n, cases.map((_, i) => -i)); // prettier-ignore
      expect(scaled.z).toBeCloseTo(one.z, 9);
      expect(turned.z).toBeCloseTo(-one.z, 9);
      expect(one.statistic!).toBeLessThanOrEqual(one.heterogeneity.statistic! + 1e-9);
    }),
  );
});

test("no cases, or one score for all, leave nothing to test", () => {
  const none = trendTest([0, 0], [5, 6]);
  expect([none.statistic, none.p, none.z, none.heterogeneity.p]).toEqual([null, null, null, null]);
  expect(trendTest([1, 2], [5, 6], [3, 3]).p).toBeNull();
});

test.each([
  [[1], [2], undefined, "too_few"],
  [[1, 2], [2], undefined, "length_mismatch"],
  [[1, 2], [2, 3], [1], "length_mismatch"],
  [[1, 0], [2, 0], undefined, "empty"],
  [[3, 1], [2, 2], undefined, "out_of_range"],
  [[1, 1], [2, 2], [1, NaN], "not_a_number"],
])("%j of %j with scores %j is %s", (cases, n, scores, code) => {
  expect(faultCode(() => trendTest(cases, n, scores))).toBe(code);
});
