import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitGee, type GeeFit, type GeeOptions } from "../../src/estimate/fitGee.js";
import { fitLogistic, type LogisticFit } from "../../src/estimate/fitLogistic.js";
import { expectNear, referenceFit, referenceRows } from "./reference.js";

const estimates = (fit: GeeFit) => fit.coefficients.map(({ estimate }) => estimate);
const errors = (fit: Pick<GeeFit | LogisticFit, "coefficients">) => fit.coefficients.map(({ se }) => se);
const modelErrors = (fit: GeeFit) => fit.coefficients.map(({ modelSe }) => modelSe);

describe("wheeze of 537 children at four ages (geepack::ohio, Fitzmaurice & Laird 1993) by R geepack 1.3.9 geeglm", () => {
  // geeglm stops at changes of 1e-4 and so leaves its estimates about 1e-7 off; hence 1e-6 throughout.
  const rows = referenceRows("ohio.csv").flatMap(({ pattern, smoke, children }) => {
    const wheeze = String(pattern).padStart(4, "0");
    return Array.from({ length: Number(children) }, (_, child) =>
      [-2, -1, 0, 1].map((age, k) => ({ id: `${wheeze}${String(smoke)}-${child}`, smoke, age, resp: wheeze[k] === "1" })),
    ).flat();
  });
  const options = { rows, outcome: "resp", terms: ["age", "smoke"], cluster: "id" } as const;

  test("exchangeable, dispersion held as with scale.fix = TRUE", () => {
    const fit = fitGee(options);
    expect([fit.n, fit.clusters, fit.clusterSizes]).toEqual([2148, 537, [4, 4]]);
    expectNear([fit.alpha], [0.354063681], 1e-6);
    expectNear(estimates(fit), [-1.8804288073, -0.113385026, 0.2650832734], 1e-6);
    expectNear(errors(fit), [0.1138930101, 0.0438553131, 0.177746544], 1e-6);
    expectNear(
      fit.covariance.map((row, j) => row[j]),
      [0.01297161776, 0.00192328849, 0.03159383389],
      1e-6,
    );
    const [intercept, age] = fit.covariance;
    expectNear([intercept?.[1], intercept?.[2], age?.[2]], [0.00133202091, -0.01196056054, 0.000124211003], 5e-6);
    expectNear(
      fit.coefficients.map(({ statistic }) => statistic! ** 2),
      [272.59610675, 6.68446995, 2.22414102],
      1e-6,
    );
    expectNear(
      fit.coefficients.slice(1).map(({ p }) => p),
      [0.00972564374, 0.13586820326],
      2e-6,
    );
  });

  test("exchangeable, dispersion estimated", () => {
    const fit = fitGee({ ...options, phi: "estimated" });
    expectNear([fit.alpha, fit.phi], [0.354304916, 0.998464606], 1e-6);
    expectNear(estimates(fit), [-1.880425301, -0.113384997, 0.265075783], 1e-6);
    expectNear(errors(fit), [0.1138927146, 0.0438552895, 0.1777465499], 1e-6);
  });

  test("exchangeable, mean pair product with dispersion 1 (independent code)", () => {
    const fit = fitGee({ ...options, phi: 1 });
    expectNear([fit.alpha], [0.353761418], 1e-6);
    expectNear(estimates(fit), [-1.880433094, -0.113385062, 0.265092445], 1e-6);
    expectNear(errors(fit), [0.113893372, 0.043855342, 0.17774654], 1e-6);
  });

  test("pairs and feet less the coefficients: Python statsmodels 0.13.5 GEE, and with dispersion 1 by independent code", () => {
    const free = fitGee({ ...options, divisor: "less-coefficients", phi: "estimated" });
    expectNear([free.alpha, free.phi], [0.354139797, 0.999861542], 1e-7);
    expectNear(estimates(free), [-1.88042766, -0.113385017, 0.265080818], 1e-7);
    expectNear(errors(free), [0.113892914, 0.043855305, 0.177746547], 1e-7);
    const held = fitGee({ ...options, divisor: "less-coefficients", phi: 1 });
    expectNear([held.alpha], [0.354090809], 1e-7);
    expectNear(estimates(held), [-1.880428364, -0.113385022, 0.265082324], 1e-7);
    expectNear(errors(held), [0.113892973, 0.04385531, 0.177746546], 1e-7);
    expectNear(modelErrors(held), [0.11484368, 0.043546068, 0.177006875], 1e-7);
  });

  test("a product of terms", () => {
    const fit = fitGee({ ...options, terms: ["age", "smoke", { product: ["age", "smoke"] }] });
    expectNear(estimates(fit), [-1.9004952912, -0.1412359152, 0.3138258297, 0.0708318426], 1e-6);
    expectNear(errors(fit), [0.1190869782, 0.0582008895, 0.1878418139, 0.0882788575], 1e-6);
    expectNear([fit.alpha], [0.354531011], 1e-6);
  });

  test("independence", () => {
    const fit = fitGee({ ...options, correlation: "independence" });
    expectNear(estimates(fit), [-1.883734729, -0.113412767, 0.272138565], 1e-6);
    expectNear(errors(fit), [0.1142402018, 0.0438776672, 0.1779818453], 1e-6);
    expect(fit.alpha).toBeNull();
  });

  test("the plain fit beside it, by glm: its errors are the model-based ones under independence with dispersion 1", () => {
    const plain = [0.083843025, 0.0540819935, 0.1234730601];
    // summary() takes them one iteration before the last, which is 1.5e-6 off.
    expectNear(modelErrors(fitGee({ ...options, correlation: "independence", phi: 1 })), plain, 2e-6);
    expectNear(errors(fitLogistic({ rows, outcome: "resp", terms: ["age", "smoke"], interval: "wald" })), plain, 2e-6);
  });

  test("children of one pattern counted in one row make another cluster, so do not count them so", () => {
    expect(fitGee({ ...options, cluster: ["smoke", "id"] }).clusters).toBe(537);
  });
});

