import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitLinear } from "../../src/estimate/fitLinear.js";
import { fitMixedLinear, type MixedLinearFit, type MixedLinearOptions } from "../../src/estimate/fitMixedLinear.js";
import { feet } from "./faultRows.js";
import { expectNear, referenceFit, referenceNamed, referenceRows } from "./reference.js";

const estimates = (fit: MixedLinearFit) => fit.coefficients.map(({ estimate }) => estimate);
const errors = (fit: MixedLinearFit) => fit.coefficients.map(({ se }) => se);
const variances = (fit: MixedLinearFit) => [...fit.groups.map(({ sd }) => sd * sd), fit.residualSd ** 2];

describe("sleep deprivation (lme4::sleepstudy) by lme4 1.1-31; REML criterion as in Bates et al. (2015) J Stat Softw 67(1)", () => {
  const options = { rows: referenceRows("sleepstudy.csv"), outcome: "Reaction", terms: ["Days"], groups: ["Subject"] } as const;

  test("intercept and slope, correlated", () => {
    const fit = fitMixedLinear({ ...options, slope: { column: "Days" } });
    expectNear([fit.criterion], [1743.6282722424], 1e-9);
    expectNear([...variances(fit), fit.slope!.sd ** 2], [612.08974827, 654.94104068, 35.07166234], 1e-5);
    const { estimate } = fit.correlation!;
    expectNear([estimate, estimate * fit.slope!.sd * fit.groups[0]!.sd], [0.0655513, 9.60433547], 1e-5);
    expectNear(estimates(fit), [251.405105, 10.467286], 1e-7);
    expectNear(errors(fit), [6.82455578, 1.54578893], 1e-6);
    // 18 subjects, one coefficient judged by their intercepts and one by their slopes.
    expect(fit.coefficients.map(({ df }) => df)).toEqual([17, 17]);
    const modes = [fit.conditionalModes[0]!, fit.slopeModes!].map((list) => list.slice(0, 3));
    expect(modes[0]!.map(({ group }) => group)).toEqual([[308], [309], [310]]);
    expectNear(
      modes[0]!.map(({ mode }) => mode),
      [2.2585655, -40.3985769, -38.9602458],
      1e-5,
    );
    expectNear(
      modes[1]!.map(({ mode }) => mode),
      [9.1989719, -8.6197032, -5.4488799],
      1e-5,
    );

    const ml = fitMixedLinear({ ...options, slope: { column: "Days" }, method: "ml" });
    expectNear([ml.criterion], [1751.939344], 1e-9);
    expectNear(
      [...variances(ml), ml.slope!.sd ** 2, ml.correlation!.estimate],
      [565.515271, 654.9410376, 32.6821976, 0.08132],
      1e-5,
    );
    expectNear([ml.correlation!.estimate * ml.slope!.sd * ml.groups[0]!.sd], [11.0554145], 1e-5);
    expectNear(errors(ml), [6.63227642, 1.50223679], 1e-6);
    // nlme 3.1 stops earlier and prints four decimals.
    expectNear([fit.groups[0]!.sd ** 2, fit.slope!.sd ** 2], [612.0795, 35.0713], 2e-5);
  });

  test("intercept alone", () => {
    const fit = fitMixedLinear(options);
    expectNear([fit.criterion], [1786.465085], 1e-9);
    expectNear(variances(fit), [1378.178541, 960.456577], 1e-5);
    expectNear(errors(fit), [9.746716344, 0.804221428], 1e-6);
    expectNear(
      fit.conditionalModes[0]!.slice(0, 3).map(({ mode }) => mode),
      [40.78371, -77.849554, -63.108568],
      1e-6,
    );
    const ml = fitMixedLinear({ ...options, method: "ml" });
    expectNear([ml.criterion], [1794.078643], 1e-9);
    expectNear(variances(ml), [1296.870048, 954.527834], 1e-5);
    expectNear(errors(ml), [9.506185201, 0.801735422], 1e-6);
  });

  test("intercept and slope, uncorrelated", () => {
    const slope = { column: "Days", correlated: false } as const;
    const fit = fitMixedLinear({ ...options, slope });
    expectNear([fit.criterion], [1743.669294], 1e-9);
    expectNear([...variances(fit), fit.slope!.sd ** 2], [627.5691169, 653.5838049, 35.8582018], 1e-5);
    expectNear(errors(fit), [6.88538151, 1.559566], 1e-6);
    expect(fit.correlation).toBeNull();
    const ml = fitMixedLinear({ ...options, slope, method: "ml" });
    expectNear([ml.criterion], [1752.003255], 1e-9);
    expectNear([...variances(ml), ml.slope!.sd ** 2], [584.2501262, 653.1160141, 33.6331395], 1e-5);
  });

  test("a slope measured from another day is judged alike", () => {
    const fit = fitMixedLinear({ ...options, terms: [{ column: "Days", centre: 4.5 }], slope: { column: "Days" } });
    expectNear([fit.criterion], [1743.6282722424], 1e-9);
    expect(fit.coefficients.map(({ df }) => df)).toEqual([17, 17]);
  });
});

