import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitPoisson, type PoissonFit } from "../../src/estimate/fitPoisson.js";
import { expectNear, referenceFit, referenceRows } from "./reference.js";

const estimates = (fit: PoissonFit) => fit.coefficients.map(({ estimate }) => estimate);
const errors = (fit: PoissonFit) => fit.coefficients.map(({ se }) => se);
const limits = (fit: PoissonFit) => fit.coefficients.flatMap(({ lower, upper }) => [lower, upper]);

describe("against R glm on invented feet (tests/reference/regression)", () => {
  const feet = referenceRows("regression/feet.csv");

  const holds = (fit: PoissonFit, wanted: (quantity: string) => number[]) => {
    expectNear(estimates(fit), wanted("estimate"), 1e-7);
    expectNear(errors(fit), wanted("se"), 1e-7);
    expectNear(
      fit.coefficients.map(({ p }) => p),
      wanted("p"),
      1e-6,
    );
    expectNear(limits(fit), wanted("profile limits"), 1e-7);
    expectNear([fit.deviance], wanted("deviance"), 1e-9);
    expectNear([fit.nullDeviance], wanted("nullDeviance"), 1e-9);
    expectNear([fit.logLik], wanted("logLik"), 1e-9);
    expectNear([fit.aic], wanted("aic"), 1e-9);
    expectNear([fit.dispersion], wanted("dispersion"), 1e-7);
  };

  test("events per horse-day", () => {
    const wanted = referenceFit("poisson");
    const options = { rows: feet, outcome: "lost", terms: ["shod", "wet", "hind"], time: "horseDays" };
    const fit = fitPoisson(options);
    holds(fit, wanted);
    const sum = (column: string) => feet.reduce((total, row) => total + Number(row[column]), 0);
    expect([fit.events, fit.time]).toEqual([sum("lost"), sum("horseDays")]);
    expectNear(limits(fitPoisson({ ...options, interval: "wald" })), wanted("wald limits"), 1e-7);
    const { estimate, lower, upper, rateRatio } = fit.coefficients[1]!;
    expect(rateRatio).toEqual({ estimate: Math.exp(estimate), lower: Math.exp(lower), upper: Math.exp(upper) });
    const logged = feet.map((row) => ({ ...row, logDays: Math.log(Number(row["horseDays"])) }));
    const offset = fitPoisson({ rows: logged, outcome: "lost", terms: ["shod", "wet", "hind"], offset: "logDays" });
    expectNear(estimates(offset), estimates(fit), 1e-12);
    const byYard = fitPoisson({ ...options, cluster: "yard" });
    expectNear(errors(byYard), wanted("se by yard"), 1e-7);
    expectNear(limits(byYard), wanted("limits by yard"), 1e-7);
    expectNear(errors(fitPoisson({ ...options, cluster: ["yard", "horse"] })), wanted("se by horse"), 1e-7);
  });

  test("weights, an offset as it stands, a category, a product", () => {
    const wanted = referenceFit("poisson weighted");
    const terms = [{ column: "ground", reference: "clay" }, { product: ["shod", "wet"] }] as const;
    const options = { rows: feet, outcome: "lost", terms, offset: "known", weights: "times" };
    holds(fitPoisson(options), wanted);
    expectNear(errors(fitPoisson({ ...options, cluster: "yard" })), wanted("se by yard"), 1e-7);
  });
});

// R 4.2.2: confint of glm(y ~ x, poisson) (MASS 7.3 profiles) gives 0.1996978987 and 0.1999601247; uniroot on the rise of the deviance
// over that of glm, summed row by row, to 1e-15 the values here.
test("millions of events, whose deviance no longer tells small rises apart", () => {
  const rows = [8_120_000, 9_510_000, 12_040_000, 13_700_000, 16_900_000, 22_100_000].map((y, x) => ({ x, y }));
  const fit = fitPoisson({ rows, outcome: "y", terms: ["x"] });
  expectNear([fit.deviance, fit.coefficients[1]!.estimate], [90368.7250167302, 0.199829009666553], 1e-10);
  expectNear([fit.coefficients[1]!.lower, fit.coefficients[1]!.upper], [0.199697898703319, 0.199960124701579], 1e-9);
});

test("two groups: the rate ratio and its error in closed form", () => {
  const rows = [
    { shod: true, lost: 12, days: 3000 },
    { shod: false, lost: 5, days: 4100 },
  ];
  const fit = fitPoisson({ rows, outcome: "lost", terms: ["shod"], time: "days", interval: "wald" });
  expectNear([fit.coefficients[1]!.rateRatio.estimate], [12 / 3000 / (5 / 4100)], 1e-10);
  expectNear([errors(fit)[1]], [Math.sqrt(1 / 12 + 1 / 5)], 1e-10);
});

test("row order and the unit of time leave the rate ratio unchanged", () => {
  const row = fc.record({ x: fc.integer({ min: 0, max: 5 }), k: fc.nat(6), days: fc.integer({ min: 1, max: 90 }) });
  const ends = [0, 5].map((x) => ({ x, k: 2, days: 30 }));
  fc.assert(
    fc.property(fc.array(row, { minLength: 2, maxLength: 20 }), (some) => {
      const rows = [...ends, ...some];
      const fit = fitPoisson({ rows, outcome: "k", terms: ["x"], time: "days", interval: "wald" });
      const weeks = rows.map((r) => ({ ...r, days: r.days / 7 })).reverse();
      const again = fitPoisson({ rows: weeks, outcome: "k", terms: ["x"], time: "days", interval: "wald" });
      expect(Math.abs(estimates(fit)[1]! - estimates(again)[1]!)).toBeLessThan(1e-8);
      expect(Math.abs(estimates(fit)[0]! + Math.log(7) - estimates(again)[0]!)).toBeLessThan(1e-8);
      expect(Math.abs(errors(fit)[1]! - errors(again)[1]!)).toBeLessThan(1e-8);
    }),
  );
});

describe("what cannot be fitted is refused in words", () => {
  const rows = [0, 1, 2, 3, 0, 1].map((k, i) => ({
    k,
    none: 0,
    half: k / 2,
    x: i,
    ground: i < 2 ? "peat" : "clay",
    days: 10 - 2 * i,
  }));
  const refused = (options: object, code: string, words: RegExp, data: readonly object[] = rows) => {
    expect(() => fitPoisson({ rows: data, outcome: "k", terms: ["x"], ...options })).toThrow(
      expect.objectContaining({ name: "EstimateError", code, message: expect.stringMatching(words) as string }) as Error,
    );
  };

  test("no event at all", () => {
    refused({ outcome: "none" }, "no_variation", /"none" is 0/);
  });
  test("half an event", () => {
    refused({ outcome: "half" }, "not_a_count", /"half" is 0.5 in row 2/);
  });
  test("a category without an event", () => {
    const quiet = rows.map((row) => (row.ground === "peat" ? { ...row, k: 0 } : row));
    refused({ terms: [{ column: "ground", reference: "clay" }] }, "separation", /ground: peat.*In all 2 rows .* k is 0/, quiet);
  });
  test("one cluster", () => {
    refused({ cluster: "none" }, "too_few", /one cluster of none/);
  });
  test("time without end, and no time", () => {
    refused({ time: "x" }, "not_a_number", /"x" holds Infinity/, [...rows, { ...rows[0], x: Infinity }]);
    expect(fitPoisson({ rows, outcome: "k", terms: ["x"], time: "days" }).dropped).toEqual([
      { column: "days", reason: "days is 0", count: 1 },
    ]);
  });
});
