import { describe, expect, test } from "vitest";
import { fitLogistic } from "../../src/estimate/fitLogistic.js";
import { fitMixedLogistic, type MixedLogisticFit } from "../../src/estimate/fitMixedLogistic.js";
import { logChoose } from "../../src/estimate/numeric/logChoose.js";
import { seededRandom } from "../../src/estimate/numeric/seededRandom.js";
import { faultCode } from "./faultCode.js";
import { mixedReference } from "./mixedReference.js";
import { expectNear, referenceRows } from "./reference.js";

const feet = referenceRows("sim-nested-feet.csv");
const herds = referenceRows("cbpp.csv");
const nested = { rows: feet, outcome: "y", terms: ["wet", "hind"], groups: ["yard", "horse"] } as const;
const cattle = {
  rows: herds,
  outcome: { cases: "incidence", n: "size" },
  terms: [{ column: "period", reference: 1 }],
  groups: ["herd"],
} as const;

const numbers = (fit: MixedLogisticFit, key: "estimate" | "se") => fit.coefficients.map((row) => row[key]);

/** Log probability of cases among n at their own share. */
function logBinomial(cases: number, n: number): number {
  const at = (count: number) => (count === 0 ? 0 : count * Math.log(count / n));
  return logChoose(n, cases) + at(cases) + at(n - cases);
}

/** Holds a fit to reference/mixed/references.csv; the tolerance is relative, that of the log-likelihood absolute. */
function expectFit(fit: MixedLogisticFit, reference: string, tolerance: number): void {
  const wanted = mixedReference(reference);
  const list = (quantity: string) => [...wanted(quantity).values()];
  expectNear(
    fit.coefficients.map(({ estimate }) => estimate),
    list("estimate"),
    tolerance,
  );
  expectNear(
    fit.coefficients.map(({ se }) => se),
    list("se"),
    tolerance,
  );
  for (const { name, sd, seLogSd } of fit.groups) {
    expectNear([sd, seLogSd], [wanted("sd").get(name)!, wanted("seLogSd").get(name)!], tolerance);
  }
  expect(Math.abs(fit.logLik - list("logLik")[0]!)).toBeLessThan(1e-8);
}

function expectModes(fit: MixedLogisticFit, reference: string): void {
  const wanted = mixedReference(reference);
  fit.groups.forEach(({ name }, g) => {
    const [modes, spreads] = [wanted(`modes of ${name}`), wanted(`spread of ${name}`)];
    expect(fit.conditionalModes[g]).toHaveLength(modes.size);
    for (const { group, mode, sd } of fit.conditionalModes[g]!) {
      // lme4's estimates are held to 1e-9 of its optimiser, not of the optimum: its modes differ by some 1e-5.
      expect(mode).toBeCloseTo(modes.get(group.at(-1) as string | number)!, 4);
      expect(sd).toBeCloseTo(spreads.get(group.at(-1) as string | number)!, 4);
    }
  });
}

