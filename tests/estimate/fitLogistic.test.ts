import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLogistic, type LogisticFit } from "../../src/estimate/fitLogistic.js";
import { expectNear, referenceFit, referenceRows } from "./reference.js";

const estimates = (fit: LogisticFit) => fit.coefficients.map(({ estimate }) => estimate);
const errors = (fit: LogisticFit) => fit.coefficients.map(({ se }) => se);
const limits = (fit: LogisticFit) => fit.coefficients.flatMap(({ lower, upper }) => [lower, upper]);

describe("birth weights (MASS::birthwt, Hosmer & Lemeshow 1989) by R 4.2.2 glm", () => {
  const rows = referenceRows("birthwt.csv").map((row) => ({
    ...row,
    low: row["low"] === 1,
    ptd: Number(row["ptl"]) > 0,
    visits: Number(row["ftv"]) > 1 ? "2+" : String(row["ftv"]),
  }));
  const race = { column: "race", reference: 1 } as const;

  test("one term, from rows and from a two by two table, Wald and profile limits", () => {
    const table = [
      { smoke: 1, low: 30, all: 74 },
      { smoke: 0, low: 29, all: 115 },
    ];
    const profile = fitLogistic({ rows, outcome: "low", terms: ["smoke"] });
    const wald = fitLogistic({ rows: table, outcome: { cases: "low", n: "all" }, terms: ["smoke"], interval: "wald" });
    for (const fit of [profile, wald]) {
      expectNear(estimates(fit), [-1.087051466264, 0.704059214008], 1e-9);
      // Closed form for a two by two table: roots of sums of 1 / count.
      expectNear(errors(fit), [Math.sqrt(1 / 29 + 1 / 86), Math.sqrt(1 / 29 + 1 / 86 + 1 / 30 + 1 / 44)], 1e-9);
      expectNear(errors(fit), [0.214733756266, 0.319642287145], 1e-6);
      expect([fit.n, fit.cases]).toEqual([189, 59]);
    }
    const odds = [wald, profile].map((fit) => fit.coefficients[1]!.oddsRatio);
    expectNear([odds[0]!.estimate, odds[0]!.lower, odds[0]!.upper], [2.02194357366, 1.08065986781, 3.78311061312], 1e-6);
    // R's confint interpolates between profiled points, so it holds to fewer digits than solving for the limit does.
    expectNear([odds[1]!.lower, odds[1]!.upper], [1.08187235, 3.80058171], 2e-5);
    expectNear(limits(profile), referenceFit("birthwt smoke")("profile limits"), 1e-8);
    expectNear([profile.deviance, profile.nullDeviance, profile.logLik], [229.804599538, 234.671996193, -114.902299769], 1e-9);
  });

  test("a number and a category", () => {
    const fit = fitLogistic({ rows, outcome: "low", terms: ["lwt", race], interval: "wald" });
    expect(fit.coefficients.map(({ name }) => name)).toEqual(["intercept", "lwt", "race: 2", "race: 3"]);
    expectNear(estimates(fit), [0.8057534704, -0.01522310237, 1.0810661901, 0.4806032597], 1e-7);
    expectNear(errors(fit), referenceFit("birthwt race")("se"), 1e-8);
    // As summary() prints them.
    expectNear(errors(fit), [0.8451666076, 0.00643935977, 0.4880521633, 0.3566737031], 1e-6);
    expectNear([fit.deviance], [223.259090511], 1e-9);
  });

  test("seven terms", () => {
    const fit = fitLogistic({ rows, outcome: "low", terms: ["age", "lwt", race, "smoke", "ptl", "ht", "ui"], interval: "wald" });
    const wanted = [0.46440328, -0.02706978, -0.01518256, 1.26321937, 0.86163511, 0.92334916, 0.54175512, 1.83369561, 0.7585965];
    expectNear(estimates(fit), wanted, 1e-6);
    expectNear(errors(fit), referenceFit("birthwt seven")("se"), 1e-8);
    const printed = [1.20468713, 0.0364521, 0.00692779, 0.52646273, 0.43919104, 0.40085261, 0.34626441, 0.69176458, 0.4593889];
    // summary() takes them one iteration before the last, which is 1.3e-5 off here.
    expectNear(errors(fit), printed, 2e-5);
    expectNear([fit.deviance, fit.aic], [201.426951204, 219.426951204], 1e-9);
    expect([fit.n, fit.df]).toEqual([189, 180]);
  });

  test("the recoded model of Venables & Ripley (2002) section 7.2", () => {
    const visits = { column: "visits", reference: "0" } as const;
    const fit = fitLogistic({
      rows,
      outcome: "low",
      terms: ["age", "lwt", race, "smoke", "ptd", "ht", "ui", visits],
      interval: "wald",
    });
    const wanted = [
      0.82301896, -0.03723429, -0.01565301, 1.19241321, 0.74068488, 0.75552837, 1.34376338, 1.91316586, 0.68019548, -0.43637967,
      0.17900852,
    ];
    expectNear(estimates(fit), wanted, 1e-6);
    expectNear(errors(fit), referenceFit("birthwt recoded")("se"), 1e-8);
    // summary() takes it one iteration before the last.
    expectNear([fit.coefficients[0]!.se], [1.24471433], 4e-5);
    expectNear([fit.deviance, fit.aic], [195.475518278, 217.475518278], 1e-9);
  });
});

