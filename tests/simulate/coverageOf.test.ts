import { describe, expect, test } from "vitest";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import { fitLogistic } from "../../src/estimate/fitLogistic.js";
import { fitMixedLogistic } from "../../src/estimate/fitMixedLogistic.js";
import { coverageOf } from "../../src/simulate/coverageOf.js";
import type { NestedDesign } from "../../src/simulate/NestedDesign.js";
import { simulateNestedStudy } from "../../src/simulate/simulateNestedStudy.js";
import { faultCode } from "../estimate/faultCode.js";

const truth = { intercept: -2, wet: 0.5, hind: 0.6, yardSd: 0.7, horseSd: 1 };
const design: NestedDesign = { yards: 20, horsesPerYard: 7.5, visits: 4, wetBy: "yard", truth };

describe("counting", () => {
  const small: NestedDesign = { ...design, yards: 2, horsesPerYard: 1, visits: 1 };

  test("holding, too high, too low, refused", () => {
    let run = 0;
    const seen = [
      [1, 0, 2],
      [3, 2, 4],
      [-2, -3, -1],
      [0, -1, 1],
    ] as const;
    const { made } = coverageOf(
      small,
      0.5,
      {
        made: () => {
          const [estimate, lower, upper] = seen[run++ % 5] ?? [0, 0, 0];
          if (run % 5 === 0) throw new EstimateError("separation", "Nothing to go by.", "See.");
          return { estimate, lower, upper };
        },
      },
      { runs: 10, seed: 1 },
    );
    expect(made).toMatchObject({ runs: 8, tooHigh: 2, tooLow: 2, meanEstimate: 0.5, meanWidth: 2 });
    expect(made.coverage).toMatchObject({ cases: 4, n: 8 });
    expect([...made.refused]).toEqual([["separation", 2]]);
    // Estimates 1, 3, -2, 0, twice: sum of squares about 0.5 is 26.
    expect(made.sdOfEstimates).toBeCloseTo(Math.sqrt(26 / 7), 12);
  });

  test("every method sees the studies of the seed, one after the other", () => {
    const seen: unknown[] = [];
    const done: number[] = [];
    coverageOf(
      small,
      0,
      { look: (rows) => (seen.push(rows), { estimate: 0, lower: 0, upper: 0 }) },
      { runs: 2, seed: "s", onRun: (run) => done.push(run) },
    );
    expect(seen).toEqual([simulateNestedStudy(small, "s 0"), simulateNestedStudy(small, "s 1")]);
    expect(done).toEqual([1, 2]);
  });

  test("none but refusals; a bug goes through; faults", () => {
    const refuse = () => {
      throw new EstimateError("too_few", "Nothing to go by.", "See.");
    };
    expect(coverageOf(small, 0, { refuse }, { runs: 3, seed: 1 }).refuse).toMatchObject({
      coverage: null,
      runs: 0,
      meanEstimate: null,
      sdOfEstimates: null,
    });
    const bug = () => {
      throw new TypeError("a bug");
    };
    expect(() => coverageOf(small, 0, { bug }, { runs: 1, seed: 1 })).toThrow("a bug");
    expect(faultCode(() => coverageOf(small, 0, { refuse }, { runs: 1.5, seed: 1 }))).toBe("not_a_count");
  });
});

// A short version of docs/coverage.md, which has 500 studies of twice the visits.
test(
  "in 40 studies the mixed model's interval holds the planted effect, the one that ignores horse and yard does not",
  { timeout: 120_000 },
  () => {
    const model = { outcome: "thrush", terms: ["wet", "hind"] } as const;
    const { mixed, plain } = coverageOf(
      { ...design, visits: 2 },
      truth.wet,
      {
        mixed: (rows) => fitMixedLogistic({ rows, ...model, groups: ["yard", "horse"], nodes: [9, 11] }).coefficients[1]!,
        plain: (rows) => fitLogistic({ rows, ...model, interval: "wald" }).coefficients[1]!,
      },
      { runs: 40, seed: "coverage in short" },
    );
    expect([mixed.runs, plain.runs]).toEqual([40, 40]);
    // Of 40 intervals that hold with probability 0.95, fewer than 33 hold once in 1,500 times, and of 40 that hold with 0.8 more than
    // 38 once in 700 (binomial): between the two an interval that ignores the clusters is told from one that does not.
    expect(mixed.coverage!.cases).toBeGreaterThanOrEqual(33);
    expect(plain.coverage!.cases).toBeLessThan(30);
    expect(Math.abs(mixed.meanEstimate! - truth.wet)).toBeLessThan((4 * mixed.sdOfEstimates!) / Math.sqrt(40));
  },
);
