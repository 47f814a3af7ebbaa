import { expect, test } from "vitest";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import { fitLogistic } from "../../src/estimate/fitLogistic.js";
import type { NestedDesign } from "../../src/simulate/NestedDesign.js";
import { powerOf } from "../../src/simulate/powerOf.js";
import { simulateNestedStudy } from "../../src/simulate/simulateNestedStudy.js";
import { faultCode } from "../estimate/faultCode.js";

const truth = { intercept: 0, wet: 0, hind: 0.6, yardSd: 0, horseSd: 0 };
const design: NestedDesign = { yards: 5, horsesPerYard: 10, visits: 1, wetBy: "visit", truth };

test("p values below alpha count, refusals do not", () => {
  const values = [0.01, 0.05, 0.2, 0.049];
  let run = 0;
  const test = () => {
    const value = values[run++ % 5];
    if (value === undefined) throw new EstimateError("separation", "Nothing to go by.", "See.");
    return value;
  };
  const { power, refused, alpha } = powerOf(design, test, { runs: 10, seed: 1 });
  expect([power.cases, power.n, alpha]).toEqual([4, 10, 0.05]);
  expect([...refused]).toEqual([["separation", 2]]);
  run = 0;
  expect(powerOf(design, test, { runs: 5, seed: 1, alpha: 0.5 }).power.cases).toBe(4);
});

test("comparing 100 with 100 feet that are alike but for hind: the power of the formula", () => {
  // Wald test of a difference of 0.5 against plogis(0.6) = 0.645656 with 100 feet each, R 4.2.2
  // power.prop.test(n = 100, p1 = .5, p2 = plogis(.6)): 0.549136.
  const found = powerOf(
    design,
    (rows) => fitLogistic({ rows, outcome: "thrush", terms: ["hind"], interval: "wald" }).coefficients[1]!.p!,
    { runs: 400, seed: "hind" },
  );
  // Four standard errors of 400 runs, and the formula itself is an approximation.
  expect(Math.abs(found.power.estimate - 0.549136)).toBeLessThan(0.1);
  const none = { ...design, truth: { ...truth, hind: 0 } };
  const size = powerOf(
    none,
    (rows) => fitLogistic({ rows, outcome: "thrush", terms: ["hind"], interval: "wald" }).coefficients[1]!.p!,
    {
      runs: 400,
      seed: "no hind",
    },
  );
  expect(Math.abs(size.power.estimate - 0.05)).toBeLessThan(0.044);
});

test("run r is the study of the seed and r; faults", () => {
  const seen: unknown[] = [];
  powerOf(design, (rows) => (seen.push(rows), 1), { runs: 2, seed: "s" });
  expect(seen).toEqual([simulateNestedStudy(design, "s 0"), simulateNestedStudy(design, "s 1")]);
  expect(faultCode(() => powerOf(design, () => 1, { runs: 0, seed: 1 }))).toBe("empty");
  expect(faultCode(() => powerOf(design, () => 1, { runs: -1, seed: 1 }))).toBe("not_a_count");
  expect(faultCode(() => powerOf(design, () => NaN, { runs: 1, seed: 1 }))).toBe("not_a_number");
  expect(faultCode(() => powerOf(design, () => 2, { runs: 1, seed: 1 }))).toBe("out_of_range");
  expect(faultCode(() => powerOf(design, () => 1, { runs: 1, seed: 1, alpha: 5 }))).toBe("out_of_range");
});
