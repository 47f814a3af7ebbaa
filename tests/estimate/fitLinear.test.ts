import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { fitLinear, type LinearFit } from "../../src/estimate/fitLinear.js";
import { expectNear, referenceFit, referenceRows } from "./reference.js";

const estimates = (fit: LinearFit) => fit.coefficients.map(({ estimate }) => estimate);
const errors = (fit: LinearFit) => fit.coefficients.map(({ se }) => se);
const limits = (fit: LinearFit) => fit.coefficients.flatMap(({ lower, upper }) => [lower, upper]);

/** A data set of the NIST Statistical Reference Datasets with its certified coefficients and their standard deviations. */
function nist(set: string): { rows: Record<string, number>[]; terms: string[]; certified: number[][] } {
  const lines = readFileSync(`${import.meta.dirname}/../reference/nist/${set}.dat`, "utf8").split(/\r?\n/);
  const certified = lines.flatMap((line) => {
    const match = /^\s+B\d\s+(\S+)\s+(\S+)/.exec(line);
    return match === null ? [] : [[Number(match[1]), Number(match[2])]];
  });
  const start = lines.map((line) => line.startsWith("Data:")).lastIndexOf(true);
  const numbers = lines
    .slice(start + 1)
    .filter((line) => line.trim() !== "")
    .map((line) => line.trim().split(/\s+/).map(Number));
  const powers = set.startsWith("Wampler");
  const rows = numbers.map(([y = NaN, ...x]) => ({
    y,
    ...Object.fromEntries((powers ? [1, 2, 3, 4, 5].map((k) => x[0]! ** k) : x).map((value, k) => [`x${k + 1}`, value])),
  }));
  return { rows, terms: Object.keys(rows[0]!).slice(1), certified };
}

const digits = (value: number, certified: number) =>
  -Math.log10(Math.abs(value - certified) / (certified === 0 ? 1 : Math.abs(certified)) + 1e-16);

describe("NIST Statistical Reference Datasets, linear regression (certified values in the .dat files)", () => {
  test.each([
    ["Norris", 9, [0.884796396144373, 0.999993745883712, 5436385.54079785]],
    ["Longley", 7, [304.854073561965, 0.995479004577296, 330.285339234588]],
    ["Wampler3", 7, [2360.14502379268, 0.99999555902582, 675524.458240122]],
    ["NoInt1", 9, [3.56753034006338, 0.999365492298663, 15750.25]],
  ])("%s to %i digits", (set, least, summary) => {
    const { rows, terms, certified } = nist(set);
    const fit = fitLinear({ rows, outcome: "y", terms, intercept: set !== "NoInt1" });
    expect(fit.coefficients.length).toBe(certified.length);
    fit.coefficients.forEach(({ estimate, se }, j) => {
      expect(digits(estimate, certified[j]![0]!)).toBeGreaterThanOrEqual(least);
      expect(digits(se, certified[j]![1]!)).toBeGreaterThanOrEqual(least);
    });
    expectNear([fit.residualSd, fit.rSquared, fit.f?.statistic], summary, 10 ** -least);
  });

  test.each(["Wampler1", "Wampler2"])("%s, an exact fit, to 7 digits", (set) => {
    const { rows, terms, certified } = nist(set);
    const fit = fitLinear({ rows, outcome: "y", terms });
    fit.coefficients.forEach(({ estimate, se }, j) => {
      expect(digits(estimate, certified[j]![0]!)).toBeGreaterThanOrEqual(7);
      expect(digits(se, 0)).toBeGreaterThanOrEqual(7);
    });
    expect(fit.logLik).toBeNull();
    expect(fit.notes.join()).toMatch(/tell the outcome exactly/);
  });
});

describe("against R lm on invented feet (tests/reference/regression)", () => {
  const feet = referenceRows("regression/feet.csv");
  const ground = { column: "ground", reference: "clay" } as const;

  test("categories, overall test, likelihood", () => {
    const wanted = referenceFit("linear");
    const fit = fitLinear({ rows: feet, outcome: "toeAngleDeg", terms: ["hind", "age", ground] });
    expect(fit.coefficients.map(({ name }) => name)).toEqual(["intercept", "hind", "age", "ground: peat", "ground: sand"]);
    expectNear(estimates(fit), wanted("estimate"), 1e-9);
    expectNear(errors(fit), wanted("se"), 1e-9);
    expectNear(limits(fit), wanted("limits"), 1e-9);
    expectNear(
      fit.coefficients.map(({ p }) => p),
      wanted("p"),
      1e-8,
    );
    expectNear([fit.residualSd], wanted("residualSd"), 1e-9);
    expectNear([fit.rSquared], wanted("rSquared"), 1e-9);
    expectNear([fit.f?.statistic, ...(fit.f?.df ?? [])], wanted("f"), 1e-9);
    expectNear([fit.logLik], wanted("logLik"), 1e-9);
    expectNear([fit.aic], wanted("aic"), 1e-9);
    expectNear([fit.deviance], wanted("deviance"), 1e-9);
  });

  test("cluster-robust errors by yard, and by horses whose names repeat between yards", () => {
    const wanted = referenceFit("linear");
    const options = { rows: feet, outcome: "toeAngleDeg", terms: ["hind", "age", ground] };
    const byYard = fitLinear({ ...options, cluster: "yard" });
    expectNear(errors(byYard), wanted("se by yard"), 1e-9);
    expectNear(limits(byYard), wanted("limits by yard"), 1e-9);
    expect(byYard.clusters).toBe(14);
    expect(byYard.notes.join()).toMatch(/14 clusters/);
    const byHorse = fitLinear({ ...options, cluster: ["yard", "horse"] });
    expectNear(errors(byHorse), wanted("se by horse"), 1e-9);
    expect(byHorse.clusters).toBe(58);
  });

  test("weights, products, season", () => {
    const wanted = referenceFit("linear weighted");
    // R puts the products last, each after its own kind: hind, wet, sine, cosine, hind x wet, wet x peat, wet x sand.
    const terms = ["hind", "wet", { season: "visitDate" }, { product: ["hind", "wet"] }, { product: ["wet", ground] }] as const;
    const fit = fitLinear({ rows: feet, outcome: "toeAngleDeg", terms, weights: "weight" });
    expectNear(estimates(fit), wanted("estimate"), 1e-9);
    expectNear(errors(fit), wanted("se"), 1e-9);
    expectNear([fit.logLik], wanted("logLik"), 1e-9);
    expectNear([fit.rSquared], wanted("rSquared"), 1e-9);
    expectNear([fit.residualSd], wanted("residualSd"), 1e-9);
    const clustered = fitLinear({ rows: feet, outcome: "toeAngleDeg", terms, weights: "weight", cluster: "yard" });
    expectNear(errors(clustered), wanted("se by yard"), 1e-9);
  });

  test("through the origin", () => {
    const wanted = referenceFit("linear origin");
    const fit = fitLinear({ rows: feet, outcome: "toeAngleDeg", terms: ["wet", "age"], intercept: false });
    expectNear(estimates(fit), wanted("estimate"), 1e-9);
    expectNear(errors(fit), wanted("se"), 1e-9);
    expectNear([fit.rSquared], wanted("rSquared"), 1e-9);
  });
});