describe("exact maximum likelihood against sums over a fixed fine grid (R, reference/mixed/references.R)", () => {
  // The grid's own optimum is known to about 2e-7 (numDeriv).
  test("feet in horses in yards", () => {
    expectFit(fitMixedLogistic(nested), "feet exact", 1e-6);
  });

  test("feet in horses", () => {
    expectFit(fitMixedLogistic({ ...nested, groups: ["horse"] }), "horse exact", 1e-6);
  });

  test("cattle in herds", () => {
    expectFit(fitMixedLogistic(cattle), "cbpp exact", 1e-6);
  });

  test("the whole covariance, SDs on the log scale", () => {
    const { parameters } = fitMixedLogistic(nested);
    expect(parameters.names).toEqual(["intercept", "wet", "hind", "log SD of yard", "log SD of horse"]);
    // Small covariances come from numDeriv with some 1e-8 of error of their own.
    const wanted = [...mixedReference("feet exact")("covariance").values()];
    parameters.covariance.flat().forEach((value, i) => {
      expect(Math.abs(value - wanted[i]!)).toBeLessThan(1e-6);
    });
  });

  test("lme4's quadrature of 25 points, one random intercept", () => {
    // lme4's optimiser stops some 4e-7 short.
    for (const [fit, reference] of [
      [fitMixedLogistic(cattle), "cbpp agq"],
      [fitMixedLogistic({ ...nested, groups: ["horse"] }), "horse agq"],
    ] as const) {
      const wanted = mixedReference(reference);
      expectNear(
        fit.coefficients.map(({ estimate }) => estimate),
        [...wanted("estimate").values()],
        1e-6,
      );
      expectNear([fit.groups[0]!.sd], [...wanted("sd").values()], 1e-6);
    }
  });

  test("as printed to seven digits by the same grid and by lme4's nine and 25 points", () => {
    const herd = fitMixedLogistic(cattle);
    expectNear(numbers(herd, "estimate"), [-1.3992304, -0.9914038, -1.1278196, -1.579471], 1e-6);
    expectNear(numbers(herd, "se"), [0.2335116, 0.306768, 0.3267684, 0.4275945], 1e-6);
    expectNear([herd.groups[0]!.sd, herd.groups[0]!.seLogSd], [0.6475184, 0.278795], 2e-6);
    expectNear([herd.logLik, herd.deviance], [-91.98336904, 183.96673807], 1e-9);
    // Nine points are some 5e-7 from the optimum, and lme4's curvature is by differences.
    expectNear(numbers(herd, "estimate"), [-1.399230189, -0.991403888, -1.127819737, -1.579471015], 2e-6);
    expectNear([...numbers(herd, "se"), herd.groups[0]!.sd], [0.233511358, 0.306767899, 0.326768261, 0.427594325, 0.647517704], 5e-6); // prettier-ignore
    // lme4 leaves out what does not depend on the parameters: the saturated model's log-likelihood.
    const saturated = herds.reduce((sum, { incidence, size }) => sum + logBinomial(Number(incidence), Number(size)), 0);
    expectNear([herd.logLik - saturated, herd.deviance + 2 * saturated], [-50.005018, 100.010030538022], 1e-7);
    const own = fitMixedLogistic({ ...nested, groups: ["horse"] });
    expectNear(numbers(own, "estimate"), [-2.096212, 0.714996, 0.29426], 2e-6);
    expectNear(
      [...numbers(own, "se"), own.groups[0]!.sd, own.logLik],
      [0.337808, 0.177719, 0.192621, 1.295081, -387.083204],
      1e-5,
    );
    const both = fitMixedLogistic(nested);
    expectNear(numbers(both, "estimate"), [-2.111226, 0.749982, 0.294113], 2e-6);
    expectNear(numbers(both, "se"), [0.489334, 0.276271, 0.192573], 2e-6);
    expectNear([...both.groups.map(({ sd }) => sd), both.logLik], [0.943211, 0.841569, -373.880012], 1e-6);
  });

  test("lme4's own test of nine points and more on cbpp (lme4 1.1-31, tests/glmer-1.R)", () => {
    const { coefficients } = fitMixedLogistic(cattle);
    // Its values are those of nine points and a looser optimiser.
    expect(Math.abs(coefficients[0]!.estimate + 1.39922533406847)).toBeLessThan(1e-5);
    expect(Math.abs(coefficients[1]!.estimate + 0.991407294757321)).toBeLessThan(1e-5);
  });
});

describe("joint Laplace approximation against glmmTMB settled by Newton's method; modes against lme4", () => {
  test.each([
    ["feet laplace", { ...nested, method: "laplace" }],
    ["horse laplace", { ...nested, groups: ["horse"], method: "laplace" }],
    ["cbpp laplace", { ...cattle, method: "laplace" }],
  ] as const)("%s", (reference, options) => {
    const fit = fitMixedLogistic(options);
    // glmmTMB's errors come from differences of gradients with steps of their own.
    expectFit(fit, reference, 1e-6);
    expectModes(fit, reference);
  });
});

