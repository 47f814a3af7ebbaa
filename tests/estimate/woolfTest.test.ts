import { expect, test } from "vitest";
import { woolfTest } from "../../src/estimate/woolfTest.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { admissions, rabbits } from "./strataData.js";

// R 4.2.2, vcd 1.4-11: woolf_test(UCBAdmissions).
test("admissions by department", () => {
  const { statistic, df, p } = woolfTest(admissions);
  expectNear([statistic, df, p], [17.90171247, 5, 0.00307214231], 1e-8);
});

// R 4.2.2, metafor 3.8-1: rma.mh(measure = "OR", correct = FALSE)$QE.
test("about the Mantel-Haenszel odds ratio", () => {
  expectNear([woolfTest(admissions, { about: 0.904696828259 }).statistic], [17.9986286385], 1e-10);
  expect(faultCode(() => woolfTest(admissions, { about: 0 }))).toBe("out_of_range");
});

test("with an empty cell anywhere 1/2 is added to every cell", () => {
  const halves = rabbits.map(({ a, b, c, d }) => [a + 0.5, b + 0.5, c + 0.5, d + 0.5] as const);
  const logs = halves.map(([a, b, c, d]) => Math.log((a * d) / (b * c)));
  const weights = halves.map(([a, b, c, d]) => 1 / (1 / a + 1 / b + 1 / c + 1 / d));
  const total = weights.reduce((x, y) => x + y);
  const mean = logs.reduce((sum, log, i) => sum + log * weights[i]!, 0) / total;
  expectNear([woolfTest(rabbits).statistic], [logs.reduce((sum, log, i) => sum + weights[i]! * (log - mean) ** 2, 0)], 1e-12);
});

test("one stratum is no test, none is refused", () => {
  expect(woolfTest(admissions.slice(1, 2))).toEqual({ statistic: null, df: 0, p: null });
  expect(faultCode(() => woolfTest([]))).toBe("empty");
});