test("infert (R 4.2.2 datasets) by glm", () => {
  const fit = fitLogistic({
    rows: referenceRows("infert.csv"),
    outcome: "case",
    terms: ["spontaneous", "induced"],
    interval: "wald",
  });
  expectNear(estimates(fit), [-1.70786007136, 1.197205035293, 0.418129395048], 1e-9);
  expectNear(errors(fit), referenceFit("infert")("se"), 1e-8);
  expectNear(errors(fit), [0.267709465632, 0.211643273, 0.205627444696], 1e-6);
  expectNear([fit.deviance, fit.nullDeviance, fit.aic], [279.611978834, 316.171110816, 285.611978834], 1e-9);
});

test("cbpp (lme4 1.1-31), cases among animals, by glm", () => {
  const period = { column: "period", reference: 1 } as const;
  const outcome = { cases: "incidence", n: "size" };
  const fit = fitLogistic({ rows: referenceRows("cbpp.csv"), outcome, terms: [period], interval: "wald" });
  expectNear(estimates(fit), [-1.26902348937, -1.17076272514, -1.30140533386, -1.78227863534], 1e-9);
  expectNear(errors(fit), referenceFit("cbpp")("se"), 1e-8);
  expectNear(errors(fit), [0.144919762429, 0.291467787719, 0.312881171641, 0.413056442968], 1e-6);
  // family = quasibinomial: errors times the root of the dispersion.
  expectNear(
    errors(fit).map((se) => se * Math.sqrt(fit.dispersion!)),
    [0.214469157787, 0.431348008763, 0.463038030456, 0.611289074431],
    1e-6,
  );
  expectNear([fit.deviance, fit.logLik, fit.dispersion], [114.101691441, -99.0291994894, 2.19015134509], 1e-9);
  expect([fit.n, fit.rowsUsed]).toEqual([842, 56]);
});

test("nested feet (tests/reference/sim-nested-feet.csv) by R 4.2.2 glm", () => {
  const fit = fitLogistic({ rows: referenceRows("sim-nested-feet.csv"), outcome: "y", terms: ["wet", "hind"], interval: "wald" });
  expectNear(estimates(fit), [-1.600744081, 0.5487673615, 0.2262929798], 1e-8);
  expectNear(errors(fit), referenceFit("nested feet")("se"), 1e-8);
  expectNear(errors(fit), [0.2064477485, 0.1041575028, 0.168430318], 1e-6);
  expectNear([fit.logLik], [-406.9816239], 1e-9);
});