describe("Laplace as printed to seven digits by glmmTMB 1.1.5 and by lme4 1.1-31 at tolPwrss = 1e-13", () => {
  test("cattle in herds; the herds' SD against none by likelihood ratio; latent-scale correlation", () => {
    const fit = fitMixedLogistic({ ...cattle, method: "laplace" });
    expectNear(numbers(fit, "estimate"), [-1.3985321, -0.9923329, -1.1286723, -1.5803141], 1e-6);
    // Their curvature is by differences, on grids of their own.
    expectNear(numbers(fit, "se"), [0.232472, 0.3066425, 0.3266379, 0.4274366], 1e-5);
    expectNear([fit.groups[0]!.sd, fit.groups[0]!.icc], [0.6422614, 0.111415099894], 1e-5);
    expectNear([fit.logLik, fit.deviance], [-92.02628186, 184.05256373], 1e-9);
    const plain = fitLogistic({ rows: herds, outcome: cattle.outcome, terms: cattle.terms, interval: "wald" });
    expect(Math.abs(2 * (fit.logLik - plain.logLik) - 14.0058352)).toBeLessThan(1e-6);
  });

  test("lme4 as it comes, printed in its manual to four decimals: its tolerance leaves 6e-4, and 1.3 % of the errors", () => {
    const fit = fitMixedLogistic({ ...cattle, method: "laplace" });
    [-1.3983, -0.9919, -1.1282, -1.5797].forEach((wanted, j) => {
      expect(Math.abs(fit.coefficients[j]!.estimate - wanted)).toBeLessThan(7e-4);
    });
    expectNear(numbers(fit, "se"), [0.231214, 0.303151, 0.32283, 0.422049], 0.014);
    expectNear([fit.groups[0]!.sd, fit.deviance, fit.aic], [0.6421, 184.0531, 194.0531], 3e-4);
    // BIC counts the 56 rows.
    expectNear([fit.deviance + fit.df * Math.log(fit.rowsUsed)], [204.1799], 1e-5);
    const wanted = [0.5896, -0.2991, 0.4059, 0.039, -0.1903, -0.4005, 0.8889, 0.5991, -0.2378, -0.5411, -0.085, -0.065, -0.6901, 0.9703, -0.5306]; // prettier-ignore
    fit.conditionalModes[0]!.forEach(({ mode }, herd) => {
      expect(Math.abs(mode - wanted[herd]!)).toBeLessThan(1e-3);
    });
  });

  test("feet in horses, in yards and alone", () => {
    const both = fitMixedLogistic({ ...nested, method: "laplace" });
    expectNear(numbers(both, "estimate"), [-2.0720928, 0.7369973, 0.2897872], 1e-5);
    // Their curvature is by differences; settled by Newton's method it agrees to 1e-6, above.
    expectNear(numbers(both, "se"), [0.4732268, 0.2668165, 0.1911463], 5e-5);
    expectNear(
      both.groups.map(({ sd }) => sd),
      [0.9150652, 0.7359704],
      1e-5,
    );
    expectNear([both.logLik], [-375.212089], 1e-8);
    // lme4 with its default tolerance stops lower.
    expect(both.logLik).toBeGreaterThan(-375.214564);
    const own = fitMixedLogistic({ ...nested, groups: ["horse"], method: "laplace" });
    expectNear(numbers(own, "estimate"), [-2.071082, 0.706954, 0.290763], 1e-5);
    expectNear(numbers(own, "se"), [0.326617, 0.170575, 0.191469], 1e-5);
    expectNear([own.groups[0]!.sd, own.logLik], [1.199977, -389.202495], 1e-5);
  });
});