test("pastes (lme4 1.1-31): casks within batches", () => {
  const options = { rows: referenceRows("pastes.csv"), outcome: "strength", terms: [] } as const;
  for (const groups of [
    ["batch", "sample"],
    ["batch", "cask"],
  ] as const) {
    const fit = fitMixedLinear({ ...options, groups });
    expect(fit.groups.map(({ name, count }) => [name, count])).toEqual([
      ["batch", 10],
      [groups[1], 30],
    ]);
    // The published criterion is 246.9907.
    expectNear([fit.criterion], [246.990746], 1e-8);
    expectNear(variances(fit), [1.65730913, 8.433666581, 0.677999985], 1e-5);
    expectNear([...estimates(fit), ...errors(fit)], [60.0533333, 0.6768701], 1e-7);
    const total = 1.65730913 + 8.433666581 + 0.677999985;
    expectNear(
      fit.groups.map(({ icc }) => icc),
      [1.65730913 / total, (1.65730913 + 8.433666581) / total],
      1e-5,
    );
  }
  const ml = fitMixedLinear({ ...options, groups: ["batch", "cask"], method: "ml" });
  expectNear([ml.criterion], [247.994466], 1e-8);
  expectNear(variances(ml), [1.199155799, 8.433666384, 0.678000006], 1e-5);
  expectNear(errors(ml), [0.642135338], 1e-6);
});

describe("dyestuff (lme4 1.1-31): 6 batches of 5", () => {
  test("balanced, so the estimates have a closed form", () => {
    const fit = fitMixedLinear({ rows: referenceRows("dyestuff.csv"), outcome: "Yield", terms: [], groups: ["Batch"] });
    const [between, within] = [11271.5, 2451.25];
    expectNear(variances(fit), [(between - within) / 5, within], 1e-8);
    expectNear([...estimates(fit), ...errors(fit)], [1527.5, Math.sqrt(between / 30)], 1e-8);
    expectNear([...variances(fit), ...errors(fit)], [1764.05, 2451.25, 19.3834119], 2e-8);
    expectNear([fit.criterion], [319.654276842342], 1e-9);
    // The F test of a balanced one-way layout has 5 degrees of freedom for the mean.
    expect(fit.coefficients[0]!.df).toBe(5);
    const ml = fitMixedLinear({
      rows: referenceRows("dyestuff.csv"),
      outcome: "Yield",
      terms: [],
      groups: ["Batch"],
      method: "ml",
    });
    expectNear([ml.criterion, ...variances(ml), ...errors(ml)], [327.32706, 1388.3334, 2451.24998, 17.6945537], 1e-5);
  });

  test("dyestuff2, where the variance between batches is put at exactly 0 and said so", () => {
    for (const [method, criterion, residual, se] of [
      ["reml", 161.828278, 13.8063096, 0.678388031],
      ["ml", 162.873037, 13.3460993, 0.66698574],
    ] as const) {
      const fit = fitMixedLinear({
        rows: referenceRows("dyestuff2.csv"),
        outcome: "Yield",
        terms: [],
        groups: ["Batch"],
        method,
      });
      expect(fit.groups[0]).toMatchObject({ sd: 0, boundary: true, lower: null, upper: null, icc: 0 });
      expect(fit.boundary).toBe(true);
      expect(fit.notes.join(" ")).toMatch(/no difference between groups of Batch.*put at 0/);
      expectNear([fit.criterion], [criterion], 1e-8);
      expectNear([fit.residualSd ** 2, ...estimates(fit), ...errors(fit)], [residual, 5.6656, se], 1e-6);
      expect(fit.conditionalModes[0]!.every(({ mode, sd }) => mode === 0 && sd === 0)).toBe(true);
    }
  });
});