test("clustered by yard the errors are those of R survey 4.1-1 svyglm (Taylor, K/(K-1))", () => {
  const rows = referenceRows("sim-nested-feet.csv");
  const fit = fitLogistic({ rows, outcome: "y", terms: ["wet", "hind"], cluster: "yard" });
  // svyglm too takes its errors one iteration before the last.
  expectNear(errors(fit), [0.391536128, 0.2412442801, 0.1309003634], 1e-6);
});

describe("against R glm on invented feet (tests/reference/regression)", () => {
  const feet = referenceRows("regression/feet.csv");
  const ground = { column: "ground", reference: "clay" } as const;
  const terms = [{ column: "wet", per: 10 }, "hind", ground] as const;

  const holds = (fit: LogisticFit, wanted: (quantity: string) => number[]) => {
    expectNear(estimates(fit), wanted("estimate"), 1e-7);
    expectNear(errors(fit), wanted("se"), 1e-7);
    expectNear([fit.deviance], wanted("deviance"), 1e-9);
    expectNear([fit.nullDeviance], wanted("nullDeviance"), 1e-9);
    expectNear([fit.logLik], wanted("logLik"), 1e-9);
    expectNear([fit.aic], wanted("aic"), 1e-9);
    expectNear([fit.dispersion], wanted("dispersion"), 1e-7);
  };

  test("profile limits by default, Wald limits when asked for", () => {
    const wanted = referenceFit("logistic");
    const fit = fitLogistic({ rows: feet, outcome: "thrush", terms });
    holds(fit, wanted);
    expectNear(limits(fit), wanted("profile limits"), 1e-7);
    expectNear(
      fit.coefficients.map(({ p }) => p),
      wanted("p"),
      1e-7,
    );
    expectNear(limits(fitLogistic({ rows: feet, outcome: "thrush", terms, interval: "wald" })), wanted("wald limits"), 1e-7);
  });

  test("cluster-robust errors by yard, and by horses whose names repeat between yards", () => {
    const wanted = referenceFit("logistic");
    const byYard = fitLogistic({ rows: feet, outcome: "thrush", terms, cluster: "yard" });
    expectNear(errors(byYard), wanted("se by yard"), 1e-7);
    expectNear(limits(byYard), wanted("limits by yard"), 1e-7);
    const byHorse = fitLogistic({ rows: feet, outcome: "thrush", terms, cluster: ["yard", "horse"] });
    expectNear(errors(byHorse), wanted("se by horse"), 1e-7);
    expect(byHorse.clusters).toBe(58);
  });

  test("cases among feet examined, offset, weights", () => {
    const wanted = referenceFit("logistic counts");
    const options = {
      rows: feet,
      outcome: { cases: "casesFound", n: "feetExamined" },
      terms: ["wet", "hind"],
      offset: "known",
      weights: "times",
    };
    const fit = fitLogistic(options);
    holds(fit, wanted);
    expectNear(limits(fit), wanted("profile limits"), 1e-7);
    expect(fit.dropped).toEqual([{ column: "feetExamined", reason: "feetExamined is 0", count: 13 }]);
    expectNear(errors(fitLogistic({ ...options, cluster: "yard" })), wanted("se by yard"), 1e-7);
  });

  test("two harmonics of the season, a product of number and category", () => {
    const wanted = referenceFit("logistic season");
    // R gives wet:ground a column for each ground; the same space is wet and wet x ground here, so wet:peat is a sum.
    const season = { season: "visitDate", harmonics: 2 } as const;
    const fit = fitLogistic({ rows: feet, outcome: "thrush", terms: [season, ground, "wet", { product: ["wet", ground] }] });
    const b = estimates(fit);
    expectNear([...b.slice(0, 8), b[7]! + b[8]!, b[7]! + b[9]!], wanted("estimate"), 1e-6);
    expectNear([fit.deviance], wanted("deviance"), 1e-9);
  });
});