describe("what comes with the estimates", () => {
  const fit = fitMixedLogistic(nested);

  test("limits by t with the degrees of freedom of R's nlme (lme(y ~ wet + hind, random = ~1 | yard/horse)$fixDF)", () => {
    expect(fit.coefficients.map(({ df }) => df)).toEqual([22, 22, 491]);
    const wet = fit.coefficients[1]!;
    // qt(.975, 22) = 2.0738730679
    expect((wet.upper - wet.estimate) / wet.se).toBeCloseTo(2.0738730679, 8);
    expect(wet.oddsRatio.lower).toBeCloseTo(Math.exp(wet.lower), 12);
  });

  test("latent-scale correlations and median odds ratio of cbpp (closed forms of the SD)", () => {
    const [herd] = fitMixedLogistic(cattle).groups;
    expect(herd!.icc).toBeCloseTo(0.113039454936, 6);
    expect(herd!.medianOddsRatio).toBeCloseTo(1.85456476486, 6);
  });

  test("correlation of two feet of a horse counts the yard too", () => {
    const [yard, horse] = fit.groups;
    const total = yard!.sd ** 2 + horse!.sd ** 2 + Math.PI ** 2 / 3;
    expect(yard!.icc).toBeCloseTo(yard!.sd ** 2 / total, 12);
    expect(horse!.icc).toBeCloseTo((yard!.sd ** 2 + horse!.sd ** 2) / total, 12);
  });

  test("counts, method and the likelihood's other names", () => {
    expect(fit).toMatchObject({ n: 656, rowsUsed: 656, cases: 226, df: 5, level: 0.95, dropped: [], notes: [] });
    expect(fit.groups.map(({ name, count }) => [name, count])).toEqual([
      ["yard", 24],
      ["horse", 164],
    ]);
    expect(fit.deviance).toBe(-2 * fit.logLik);
    expect(fit.aic).toBe(fit.deviance + 10);
    expect(fit.method).toContain("nested adaptive Gauss-Hermite quadrature, 15 x 21 points");
    expect(fit.convergence).toMatchObject({ converged: true, nodes: [15, 21], note: null });
    expect(Math.abs(fit.convergence.changeWithMoreNodes!)).toBeLessThan(1e-8);
  });

  test("nodes asked for are used, and a coarse rule says so", () => {
    const coarse = fitMixedLogistic({ ...cattle, nodes: [2] });
    expect(coarse.convergence).toMatchObject({ nodes: [2], converged: false });
    expect(coarse.notes.join()).toMatch(/Quadrature is coarse/);
    expect(fitMixedLogistic({ ...nested, nodes: [31, 41] }).logLik).toBeCloseTo(fit.logLik, 8);
  });

  test("Laplace says what it is", () => {
    const { notes, convergence, method } = fitMixedLogistic({ ...nested, method: "laplace" });
    expect(notes).toHaveLength(1);
    expect(notes[0]).toMatch(/too small .* here horse has 4\.0 on average/);
    expect(convergence).toMatchObject({ nodes: null, changeWithMoreNodes: null, converged: true });
    expect(method).toContain("joint Laplace approximation");
  });

  test("another start leads to the same summit", () => {
    const start = { coefficients: [0, 0, 1], sds: [2, 0.1] };
    expectNear(
      fitMixedLogistic({ ...nested, start }).coefficients.map(({ estimate }) => estimate),
      fit.coefficients.map(({ estimate }) => estimate),
      1e-7,
    );
  });
});

/** Feet whose log odds differ between yards, horses and with wet as told. */
function simulated(yards: number, horses: number, [yardSd, horseSd]: readonly [number, number], seed: string) {
  const random = seededRandom(seed);
  return Array.from({ length: yards }, (_, y) => {
    const [wet, yardEffect] = [random.normal(), random.normal(0, yardSd)];
    return Array.from({ length: horses }, (_, h) => {
      const logOdds = -0.5 + 0.5 * wet + yardEffect + random.normal(0, horseSd);
      return ["LF", "RF", "LH", "RH"].map((foot) => {
        return { yard: `y${y}`, horse: `h${h}`, foot, wet, thrush: random.bernoulli(1 / (1 + Math.exp(-logOdds))) };
      });
    });
  }).flat(2);
}

