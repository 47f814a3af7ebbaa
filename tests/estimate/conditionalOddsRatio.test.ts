import { expect, test } from "vitest";
import { conditionalOddsRatio } from "../../src/estimate/conditionalOddsRatio.js";
import { fisherExact } from "../../src/estimate/fisherExact.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { admissions, passengers, rabbits } from "./strataData.js";

test.each([
  ["ucb", admissions],
  ["rabbits", rabbits],
  ["titanic", passengers()],
])("%s: R's hypergeometric weights, solved to full precision, and p of mantelhaen.test(exact = TRUE)", (name, strata) => {
  const { estimate, lower, upper, p } = conditionalOddsRatio(strata);
  expectNear([estimate, lower, upper], closedForm(`${name} exact odds`), 1e-9);
  expectNear([p], closedForm(`${name} exact p`), 1e-8);
});

// R 4.2.2, mantelhaen.test(UCBAdmissions, exact = TRUE) and its rabbits example. Its root search stops at 1e-4 of the odds ratio or its
// inverse, which is 1e-2 of the upper limit of the rabbits.
test("as printed by mantelhaen.test", () => {
  const ucb = conditionalOddsRatio(admissions);
  expectNear([ucb.estimate, ucb.lower, ucb.upper], [0.905076193638, 0.769714040581, 1.06341699278], 3e-5);
  expect(ucb.p).toBeCloseTo(0.227762526798, 9);
  expect(ucb.statistic).toBe(1198);
  const small = conditionalOddsRatio(rabbits);
  expectNear([small.estimate, small.lower, small.upper], [10.3610240814, 1.0774014302, 529.8373990233], 1e-2);
  expect(small.p).toBeCloseTo(0.0399449036, 9);
});

test("one stratum is Fisher's test", () => {
  const { estimate, lower, upper, p } = conditionalOddsRatio([{ a: 12, b: 5, c: 7, d: 30 }]);
  const fisher = fisherExact(12, 5, 7, 30);
  expectNear(
    [estimate, lower, upper, p],
    [fisher.oddsRatio.estimate!, fisher.oddsRatio.lower!, fisher.oddsRatio.upper!, fisher.p],
    1e-12,
  );
});

test("strata with empty margins add nothing; only such strata say nothing", () => {
  const empty = { a: 3, b: 2, c: 0, d: 0 };
  const with_ = conditionalOddsRatio([...admissions, empty]);
  expectNear([with_.estimate, with_.p], [conditionalOddsRatio(admissions).estimate!, conditionalOddsRatio(admissions).p], 1e-9);
  const nothing = conditionalOddsRatio([empty]);
  expect([nothing.estimate, nothing.lower, nothing.upper]).toEqual([null, 0, Infinity]);
  expect(nothing.note).toMatch(/empty margin/);
});

test("every case exposed in every stratum: infinite, with a lower limit", () => {
  const all = conditionalOddsRatio([
    { a: 3, b: 2, c: 0, d: 4 },
    { a: 5, b: 1, c: 0, d: 3 },
  ]);
  expect([all.estimate, all.upper, all.n]).toEqual([Infinity, Infinity, 18]);
  expect(all.lower).toBeGreaterThan(1);
});

test("no strata, or an empty one, is refused", () => {
  expect(faultCode(() => conditionalOddsRatio([]))).toBe("empty");
  expect(faultCode(() => conditionalOddsRatio([{ a: 0, b: 0, c: 0, d: 0 }]))).toBe("empty");
});

test("strata of a size that would take a machine hours are refused", () => {
  const large = { a: 9000, b: 9000, c: 9000, d: 9000 };
  expect(faultCode(() => conditionalOddsRatio([large, large]))).toBe("out_of_range");
});