describe("cbpp (lme4 1.1-31), cattle in herds, cases among n, by geeglm on single animals", () => {
  const rows = referenceRows("cbpp.csv");
  const terms = [{ column: "period", reference: 1 }] as const;
  const options = { rows, outcome: { cases: "incidence", n: "size" }, terms, cluster: "herd" } as const;

  test("dispersion held, estimated, and independence", () => {
    const fit = fitGee(options);
    // geeglm stops at changes of 1e-4, which with 15 herds leaves 1e-5; run to 1e-13 it agrees to 1e-8.
    expectNear(estimates(fit), [-1.282191246, -0.985931241, -1.10177762, -1.506405365], 2e-5);
    expectNear(errors(fit), [0.273653753, 0.393528058, 0.44229893, 0.298612437], 2e-5);
    expectNear([fit.alpha], [0.0263464122], 5e-5);
    const wanted = referenceFit("gee cbpp");
    expectNear(estimates(fit), wanted("estimate"), 1e-8);
    expectNear(errors(fit), wanted("se"), 1e-8);
    expectNear([fit.alpha], wanted("alpha"), 1e-8);
    const free = fitGee({ ...options, phi: "estimated" });
    expectNear(estimates(free), [-1.283499074, -0.973959104, -1.08893143, -1.489084139], 2e-5);
    expectNear(errors(free), [0.273558411, 0.39125501, 0.43930628, 0.295175953], 2e-5);
    expectNear([free.alpha, free.phi], [0.0298793156, 0.892671367], 5e-5);
    const apart = fitGee({ ...options, correlation: "independence" });
    expectNear(errors(apart), [0.275026065, 0.439569643, 0.495650089, 0.387960892], 1e-6);
  });
});

describe("nested feet (tests/reference/sim-nested-feet.csv) by geeglm", () => {
  const rows = referenceRows("sim-nested-feet.csv");
  const options = { rows, outcome: "y", terms: ["wet", "hind"] } as const;

  test("clusters of a horse, of a yard, and independence", () => {
    const horse = fitGee({ ...options, cluster: "horse" });
    expectNear(estimates(horse), [-1.5943738546, 0.5457405332, 0.226174316], 1e-6);
    expectNear(errors(horse), [0.2505267656, 0.1389950149, 0.143561085], 1e-6);
    expectNear([horse.alpha], [0.2281751737], 1e-6);
    const yard = fitGee({ ...options, cluster: "yard" });
    expectNear(estimates(yard), [-1.6295543544, 0.5870838823, 0.2259098137], 1e-6);
    expectNear(errors(yard), [0.3604506002, 0.2237650934, 0.126870069], 1e-6);
    expectNear([yard.alpha], [0.1471907553], 1e-6);
    const apart = fitGee({ ...options, cluster: "yard", correlation: "independence" });
    expectNear(estimates(apart), [-1.600744081, 0.5487673615, 0.2262929798], 1e-6);
    expectNear(errors(apart), [0.383292471, 0.2361649405, 0.1281442325], 1e-6);
  });
});