describe("against lme4 1.1-31 on invented feet, unbalanced (tests/reference/regression)", () => {
  const rows = referenceRows("regression/feet.csv").map((row) => ({
    ...row,
    stable: `${String(row["yard"])} ${String(row["horse"])}`,
  }));

  const holds = (fit: MixedLinearFit, name: string) => {
    const wanted = referenceFit(name);
    expectNear([fit.criterion], wanted("criterion"), 1e-9);
    expectNear([fit.logLik], wanted("logLik"), 1e-9);
    expectNear([fit.aic], wanted("aic"), 1e-9);
    // lmer's optimisers stop with spreads some 1e-6 off, which a coefficient of near 0 shows: measured in standard errors.
    fit.coefficients.forEach(({ estimate, se }, j) => {
      expect(Math.abs(estimate - wanted("estimate")[j]!)).toBeLessThan(1e-5 * se);
    });
    expectNear(errors(fit), wanted("se"), 1e-5);
  };
  /** Modes and their spreads by the names R gives the groups. */
  const modesHold = (
    list: MixedLinearFit["slopeModes"],
    name: string,
    effect: string,
    label: (group: readonly unknown[]) => string,
  ) => {
    const [modes, spreads] = ["mode", "spread"].map((what) => new Map(referenceNamed(name, `${what} ${effect}`)));
    expect(list?.length).toBe(modes?.size);
    for (const { group, mode, sd } of list ?? []) {
      expect(Math.abs(mode - modes!.get(label(group))!)).toBeLessThan(2e-5);
      expect(Math.abs(sd - spreads!.get(label(group))!)).toBeLessThan(2e-5);
    }
  };

  test.each(["reml", "ml"] as const)("horses within yards, %s", (method) => {
    const terms = ["hind", "age", { column: "ground", reference: "clay" }] as const;
    const fit = fitMixedLinear({ rows, outcome: "toeAngleDeg", terms, groups: ["yard", "horse"], method });
    const name = `mixed nested ${method}`;
    holds(fit, name);
    const [horse, yard, residual] = referenceFit(name)("sd");
    expectNear([...fit.groups.map(({ sd }) => sd), fit.residualSd], [yard!, horse!, residual!], 1e-5);
    modesHold(fit.conditionalModes[0]!, name, "yard (Intercept)", ([yardName]) => String(yardName));
    modesHold(
      fit.conditionalModes[1]!,
      name,
      "horse:yard (Intercept)",
      ([yardName, horseName]) => `${String(horseName)}:${String(yardName)}`,
    );
    // 14 yards less intercept and two grounds; 58 horses less 14 yards and age; 172 feet less 58 horses and hind.
    expect(fit.coefficients.map(({ df }) => df)).toEqual([11, 113, 43, 11, 11]);
  });

  test.each(["reml", "ml"] as const)("a slope of wet ground by yard, correlated and apart, %s", (method) => {
    const options = { rows, outcome: "toeAngleDeg", terms: ["hind", "wet"], groups: ["yard"], method } as const;
    const fit = fitMixedLinear({ ...options, slope: { column: "wet" } });
    holds(fit, `mixed slope ${method}`);
    const spreads = [fit.groups[0]!.sd, fit.slope!.sd, fit.correlation!.estimate, fit.residualSd];
    expectNear(spreads, referenceFit(`mixed slope ${method}`)("sd"), 1e-5);
    modesHold(fit.conditionalModes[0]!, `mixed slope ${method}`, "yard (Intercept)", ([name]) => String(name));
    modesHold(fit.slopeModes, `mixed slope ${method}`, "yard wet", ([name]) => String(name));

    const apart = fitMixedLinear({ ...options, slope: { column: "wet", correlated: false } });
    holds(apart, `mixed slope apart ${method}`);
    expectNear([apart.groups[0]!.sd, apart.slope!.sd, apart.residualSd], referenceFit(`mixed slope apart ${method}`)("sd"), 1e-5);
    modesHold(apart.conditionalModes[0]!, `mixed slope apart ${method}`, "yard (Intercept)", ([name]) => String(name));
    modesHold(apart.slopeModes, `mixed slope apart ${method}`, "yard wet", ([name]) => String(name));
  });

  test.each(["reml", "ml"] as const)("a correlation at its bound is said to be there, %s", (method) => {
    const options = { rows, outcome: "toeAngleDeg", terms: ["hind", "wet"], groups: ["yard"], method } as const;
    const fit = fitMixedLinear({ ...options, slope: { column: "hind" } });
    holds(fit, `mixed slope bound ${method}`);
    const spreads = [fit.groups[0]!.sd, fit.slope!.sd, fit.correlation!.estimate, fit.residualSd];
    expectNear(spreads, referenceFit(`mixed slope bound ${method}`)("sd"), 1e-5);
    expect(fit.correlation).toEqual({ estimate: 1, lower: null, upper: null });
    expect(fit.boundary).toBe(true);
    expect(fit.notes.join(" ")).toMatch(/correlation of 1 between intercepts and slopes/);
  });

  test.each(["reml", "ml"] as const)("a slope that does not differ between yards is put at 0, %s", (method) => {
    const slope = { column: "hind", correlated: false } as const;
    const fit = fitMixedLinear({ rows, outcome: "toeAngleDeg", terms: ["hind", "wet"], groups: ["yard"], slope, method });
    holds(fit, `mixed slope none ${method}`);
    expect(fit.slope).toMatchObject({ sd: 0, boundary: true });
    expectNear([fit.groups[0]!.sd], [referenceFit(`mixed slope none ${method}`)("sd")[0]!], 1e-5);
    expect(fit.notes.join(" ")).toMatch(/no difference between slopes of hind/);
  });

  test("limits of SDs and correlation, by the curvature of the likelihood with the full covariance matrix", () => {
    const options = { rows, outcome: "toeAngleDeg", terms: ["hind", "wet"] } as const;
    const limits = (...spreads: readonly ({ lower: number | null; upper: number | null } | null)[]) =>
      spreads.flatMap((spread) => [spread?.lower, spread?.upper]);
    for (const method of ["reml", "ml"] as const) {
      const { groups } = fitMixedLinear({ ...options, groups: ["yard", "horse"], method });
      expectNear(limits(groups[1]!, groups[0]!), referenceFit(`bounds nested ${method}`)("limits").slice(0, 4), 2e-5);
    }
    // optim stops with the SDs 1e-5 off, which the curvature of so flat a likelihood feels.
    const sloped = fitMixedLinear({ ...options, groups: ["yard"], slope: { column: "wet" } });
    expectNear(
      limits(sloped.groups[0]!, sloped.slope, sloped.correlation),
      referenceFit("bounds slope")("limits").slice(0, 6),
      5e-4,
    );
  });
});

