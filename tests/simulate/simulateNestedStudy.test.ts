import { describe, expect, test } from "vitest";
import { simulateNestedStudy } from "../../src/simulate/simulateNestedStudy.js";
import { faultCode } from "../estimate/faultCode.js";

const truth = { intercept: -1, wet: 0.5, hind: 0.6, yardSd: 0.7, horseSd: 1 };
const design = { yards: 20, horsesPerYard: 7.5, visits: 4, wetBy: "yard", truth } as const;

describe("shape", () => {
  const rows = simulateNestedStudy(design, "shape");

  test("every horse of every yard, four feet on every visit", () => {
    expect(rows).toHaveLength(150 * 4 * 4);
    expect(new Set(rows.map(({ yard }) => yard)).size).toBe(20);
    expect(new Set(rows.map(({ yard, horse }) => `${yard} ${horse}`)).size).toBe(150);
    expect(new Set(rows.map((row) => JSON.stringify([row.yard, row.horse, row.visit, row.foot]))).size).toBe(rows.length);
    expect(rows.every(({ foot, hind }) => hind === ["LH", "RH"].includes(foot))).toBe(true);
  });

  test("wetness is the yard's, or each visit's to it", () => {
    const wetnesses = (wetBy: "yard" | "visit") => {
      const feet = simulateNestedStudy({ ...design, wetBy }, "shape");
      const byVisit = new Map(feet.map(({ yard, visit, wet }) => [`${yard} ${visit}`, wet]));
      expect(feet.every(({ yard, visit, wet }) => byVisit.get(`${yard} ${visit}`) === wet)).toBe(true);
      return new Set(feet.map(({ wet }) => wet)).size;
    };
    expect(wetnesses("yard")).toBe(20);
    expect(wetnesses("visit")).toBe(80);
  });

  test("the seed decides everything", () => {
    expect(simulateNestedStudy(design, "shape")).toEqual(rows);
    expect(simulateNestedStudy(design, "other")).not.toEqual(rows);
  });
});

test("without differences between groups the log odds are the planted ones", () => {
  const flat = { ...truth, yardSd: 0, horseSd: 0 };
  const rows = simulateNestedStudy({ yards: 400, horsesPerYard: 20, visits: 4, wetBy: "visit", truth: flat }, "flat");
  // Expected cases by the truth against those found, over fifths of wetness and fore or hind; four standard errors.
  for (const hind of [false, true]) {
    for (const [low, high] of [
      [-9, -0.84],
      [-0.84, 0],
      [0, 0.84],
      [0.84, 9],
    ] as const) {
      const here = rows.filter((row) => row.hind === hind && row.wet >= low && row.wet < high);
      const risks = here.map(({ wet }) => 1 / (1 + Math.exp(1 - 0.5 * wet - (hind ? 0.6 : 0))));
      const expected = risks.reduce((sum, risk) => sum + risk, 0);
      const spread = Math.sqrt(risks.reduce((sum, risk) => sum + risk * (1 - risk), 0));
      expect(here.length).toBeGreaterThan(5000);
      expect(Math.abs(here.filter(({ thrush }) => thrush).length - expected)).toBeLessThan(4 * spread);
    }
  }
});

test("horses and yards differ by the planted spread", () => {
  const still = { intercept: 0, wet: 0, hind: 0, yardSd: 0, horseSd: 1 };
  const logOdds = (yardSd: number, horseSd: number) => {
    const rows = simulateNestedStudy(
      { yards: 300, horsesPerYard: 1, visits: 200, wetBy: "yard", truth: { ...still, yardSd, horseSd } },
      "spread",
    );
    const cases = new Map<string, number>();
    for (const { yard, thrush } of rows) cases.set(yard, (cases.get(yard) ?? 0) + (thrush ? 1 : 0));
    return [...cases.values()].map((count) => Math.log((count + 0.5) / (800 - count + 0.5)));
  };
  const sd = (values: readonly number[]) => {
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  };
  // 300 groups: the SD of an SD is 4 %, and 800 feet leave some 0.08 of noise; four standard errors.
  expect(Math.abs(sd(logOdds(0, 1)) - 1)).toBeLessThan(0.17);
  expect(Math.abs(sd(logOdds(1, 0)) - 1)).toBeLessThan(0.17);
  expect(sd(logOdds(0, 0))).toBeLessThan(0.1);
});

test("faults", () => {
  expect(faultCode(() => simulateNestedStudy({ ...design, yards: 0 }, 1))).toBe("out_of_range");
  expect(faultCode(() => simulateNestedStudy({ ...design, visits: 1.5 }, 1))).toBe("out_of_range");
  expect(faultCode(() => simulateNestedStudy({ ...design, horsesPerYard: NaN }, 1))).toBe("out_of_range");
  expect(faultCode(() => simulateNestedStudy({ ...design, truth: { ...truth, yardSd: -1 } }, 1))).toBe("out_of_range");
});