describe("against geeglm, run to 1e-13, on invented feet with clusters of unequal size (tests/reference/regression)", () => {
  const rows = referenceRows("regression/feet.csv");
  const terms = [{ column: "wet", per: 10 }, "hind", { column: "ground", reference: "clay" }] as const;
  const options = { rows, outcome: "thrush", terms, cluster: "yard" } as const;

  test.each<[string, Partial<GeeOptions>]>([
    ["gee yard", {}],
    ["gee yard estimated", { phi: "estimated" }],
    ["gee horse", { cluster: ["yard", "horse"] }],
    ["gee independence", { correlation: "independence" }],
    ["gee weighted", { weights: "times" }],
    ["gee weighted estimated", { weights: "times", phi: "estimated" }],
    ["gee counts", { outcome: { cases: "casesFound", n: "feetExamined" }, terms: ["wet", "hind"] }],
  ])("%s", (name, changes) => {
    const wanted = referenceFit(name);
    const fit = fitGee({ ...options, ...changes });
    expectNear(estimates(fit), wanted("estimate"), 1e-8);
    expectNear(errors(fit), wanted("se"), 1e-8);
    expectNear(modelErrors(fit), wanted("modelSe"), 1e-8);
    expectNear(fit.covariance.flat(), wanted("covariance"), 1e-6);
    expectNear([fit.phi], wanted("phi"), 1e-8);
    if (changes.correlation !== "independence") expectNear([fit.alpha], wanted("alpha"), 1e-8);
    // geepack takes p as one less the chi-square distribution, which is good to 1e-15 absolutely and no better.
    fit.coefficients.forEach(({ p }, j) => {
      expect(Math.abs(p! - wanted("p")[j]!)).toBeLessThan(1e-9);
    });
  });

  test("leverage taken out (Mancl & DeRouen 2001), by its formula with full matrices", () => {
    const fit = fitGee({ ...options, correction: "mancl-derouen" });
    expectNear(errors(fit), referenceFit("gee yard")("manclDeRouen se"), 1e-8);
    expect(fit.coefficients.map(({ df }) => df)).toEqual([9, 9, 9, 9, 9]);
    const apart = fitGee({ ...options, correlation: "independence", correction: "mancl-derouen" });
    expectNear(errors(apart), referenceFit("gee independence")("manclDeRouen se"), 1e-8);
  });

  test("the factor G/(G-p)", () => {
    const [plain, corrected] = [fitGee(options), fitGee({ ...options, correction: "clusters" })];
    expectNear(
      errors(corrected),
      errors(plain).map((se) => se * Math.sqrt(14 / 9)),
      1e-12,
    );
    expect(plain.notes.join()).toMatch(/14 clusters/);
    expect(corrected.notes).toEqual([]);
  });
});

describe("properties", () => {
  const row = fc.record({
    x: fc.integer({ min: 0, max: 5 }),
    n: fc.integer({ min: 1, max: 4 }),
    u: fc.nat(99),
    g: fc.integer({ min: 1, max: 6 }),
  });
  const ends = [0, 5].flatMap((x) => [1, 2, 3].map((g) => ({ x, n: 4, cases: 2, g })));
  const data = fc
    .array(row, { minLength: 2, maxLength: 12 })
    .map((rows) => [...ends, ...rows.map(({ x, n, g, u }) => ({ x, n, cases: Math.round((n * u) / 99), g }))]);
  const near = (a: readonly number[], b: readonly number[]) => {
    a.forEach((value, i) => {
      expect(Math.abs(value - b[i]!)).toBeLessThanOrEqual(1e-7 * (1 + Math.abs(value)));
    });
  };
  const options = { outcome: { cases: "cases", n: "n" }, terms: ["x"], cluster: "g" } as const;
  /** Null where the feet of the invented clusters agree more or less than any correlation allows. */
  const fitted = (given: GeeOptions): GeeFit | null => {
    try {
      return fitGee(given);
    } catch (fault) {
      expect(fault).toMatchObject({ code: "out_of_range" });
      return null;
    }
  };

  test("row order, names of clusters, the unit of a term, and counts against single feet do not matter", () => {
    fc.assert(
      fc.property(data, fc.integer({ min: 2, max: 500 }), (rows, per) => {
        const fit = fitted({ rows, ...options });
        const single = rows
          .flatMap(({ x, n, cases, g }) => Array.from({ length: n }, (_, i) => ({ x, g: `yard ${9 - g}`, sick: i < cases })))
          .reverse();
        const again = fitted({ rows: single, outcome: "sick", terms: [{ column: "x", per }], cluster: "g" });
        expect(fit === null).toBe(again === null);
        if (fit === null || again === null) return;
        near([estimates(fit)[0]!, estimates(fit)[1]! * per, fit.alpha ?? 0], [...estimates(again), again.alpha ?? 0]);
        near([errors(fit)[0]!, errors(fit)[1]! * per], errors(again));
        near([modelErrors(fit)[0]!, modelErrors(fit)[1]! * per], modelErrors(again));
      }),
    );
  });

  test("under independence it is the logistic regression with clusters, but for the factor G/(G-1)", () => {
    fc.assert(
      fc.property(data, (rows) => {
        const fit = fitGee({ rows, ...options, correlation: "independence" });
        const plain = fitLogistic({ rows, ...options });
        near(
          estimates(fit),
          plain.coefficients.map(({ estimate }) => estimate),
        );
        const G = fit.clusters;
        near(
          errors(fit).map((se) => se * Math.sqrt(G / (G - 1))),
          plain.coefficients.map(({ se }) => se),
        );
      }),
    );
  });
});