describe("SDs of 0", () => {
  // Two of four feet in every horse: horses and yards are more alike than chance would have them.
  const alike = Array.from({ length: 160 }, (_, i) => {
    return { yard: `y${i % 8}`, horse: `h${(i >> 2) % 40}`, wet: Math.sin(i), thrush: (i >> 1) % 2 === (i >> 3) % 2 };
  })
    .sort((a, b) => a.horse.localeCompare(b.horse))
    .map((row, i) => ({ ...row, yard: `y${(i >> 2) % 8}` }));
  const options = { rows: alike, outcome: "thrush", terms: ["wet"] } as const;

  test.each(["quadrature", "laplace"] as const)("both 0: the fit is the plain logistic one (%s)", (method) => {
    const mixed = fitMixedLogistic({ ...options, groups: ["yard", "horse"], method });
    const plain = fitLogistic(options);
    expect(mixed.groups.map(({ sd, boundary, lower, seLogSd }) => [sd, boundary, lower, seLogSd])).toEqual([
      [0, true, null, null],
      [0, true, null, null],
    ]);
    expect(mixed.notes.join()).toMatch(/SD is put at 0/);
    expect(mixed.logLik).toBeCloseTo(plain.logLik, 9);
    for (const key of ["estimate", "se"] as const) {
      // Errors: differences of gradients against the closed form.
      expectNear(
        mixed.coefficients.map((row) => row[key]),
        plain.coefficients.map((row) => row[key]),
        1e-6,
      );
    }
    expect(mixed.conditionalModes.flat().every(({ mode, sd }) => mode === 0 && sd === 0)).toBe(true);
  });

  test("yard SD 0: two levels come down to one", () => {
    const rows = simulated(8, 8, [0, 1.5], "yards alike 2").map((row) => ({ ...row, stable: `${row.yard} ${row.horse}` }));
    const two = fitMixedLogistic({ rows, outcome: "thrush", terms: ["wet"], groups: ["yard", "horse"], nodes: [15, 31] });
    const one = fitMixedLogistic({ rows, outcome: "thrush", terms: ["wet"], groups: ["stable"], nodes: [31] });
    expect(two.groups[0]!.boundary).toBe(true);
    expect(two.logLik).toBeCloseTo(one.logLik, 9);
    expect(two.groups[1]!.sd).toBeCloseTo(one.groups[0]!.sd, 7);
    expect(two.coefficients[1]!.se).toBeCloseTo(one.coefficients[1]!.se, 7);
  });
});