describe("properties", () => {
  const row = fc.record({
    x: fc.integer({ min: 0, max: 5 }),
    n: fc.integer({ min: 1, max: 5 }),
    g: fc.integer({ min: 1, max: 5 }),
    u: fc.nat(99),
  });
  // Both outcomes at the lowest and the highest x, so that nothing is separated.
  const ends = [0, 5].flatMap((x) => [1, 2].map((g) => ({ x, n: 4, cases: 2, g })));
  const data = fc
    .array(row, { minLength: 2, maxLength: 15 })
    .map((rows) => [...ends, ...rows.map(({ x, n, g, u }) => ({ x, n, cases: Math.round((n * u) / 99), g }))]);
  const near = (a: readonly number[], b: readonly number[]) => {
    a.forEach((value, i) => {
      expect(Math.abs(value - b[i]!)).toBeLessThanOrEqual(1e-7 * (1 + Math.abs(value)));
    });
  };
  const outcome = { cases: "cases", n: "n" };

  test("rows of cases among n and rows of single feet give the same fit", () => {
    fc.assert(
      fc.property(data, (rows) => {
        const single = rows.flatMap(({ x, n, cases, g }) => Array.from({ length: n }, (_, i) => ({ x, g, sick: i < cases })));
        const together = fitLogistic({ rows, outcome, terms: ["x"], interval: "wald" });
        const apart = fitLogistic({ rows: single, outcome: "sick", terms: ["x"], interval: "wald" });
        near(estimates(together), estimates(apart));
        near(errors(together), errors(apart));
        expect([together.n, together.cases]).toEqual([apart.n, apart.cases]);
        const clustered = [
          fitLogistic({ rows, outcome, terms: ["x"], cluster: "g" }),
          fitLogistic({ rows: single, outcome: "sick", terms: ["x"], cluster: "g" }),
        ];
        near(errors(clustered[0]!), errors(clustered[1]!));
      }),
    );
  });

  test("row order, names of clusters and the unit of a term do not matter", () => {
    fc.assert(
      fc.property(data, fc.integer({ min: 2, max: 500 }), (rows, per) => {
        const fit = fitLogistic({ rows, outcome, terms: ["x"], cluster: "g" });
        const turned = rows.map((r) => ({ ...r, g: `yard ${9 - r.g}` })).reverse();
        const again = fitLogistic({ rows: turned, outcome, terms: [{ column: "x", per }], cluster: "g" });
        near([estimates(fit)[0]!, estimates(fit)[1]! * per], estimates(again));
        near([errors(fit)[0]!, errors(fit)[1]! * per], errors(again));
      }),
    );
  });

  test("profile limits enclose the estimate", () => {
    fc.assert(
      fc.property(data, (rows) => {
        for (const { lower, estimate, upper } of fitLogistic({ rows, outcome, terms: ["x"] }).coefficients) {
          expect(lower).toBeLessThan(estimate);
          expect(upper).toBeGreaterThan(estimate);
        }
      }),
      { numRuns: 30 },
    );
  });
});