describe("what cannot be fitted is refused in words", () => {
  const rows = Array.from({ length: 24 }, (_, i) => ({
    x: i % 5,
    y: [0, 4, 5, 7, 10, 12, 13, 17, 19, 22].includes(i),
    yard: i % 6,
    one: "A",
    own: i,
    sick: i % 2 === 0,
    lone: i % 6 === 0,
  }));
  const options = { rows, outcome: "y", terms: ["x"], cluster: "yard" } as const;
  const refused = (changes: Partial<GeeOptions>, code: string, words: RegExp) => {
    expect(() => fitGee({ ...options, ...changes })).toThrow(
      expect.objectContaining({ name: "EstimateError", code, message: expect.stringMatching(words) as string }) as Error,
    );
  };

  test("one cluster", () => {
    refused({ cluster: "one" }, "too_few", /one cluster of one/);
  });
  test("no cluster column", () => {
    refused({ cluster: [] }, "empty", /No column of clusters/);
  });
  test("separation", () => {
    refused({ terms: ["x", "sick"], outcome: "sick" }, "separation", /"sick" tells the outcome/);
  });
  test("feet of a yard that always agree", () => {
    const same = rows.map((row) => ({ ...row, y: row.yard < 3 }));
    refused({ rows: same, terms: [] }, "out_of_range", /correlation within clusters comes out at 1\.000/);
  });
  test("a dispersion that is none", () => {
    refused({ phi: 0 }, "out_of_range", /dispersion phi is 0/);
  });
  test("a correction with too few clusters", () => {
    const season = { column: "x", reference: 0 } as const;
    refused({ terms: [season, "own"], correction: "clusters" }, "too_few", /6 clusters for 6 coefficients/);
  });
  test("a leverage that cannot be taken out", () => {
    refused({ terms: ["x", "lone"], correction: "mancl-derouen" }, "too_few", /One cluster alone decides/);
  });
  test("no pair of feet in any cluster is said", () => {
    const fit = fitGee({ ...options, cluster: "own" });
    expect(fit.alpha).toBeNull();
    expect(fit.notes.join()).toMatch(/No cluster has two feet/);
  });
});

test("weights of 0 and missing values leave rows out", () => {
  const rows = referenceRows("regression/feet.csv").map((row, i) => ({
    ...row,
    w: i % 10 === 0 ? 0 : 1,
    wet: i % 7 === 0 ? null : row["wet"],
  }));
  const kept = rows.filter(({ w, wet }) => w > 0 && wet !== null);
  const options = { outcome: "thrush", terms: ["wet", "hind"], cluster: "yard" };
  const fit = fitGee({ rows, ...options, weights: "w" });
  expect(fit.n).toBe(kept.length);
  expect(fit.dropped.map(({ column }) => column)).toEqual(["wet", "w"]);
  expectNear(estimates(fit), estimates(fitGee({ rows: kept, ...options })), 1e-12);
});

test("a hundred thousand rows: 600 copies of the yards leave the estimates and divide the errors by the root of 600", () => {
  const feet = referenceRows("regression/feet.csv").map(({ yard, horse, wet, hind, thrush }) => ({
    yard,
    horse,
    wet,
    hind,
    thrush,
  }));
  const rows = Array.from({ length: 600 }, (_, copy) =>
    feet.map((row) => ({ ...row, yard: `${copy} ${String(row.yard)}` })),
  ).flat();
  const options = { outcome: "thrush", terms: ["wet", "hind"], cluster: ["yard", "horse"] };
  const [one, many] = [fitGee({ rows: feet, ...options }), fitGee({ rows, ...options })];
  expect([many.n, many.clusters]).toEqual([600 * one.n, 600 * one.clusters]);
  expectNear(estimates(many), estimates(one), 1e-8);
  expectNear(
    errors(many),
    errors(one).map((se) => se / Math.sqrt(600)),
    1e-8,
  );
});