describe("faults", () => {
  const rows = simulated(6, 6, [0.7, 1], "faults");
  const options = { rows, outcome: "thrush", terms: ["wet"], groups: ["yard", "horse"] } as const;
  const withRows = (change: (row: (typeof rows)[number], i: number) => object) => () =>
    fitMixedLogistic({ ...options, rows: rows.map(change) });

  test("separation", () => {
    const fit = () =>
      fitMixedLogistic({ ...options, terms: ["deep"], rows: rows.map((row) => ({ ...row, deep: row.thrush ? 2 : 1 })) });
    expect(fit).toThrow(expect.objectContaining({ code: "separation" }));
    expect(fit).toThrow(/"deep" tells the outcome "thrush" without error/);
  });

  test("collinear terms, an outcome that never changes", () => {
    const twice = rows.map((row) => ({ ...row, wetter: 2 * row.wet + 1 }));
    expect(faultCode(() => fitMixedLogistic({ ...options, rows: twice, terms: ["wet", "wetter"] }))).toBe("collinear");
    expect(faultCode(withRows((row) => ({ ...row, thrush: false })))).toBe("no_variation");
  });

  test("one yard, one horse a yard, one foot a horse", () => {
    expect(faultCode(() => fitMixedLogistic({ ...options, terms: [], rows: rows.filter(({ yard }) => yard === "y1") }))).toBe(
      "too_few",
    );
    expect(faultCode(() => fitMixedLogistic({ ...options, rows: rows.filter(({ horse }) => horse === "h1") }))).toBe("too_few");
    expect(faultCode(() => fitMixedLogistic({ ...options, rows: rows.filter(({ foot }) => foot === "LF") }))).toBe("too_few");
  });

  test("hardly a horse with more than one foot seen: said", () => {
    const few = simulated(40, 12, [1, 0.8], "few feet").filter(
      ({ foot, horse, yard }) => foot === "LF" || (horse === "h1" && yard < "y14"),
    );
    const { notes } = fitMixedLogistic({ ...options, rows: few });
    expect(notes.join()).toMatch(/Only \d of 480 groups of horse have more than one observation/);
  });

  test("no degrees of freedom left for a term", () => {
    const two = rows.filter(({ yard }) => yard === "y0" || yard === "y1");
    expect(faultCode(() => fitMixedLogistic({ ...options, rows: two }))).toBe("too_few");
  });

  test("the outcome never differs within a horse", () => {
    const fit = withRows((row) => ({ ...row, thrush: row.horse < "h3" }));
    expect(faultCode(fit)).toBe("separation");
    expect(fit).toThrow(/no finite estimate/);
  });

  test("NaN, text, an outcome of 2, cases above n, a negative n", () => {
    expect(faultCode(withRows((row, i) => ({ ...row, wet: i === 3 ? NaN : row.wet })))).toBe("not_a_number");
    expect(faultCode(withRows((row, i) => ({ ...row, wet: i === 3 ? "wet" : row.wet })))).toBe("not_a_number");
    expect(faultCode(withRows((row, i) => ({ ...row, thrush: i === 3 ? 2 : row.thrush })))).toBe("out_of_range");
    const counts = (cases: number, n: number) => () =>
      fitMixedLogistic({ ...cattle, rows: herds.map((row, i) => (i === 0 ? { ...row, incidence: cases, size: n } : row)) });
    expect(counts(5, 4)).toThrow(expect.objectContaining({ code: "out_of_range" }));
    expect(faultCode(counts(0, -4))).toBe("out_of_range");
    expect(faultCode(counts(1.5, 4))).toBe("not_a_count");
  });

  test("null leaves a row out and n of 0 too, both counted", () => {
    const holed = herds.map((row, i) => ({
      ...row,
      period: i === 5 ? null : row["period"],
      herd: i === 9 ? null : row["herd"],
      ...(i === 20 ? { incidence: 0, size: 0 } : {}),
    }));
    const fit = fitMixedLogistic({ ...cattle, rows: holed });
    expect(fit.dropped).toEqual([
      { column: "period", reason: "period is not recorded", count: 1 },
      { column: "herd", reason: "herd is not recorded", count: 1 },
      { column: "size", reason: "size is 0", count: 1 },
    ]);
    const whole = fitMixedLogistic({ ...cattle, rows: herds.filter((_, i) => ![5, 9, 20].includes(i)) });
    expect(fit.logLik).toBeCloseTo(whole.logLik, 10);
    expect(fit.rowsUsed).toBe(53);
  });

  test("unknown columns, levels, nodes, starts", () => {
    // As they come from a notebook, which does not check types.
    const untyped = (change: object) => () => fitMixedLogistic({ ...options, ...change });
    expect(faultCode(untyped({ groups: [] }))).toBe("out_of_range");
    expect(faultCode(untyped({ groups: "yard" }))).toBe("out_of_range");
    expect(faultCode(untyped({ groups: ["district", "yard", "horse"] }))).toBe("out_of_range");
    expect(faultCode(untyped({ method: "Laplace" }))).toBe("out_of_range");
    expect(faultCode(() => fitMixedLogistic({ ...options, groups: ["yard", "hors"] }))).toBe("unknown_column");
    expect(faultCode(() => fitMixedLogistic({ ...options, level: 95 }))).toBe("out_of_range");
    expect(faultCode(() => fitMixedLogistic({ ...options, nodes: [9] }))).toBe("length_mismatch");
    expect(faultCode(() => fitMixedLogistic({ ...options, nodes: [9, 0] }))).toBe("out_of_range");
    expect(faultCode(() => fitMixedLogistic({ ...options, start: { coefficients: [0], sds: [1, 1] } }))).toBe("length_mismatch");
    expect(faultCode(() => fitMixedLogistic({ ...options, start: { coefficients: [0, 0], sds: [1, 0] } }))).toBe("out_of_range");
  });
});

test("a hundred thousand rows", { timeout: 120_000 }, () => {
  const rows = simulated(250, 100, [0.7, 1], "many");
  const { n, coefficients, groups } = fitMixedLogistic({ rows, outcome: "thrush", terms: ["wet"], groups: ["yard", "horse"] });
  expect(n).toBe(100_000);
  // Within four standard errors of what was put in.
  expect(Math.abs(coefficients[1]!.estimate - 0.5)).toBeLessThan(4 * coefficients[1]!.se);
  expect(Math.abs(Math.log(groups[0]!.sd / 0.7))).toBeLessThan(4 * groups[0]!.seLogSd!);
  expect(Math.abs(Math.log(groups[1]!.sd))).toBeLessThan(4 * groups[1]!.seLogSd!);
});