describe("separation is reported, never fitted", () => {
  const separated = (words: RegExp) =>
    expect.objectContaining({ code: "separation", message: expect.stringMatching(words) as string }) as unknown;

  test("complete, by one number", () => {
    const rows = [0, 0, 0, 1, 1, 1].map((x) => ({ x, y: x }));
    const fit = () => fitLogistic({ rows, outcome: "y", terms: ["x"] });
    expect(fit).toThrow(
      separated(/"x" tells the outcome "y".*In all 3 rows with x = 0, y is 0.*In all 3 rows with x = 1, y is 1/),
    );
  });

  test("quasi-complete, one category without a case among others with both", () => {
    const rows = ["clay", "clay", "clay", "sand", "sand", "sand", "peat", "peat"].map((ground, i) => ({
      ground,
      age: (i * 7) % 5,
      y: ground !== "peat" && i % 2 === 0,
    }));
    const terms = ["age", { column: "ground", reference: "clay" }] as const;
    expect(() => fitLogistic({ rows, outcome: "y", terms })).toThrow(
      separated(/^Term "ground: peat" tells.*In all 2 rows with ground: peat = 1, y is 0/),
    );
  });

  test("by two terms together", () => {
    const rows = [
      [0, 3],
      [1, 2],
      [2, 2],
      [4, 1],
      [1, 1],
      [3, 3],
      [2, 4],
      [5, 0],
    ].flatMap(([a, b]) => [
      { a: a! + 0.3, b: b!, y: 1 },
      { a: a! - 0.3, b: b!, y: 0 },
    ]);
    // cases lie where a + b exceeds a line only once the sum is fixed
    const lined = rows.map((r, i) => ({ ...r, b: 5 - r.a + (r.y === 1 ? 0.2 : -0.2) + 0.01 * (i % 3) }));
    expect(() => fitLogistic({ rows: lined, outcome: "y", terms: ["a", "b"] })).toThrow(separated(/"a", "b" together tell/));
  });

  test("exactly when the cases' and the other feet's values of one number do not overlap", () => {
    const point = fc.record({ x: fc.integer({ min: 0, max: 8 }), y: fc.boolean() });
    fc.assert(
      fc.property(fc.array(point, { minLength: 4, maxLength: 12 }), (rows) => {
        const [cases, others] = [true, false].map((y) => rows.filter((r) => r.y === y).map(({ x }) => x)) as [number[], number[]];
        fc.pre(cases.length > 0 && others.length > 0 && new Set(rows.map(({ x }) => x)).size > 1);
        const apart = Math.max(...cases) <= Math.min(...others) || Math.max(...others) <= Math.min(...cases);
        const fit = () => fitLogistic({ rows, outcome: "y", terms: ["x"], interval: "wald" });
        if (apart) expect(fit).toThrow(separated(/"x" tells/));
        else expect(Number.isFinite(estimates(fit())[1])).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("a near miss is fitted", () => {
    const rows = [0, 1, 2, 3, 4, 4.001, 5, 6, 7].map((x) => ({ x, y: x === 4 || (x > 4 && x !== 4.001) }));
    const fit = fitLogistic({ rows, outcome: "y", terms: ["x"], interval: "wald" });
    expect(fit.coefficients[1]!.estimate).toBeGreaterThan(1);
  });
});

describe("what cannot be fitted is refused in words", () => {
  const rows = [0, 1, 2, 3, 4, 5].map((x) => ({ x, y: x % 2, same: 1, one: "A", grade: x, some: 2 }));
  const refused = (options: object, code: string) => {
    expect(() => fitLogistic({ rows, outcome: "y", terms: ["x"], ...options })).toThrow(
      expect.objectContaining({ name: "EstimateError", code }) as Error,
    );
  };

  test("an outcome that never varies", () => {
    refused({ outcome: "same" }, "no_variation");
  });
  test("a grade as outcome", () => {
    refused({ outcome: "grade" }, "out_of_range");
  });
  test("more cases than feet", () => {
    refused({ outcome: { cases: "grade", n: "some" } }, "out_of_range");
  });
  test("one cluster", () => {
    refused({ cluster: "one" }, "too_few");
  });
  test("profile limits with clusters", () => {
    refused({ cluster: "x", interval: "profile" }, "out_of_range");
  });
});

test("the intercept alone is the log odds", () => {
  const rows = [1, 0, 0, 0].map((y) => ({ y }));
  expectNear(estimates(fitLogistic({ rows, outcome: "y", terms: [] })), [Math.log(1 / 3)], 1e-12);
});