describe("properties", () => {
  const row = fc.record({
    x: fc.integer({ min: -50, max: 50 }),
    y: fc.integer({ min: -99, max: 99 }),
    g: fc.integer({ min: 1, max: 6 }),
  });
  const data = fc
    .array(row, { minLength: 8, maxLength: 40 })
    .filter((rows) => (["x", "y", "g"] as const).every((column) => new Set(rows.map((r) => r[column])).size > 2));
  const near = (a: readonly number[], b: readonly number[]) => {
    a.forEach((value, i) => {
      expect(Math.abs(value - b[i]!)).toBeLessThanOrEqual(1e-8 * (1 + Math.abs(value)));
    });
  };

  test("row order and the names of clusters do not matter", () => {
    fc.assert(
      fc.property(data, (rows) => {
        const fit = fitLinear({ rows, outcome: "y", terms: ["x"], cluster: "g" });
        const turned = rows.map((r) => ({ ...r, g: `yard ${9 - r.g}` })).reverse();
        const again = fitLinear({ rows: turned, outcome: "y", terms: ["x"], cluster: "g" });
        near(estimates(fit), estimates(again));
        near(errors(fit), errors(again));
      }),
    );
  });

  test("a term measured in other units scales its coefficient alone", () => {
    fc.assert(
      fc.property(data, fc.integer({ min: 2, max: 1000 }), (rows, per) => {
        const fit = fitLinear({ rows, outcome: "y", terms: ["x"] });
        const scaled = fitLinear({ rows, outcome: "y", terms: [{ column: "x", per }] });
        near([estimates(fit)[0]!, estimates(fit)[1]! * per, errors(fit)[1]! * per], [...estimates(scaled), errors(scaled)[1]!]);
        near([fit.coefficients[1]!.p ?? -1], [scaled.coefficients[1]!.p ?? -1]);
      }),
    );
  });
});

describe("what cannot be fitted is refused in words", () => {
  const rows = [1, 2, 3, 4, 5].map((x) => ({ x, y: x * x, same: 7, one: "A" }));
  const fault = (code: string) => expect.objectContaining({ name: "EstimateError", code }) as unknown;

  test("an outcome that never varies", () => {
    expect(() => fitLinear({ rows, outcome: "same", terms: ["x"] })).toThrow(fault("no_variation"));
  });
  test("one cluster", () => {
    expect(() => fitLinear({ rows, outcome: "y", terms: ["x"], cluster: "one" })).toThrow(fault("too_few"));
  });
  test("no degrees of freedom left", () => {
    expect(() => fitLinear({ rows: rows.slice(0, 2), outcome: "y", terms: ["x"] })).toThrow(fault("too_few"));
  });
  test("a constant term beside the intercept", () => {
    expect(() => fitLinear({ rows, outcome: "y", terms: ["x", "same"] })).toThrow(fault("collinear"));
  });
  test("a level that is no probability", () => {
    expect(() => fitLinear({ rows, outcome: "y", terms: ["x"], level: 95 })).toThrow(fault("out_of_range"));
  });
});

test("rows without a value and weights of 0 are left out and counted", () => {
  const rows = [0, 1, 2, 3, 4, 5, 6].map((x) => ({ x: x === 2 ? null : x, y: x % 3, w: x === 5 ? 0 : 1 }));
  const fit = fitLinear({ rows, outcome: "y", terms: ["x"], weights: "w" });
  expect(fit.n).toBe(5);
  expect(fit.dropped.map(({ reason, count }) => `${reason}: ${count}`)).toEqual(["x is not recorded: 1", "w is 0: 1"]);
  const kept = fitLinear({ rows: rows.filter(({ x }) => x !== null && x !== 5), outcome: "y", terms: ["x"] });
  expect(estimates(fit)).toEqual(estimates(kept));
});
