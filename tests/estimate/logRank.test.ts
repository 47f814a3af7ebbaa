import { expect, test } from "vitest";
import { logRank } from "../../src/estimate/logRank.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { leukaemia, threeGroups, timesOf } from "./leukaemia.js";
import { expectNear } from "./reference.js";

// R 4.2.2, survival 3.5-3: survdiff(Surv(time, status) ~ x, aml), rho = 0 and 1.
test("weeks of remission", () => {
  const r = logRank([leukaemia.maintained, leukaemia.not]);
  expectNear([r.chiSquare, r.df, r.p], [3.39638869898, 1, 0.0653393220405], 1e-10);
  expectNear(r.groups.map((group) => group.expected), [10.6893359923, 7.3106640077], 1e-10); // prettier-ignore
  expect(r.groups.map((group) => group.observed)).toEqual([7, 11]);
  expectNear([r.variance[0]![0]], [4.00755074594], 1e-10);
  expectNear([logRank([leukaemia.maintained, leukaemia.not], { rho: 1 }).chiSquare], [2.77927954475], 1e-10);
});

test.each([0, 1])("three invented groups with ties, rho %d, by R's survdiff", (rho) => {
  const r = logRank(threeGroups, { rho });
  const found = [r.chiSquare, r.p, ...r.groups.map((group) => group.observed), ...r.groups.map((group) => group.expected)];
  expectNear(found, closedForm(`logrank ${rho}`), 1e-10);
  if (rho === 0) expectNear(r.variance.flat(), closedForm("logrank variance"), 1e-10);
});

test("the method says which weights were used", () => {
  expect([0, 1].map((rho) => logRank(threeGroups, { rho }).method)).toEqual(["Log-rank test", "Weighted log-rank test, rho 1"]); // prettier-ignore
});

test("the order of groups and rows does not matter", () => {
  const turned = threeGroups.map((rows) => [...rows].reverse()).reverse();
  expectNear([logRank(turned).chiSquare], [logRank(threeGroups).chiSquare!], 1e-10);
});

test("the same group twice differs by nothing", () => {
  expect(logRank([leukaemia.not, leukaemia.not]).chiSquare).toBeCloseTo(0, 12);
});

test("missing rows are counted; without events there is nothing to test", () => {
  const r = logRank([timesOf("3+ 5+"), [...timesOf("4+"), { time: null, event: true }]]);
  expect([r.chiSquare, r.p, r.missing]).toEqual([null, null, 1]);
});

test("one group, or an empty one, is refused", () => {
  expect(faultCode(() => logRank([leukaemia.not]))).toBe("too_few");
  expect(faultCode(() => logRank([leukaemia.not, []]))).toBe("empty");
  expect(faultCode(() => logRank([leukaemia.not, [{ time: -3, event: true }]]))).toBe("out_of_range");
});