test("nearly all of the spread lies between groups, still in closed form", () => {
  // Balanced one-way layout, 8 yards of 4: residual mean square and (between - within) / 4.
  const noise = [3, -1, 4, -1, 5, -9, 2, -6, 5, -3, 5, -8, 9, -7, 9, -3, 2, -3, 8, -4, 6, -2, 6, -4, 3, -3, 8, -3, 2, -7, 9, -5];
  const rows = noise.map((small, i) => ({ yard: i % 8, y: 100 * Math.sin(i % 8) + 1e-3 * small }));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const yards = Array.from({ length: 8 }, (_, yard) => rows.filter((row) => row.yard === yard).map(({ y }) => y));
  const within =
    yards.flatMap((values) => values.map((y) => (y - mean(values)) ** 2)).reduce((sum, value) => sum + value, 0) / 24;
  const grand = mean(rows.map(({ y }) => y));
  const between = yards.reduce((sum, values) => sum + 4 * (mean(values) - grand) ** 2, 0) / 7;
  const fit = fitMixedLinear({ rows, outcome: "y", terms: [], groups: ["yard"] });
  expectNear(variances(fit), [(between - within) / 4, within], 1e-6);
});

describe("properties", () => {
  const row = fc.record({
    x: fc.integer({ min: 0, max: 9 }),
    y: fc.integer({ min: -20, max: 20 }),
    horse: fc.integer({ min: 1, max: 3 }),
    yard: fc.integer({ min: 1, max: 6 }),
  });
  const usable = (rows: readonly { x: number; y: number; horse: number; yard: number }[]) => {
    const [yards, horses] = [
      new Set(rows.map(({ yard }) => yard)).size,
      new Set(rows.map(({ yard, horse }) => `${yard} ${horse}`)).size,
    ];
    return yards > 2 && horses > yards + 2 && rows.length > horses + 3 && new Set(rows.map(({ x }) => x)).size > 2;
  };
  const data = fc.array(row, { minLength: 12, maxLength: 40 }).filter(usable);
  const near = (a: readonly number[], b: readonly number[], tolerance: number) => {
    a.forEach((value, i) => {
      expect(Math.abs(value - b[i]!)).toBeLessThanOrEqual(tolerance * (1 + Math.abs(value)));
    });
  };

  test("row order, names of groups and the unit of a term do not matter", () => {
    fc.assert(
      fc.property(data, fc.integer({ min: 2, max: 100 }), (rows, per) => {
        const options = { outcome: "y", terms: ["x"], groups: ["yard", "horse"] } satisfies Partial<MixedLinearOptions>;
        const fit = fitMixedLinear({ rows, ...options, groups: ["yard", "horse"] });
        const turned = rows.map((r) => ({ ...r, yard: `yard ${9 - r.yard}` })).reverse();
        const again = fitMixedLinear({ rows: turned, ...options, terms: [{ column: "x", per }], groups: ["yard", "horse"] });
        near([fit.criterion - 2 * Math.log(per)], [again.criterion], 1e-8);
        near([estimates(fit)[0]!, estimates(fit)[1]! * per, fit.residualSd], [...estimates(again), again.residualSd], 1e-5);
        near(
          fit.groups.map(({ sd }) => sd),
          again.groups.map(({ sd }) => sd),
          1e-3,
        );
      }),
      { numRuns: 50 },
    );
  });

  test("with all SDs at 0 it is least squares, and it never fits worse than that", () => {
    fc.assert(
      fc.property(data, (rows) => {
        const fit = fitMixedLinear({ rows, outcome: "y", terms: ["x"], groups: ["yard", "horse"], method: "ml" });
        const plain = fitLinear({ rows, outcome: "y", terms: ["x"] });
        expect(fit.logLik).toBeGreaterThanOrEqual(plain.logLik! - 1e-9);
        if (fit.groups.some(({ sd }) => sd > 0)) return;
        near(
          estimates(fit),
          plain.coefficients.map(({ estimate }) => estimate),
          1e-8,
        );
        near([fit.logLik], [plain.logLik!], 1e-10);
      }),
      { numRuns: 50 },
    );
  });
});

