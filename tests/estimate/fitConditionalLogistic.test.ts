import { expect, test } from "vitest";
import { fitConditionalLogistic } from "../../src/estimate/fitConditionalLogistic.js";
import { mcnemar } from "../../src/estimate/mcnemar.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

const feet = referenceRows("regression/feet.csv");

// R 4.2.2, survival 3.5-3: clogit(case ~ spontaneous + induced + strata(stratum), infert, method = "exact"), the example of its help page.
test("83 matched sets of datasets::infert by survival::clogit", () => {
  const rows = referenceRows("climate/infert-matched.csv");
  const fit = fitConditionalLogistic({ rows, outcome: "case", terms: ["spontaneous", "induced"], strata: "stratum" });
  const wanted = (quantity: string) => climateReference("infert matched", quantity);
  // clogit stops at its own tolerance of 1e-9 in the log-likelihood, which leaves about 1e-6 in the coefficients.
  expectNear(
    fit.coefficients.map(({ estimate }) => estimate),
    wanted("estimate"),
    1e-5,
  );
  expectNear(
    fit.coefficients.map(({ se }) => se),
    wanted("se"),
    1e-5,
  );
  expectNear(
    fit.coefficients.flatMap(({ lower, upper }) => [lower, upper]),
    wanted("limits"),
    1e-5,
  );
  expectNear([fit.logLik], wanted("logLik"), 1e-9);
  expect([fit.n, fit.cases, fit.strata, fit.uninformative, fit.clusters]).toEqual([248, 83, 83, 0, null]);
});

test("several cases a stratum, errors by yard: clogit, and every choice of cases written out in R", () => {
  const given = { rows: feet, outcome: "thrush", terms: ["hind", "weight"], strata: ["yard", "horse"] };
  const wanted = (quantity: string) => climateReference("feet matched", quantity);
  const fit = fitConditionalLogistic(given);
  expectNear(
    fit.coefficients.map(({ estimate }) => estimate),
    wanted("estimate"),
    1e-8,
  );
  expectNear(
    fit.coefficients.map(({ se }) => se),
    wanted("se"),
    1e-8,
  );
  expectNear([fit.logLik], wanted("logLik"), 1e-10);
  const byYard = fitConditionalLogistic({ ...given, cluster: "yard" });
  expectNear(
    byYard.coefficients.map(({ se }) => se),
    wanted("se by yard"),
    1e-7,
  );
  expect([byYard.clusters, byYard.coefficients[0]!.df]).toEqual([wanted("clusters")[0]!, wanted("clusters")[0]! - 1]);
});

test("pairs with one term are the quotient of the discordant pairs", () => {
  const pairs = (count: number, dark: boolean) =>
    Array.from({ length: count }, (_, at) =>
      [true, false].map((first) => ({ pair: `${dark} ${at}`, dark: first === dark, thrush: first })),
    );
  const rows = [...pairs(12, true), ...pairs(5, false)].flat();
  const fit = fitConditionalLogistic({ rows, outcome: "thrush", terms: ["dark"], strata: "pair" });
  expectNear([fit.coefficients[0]!.oddsRatio.estimate], [mcnemar(12, 5).oddsRatio.estimate!], 1e-10);
  expectNear([fit.coefficients[0]!.se], [Math.sqrt(1 / 12 + 1 / 5)], 1e-9);
});

test("order of rows and a shift of a term change nothing", () => {
  const given = { outcome: "thrush", terms: ["hind", "weight"], strata: ["yard", "horse"] } as const;
  const shifted = [...feet].reverse().map((row) => ({ ...row, weight: Number(row["weight"]) + 100 }));
  const [one, other] = [fitConditionalLogistic({ ...given, rows: feet }), fitConditionalLogistic({ ...given, rows: shifted })];
  expectNear(
    other.coefficients.map(({ estimate }) => estimate),
    one.coefficients.map(({ estimate }) => estimate),
    1e-7,
  );
});

test("what cannot be compared is refused", () => {
  const ask = (rows: object[], terms = ["x"]) =>
    faultCode(() => fitConditionalLogistic({ rows, outcome: "y", terms, strata: "s" }));
  const row = (s: number, y: number, x: number) => ({ s, y, x });
  expect(ask([row(1, 1, 0), row(1, 1, 1), row(2, 0, 1), row(2, 0, 0)])).toBe("no_variation");
  expect(ask([row(1, 1, 0), row(1, 0, 0), row(2, 1, 1), row(2, 0, 1)])).toBe("no_variation");
  expect(ask([row(1, 1, 1), row(1, 0, 0), row(2, 1, 1), row(2, 0, 0)])).toBe("separation");
  expect(ask([row(1, 2, 1), row(1, 0, 0)])).toBe("out_of_range");
});

// R 4.2.2, survival 3.5-3: clogit(y ~ a + b + strata(s)) has coef -0.117462139744, se 0.262863803240 for a, and NA for b.
test("terms that differ between strata but repeat each other within them are refused", () => {
  const rows = [
    [1, 1, 3],
    [1, 0, 1],
    [2, 1, 4],
    [2, 0, 1],
    [2, 0, 5],
    [3, 0, 9],
    [3, 1, 2],
  ].map(([s, y, a]) => ({ s, y, a: a!, b: 2 * a! + 10 * s! ** 2 }));
  const given = { rows, outcome: "y", strata: "s" };
  const alone = fitConditionalLogistic({ ...given, terms: ["a"] }).coefficients[0]!;
  expectNear([alone.estimate, alone.se], [-0.117462139744, 0.26286380324], 1e-8);
  expect(faultCode(() => fitConditionalLogistic({ ...given, terms: ["a", "b"] }))).toBe("collinear");
  expect(() => fitConditionalLogistic({ ...given, terms: ["a", "b"] })).toThrow(
    'Columns "a", "b" repeat each other within strata: one follows from the others.',
  );
  const pair = [
    { s: 1, y: 1, a: 3, b: 2, c: 1 },
    { s: 1, y: 0, a: 1, b: 5, c: 1 },
    { s: 2, y: 0, a: 8, b: 1, c: 2 },
    { s: 3, y: 0, a: 2, b: 7, c: 5 },
  ];
  // One stratum of two rows cannot tell two terms apart.
  expect(faultCode(() => fitConditionalLogistic({ ...given, rows: pair, terms: ["a", "b"] }))).toBe("collinear");
});

test("rows with something missing are counted", () => {
  const rows = [...feet, { ...feet[0]!, weight: null }];
  const fit = fitConditionalLogistic({ rows, outcome: "thrush", terms: ["hind", "weight"], strata: ["yard", "horse"] });
  expect(fit.dropped).toEqual([{ column: "weight", reason: "weight is not recorded", count: 1 }]);
});