describe("what cannot be fitted is refused in words", () => {
  const rows = Array.from({ length: 24 }, (_, i) => ({
    x: i % 5,
    y: (i * i) % 7,
    yard: i % 4,
    horse: i % 8,
    one: "A",
    own: i,
    flat: 3,
    byYard: (i % 4) ** 2,
  }));
  const refused = (changes: Partial<MixedLinearOptions>, code: string, words: RegExp) => {
    expect(() => fitMixedLinear({ rows, outcome: "y", terms: ["x"], groups: ["yard"], ...changes })).toThrow(
      expect.objectContaining({ name: "EstimateError", code, message: expect.stringMatching(words) as string }) as Error,
    );
  };

  test("one group, one row in every group, one horse in every yard", () => {
    refused({ groups: ["one"] }, "too_few", /one group of one/);
    refused({ groups: ["own"] }, "too_few", /Every group of own holds one row/);
    refused({ groups: ["yard", "one"] }, "too_few", /Every group of yard holds one one/);
  });
  test("an outcome that never varies, or never within groups, or that the terms tell exactly", () => {
    refused({ outcome: "flat" }, "no_variation", /./);
    refused({ outcome: "byYard" }, "no_variation", /Within every group of yard/);
    refused({ outcome: "x" }, "no_variation", /tell the outcome "x" exactly/);
  });
  test("nothing left within groups but what the terms tell", () => {
    const exact = rows.map((row) => ({ ...row, y: row.x + 10 * row.byYard }));
    refused({ rows: exact }, "no_variation", /never differs within groups/);
  });
  test("a slope with two kinds of group, or that never varies within one", () => {
    refused({ groups: ["yard", "horse"], slope: { column: "x" } }, "out_of_range", /two kinds of group/);
    refused({ slope: { column: "byYard" } }, "no_variation", /"byYard" never varies within a group/);
  });
  test("a slope whose column is one wild value", () => {
    for (const [x, place] of [
      [1e6, 3],
      [1e8, 17],
    ] as const) {
      const wild = feet().map((row, i) => (i === place ? { ...row, wet: x } : row));
      const words = new RegExp(`Row ${place + 1} holds 10+ in column "wet", which dwarfs`);
      for (const correlated of [true, false]) {
        const slope = { column: "wet", correlated } as const;
        refused({ rows: wild, outcome: "angle", terms: ["wet"], slope }, "not_converged", words);
      }
    }
  });
  test("too few groups for what changes only between them", () => {
    const terms = [{ column: "yard", reference: 0 }] as const;
    refused({ terms }, "too_few", /nothing is left to judge/);
  });
});
