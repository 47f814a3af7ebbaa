import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ClusterCount } from "../../src/estimate/ClusterCount.js";
import { clopperPearsonInterval } from "../../src/estimate/clopperPearsonInterval.js";
import { clusteredProportion } from "../../src/estimate/clusteredProportion.js";
import { tQuantile } from "../../src/estimate/numeric/tQuantile.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { grouped } from "../../src/study/grouped.js";
import { closedForm } from "./closedForm.js";
import { cattleHerds, clustersOf, litters, swabs, wheeze } from "./clusterData.js";
import { faultCode } from "./faultCode.js";
import { expectNear, referenceRows } from "./reference.js";

// R 4.2.2 and survey 4.1-1: svydesign(ids = ~herd, weights = ~1), svymean, svyciprop(method = "logit"), confint with df = K - 1. In order:
// K, n, cases, p, standard error, design effect, effective n, Wilson on it, logit-t limits, and Wald-t limits as a check of the error.
// prettier-ignore
const table = [
  ["cbpp, all periods", cattleHerds(false), [15, 842, 99, 0.11757719715, 0.0231482457969, 4.34858973726, 193.625991614, 0.0794786483686, 0.17055476975, 0.0762729201725, 0.176963989516, 0.0679291477159, 0.167225246583]],
  ["cbpp, period 1", cattleHerds(true), [15, 278, 61, 0.219424460432, 0.0487590733343, 3.85883052588, 72.0425523058, 0.139435219993, 0.327820722728, 0.132434909272, 0.341088397866, 0.114846649029, 0.324002271834]],
  ["bacteria", swabs(), [50, 220, 177, 0.804545454545, 0.0333926376999, 1.5600113984, 141.024610606, 0.731391931598, 0.86154752357, 0.728735059408, 0.863147865409, 0.737440436721, 0.87165047237]],
  ["ohio", wheeze(), [537, 2148, 326, 0.151769087523, 0.0111261104538, 2.065492358, 1039.94575031, 0.131246376751, 0.174854992591, 0.1311796624, 0.174939446545, 0.129912959434, 0.173625215613]],
] as const;

test.each(table)("%s, as R package survey has it", (_, clusters, wanted) => {
  const r = clusteredProportion(clusters);
  const reach = tQuantile(0.975, r.clusters - 1) * r.se!;
  const found = [
    ...[
      r.clusters,
      r.n,
      r.cases,
      r.estimate,
      r.se,
      r.designEffect,
      r.effectiveN,
      r.lower,
      r.upper,
      r.logitT.lower,
      r.logitT.upper,
    ],
    ...[r.estimate - reach, r.estimate + reach],
  ];
  // Ten to twelve printed digits.
  expectNear(found, wanted, 1e-9);
});

test("the error and the logit limits are those of an independence GEE by geepack, times K/(K-1)", () => {
  const r = clusteredProportion(swabs());
  // geeglm stops iterating at about 1e-8.
  expectNear([r.se], closedForm("bacteria se"), 1e-7);
  expectNear([r.logitT.lower, r.logitT.upper], closedForm("bacteria logit limits"), 1e-7);
});

// R 4.2.2 and survey 4.1-1: svyciprop(~ sick, design, method = "asin", "beta", "likelihood") of the animals of all periods, 14 degrees of
// freedom.
test("other intervals of R package survey", () => {
  const limits = (interval: "wald" | "logit" | "arcsine" | "beta" | "likelihood") => {
    const { lower, upper } = clusteredProportion(cattleHerds(false), { interval });
    return [lower, upper];
  };
  expectNear(limits("arcsine"), [0.0726592598, 0.1715626508], 1e-9);
  expectNear(limits("beta"), [0.07236405269, 0.17738776126], 1e-9);
  expectNear(limits("wald"), [0.0679291477159, 0.167225246583], 1e-10);
  expectNear(limits("logit"), [0.0762729201725, 0.176963989516], 1e-10);
  // Three parts in 100,000 off: survey reads its limits off a spline through points of the profile. The second pair is the root itself, by
  // uniroot(function(q) 2 * 842 * (p * log(p / q) + (1 - p) * log((1 - p) / (1 - q))) * 841 / 842 - qt(.975, 14)^2 * deff).
  expectNear(limits("likelihood"), [0.07401949215, 0.17315537614], 3e-5);
  expectNear(limits("likelihood"), [0.074021130442, 0.173157556686], 1e-10);
});

test("the design effect of R package survey takes the binomial variance over n - 1", () => {
  const { designEffect, n } = clusteredProportion(cattleHerds(false));
  expectNear([(designEffect! * (n - 1)) / n], [4.34342514137], 1e-11);
});

test("standard errors of independent animals, to compare", () => {
  const independent = (herds: ClusterCount[]) => {
    const { se, designEffect } = clusteredProportion(herds);
    return se! / Math.sqrt(designEffect!);
  };
  expectNear([independent(cattleHerds(false)), independent(cattleHerds(true))], [0.0111005338865, 0.0248214752833], 1e-11);
  expectNear([independent(swabs()), independent(wheeze())], [0.0267354094546, 0.00774161502296], 1e-11);
});

test("litters of rats, by R package aod", () => {
  const { se, designEffect } = clusteredProportion(litters.control);
  const treated = clusteredProportion(litters.treated);
  expectNear([se! ** 2, designEffect], [0.000709941185146, 1.23249539431], 1e-10);
  expectNear([se, treated.se], [0.026644721525, 0.0692260782312], 1e-11);
  expectNear([treated.se! ** 2, treated.designEffect], [0.00479224990727, 3.95286062596], 1e-10);
});

// R 4.2.2 and survey 4.1-1, svyciprop(~ y, svydesign(ids = ~yard, weights = ~1), method = "logit") of tests/reference/sim-nested-feet.csv.
test("nested feet by yard and by horse", () => {
  const by = (column: string) => {
    const names = grouped(referenceRows("sim-nested-feet.csv"), (row) => row[column]);
    return [...names.values()].map((rows) => ({ cases: rows.filter(({ y }) => y === 1).length, n: rows.length }));
  };
  const [yard, horse] = [clusteredProportion(by("yard")), clusteredProportion(by("horse"))];
  expectNear([yard.estimate, yard.se], [0.34451219512, 0.04643967803], 1e-9);
  expectNear([yard.logitT.lower, yard.logitT.upper], [0.2556577901, 0.4457545134], 1e-9);
  expectNear([horse.se], [0.0248706522], 1e-8);
  for (const { se, designEffect } of [yard, horse]) expect(se! / Math.sqrt(designEffect!)).toBeCloseTo(0.018554, 6);
});

test("four horses worked by hand: standard error 0.1614, against 0.1210 for independent feet", () => {
  const { estimate, se } = clusteredProportion(clustersOf("3/4 0/4 1/4 2/4"));
  // Sum of (y - 4 x 0.375)^2 is 5, so the variance is 4/3 x 5 / 16^2.
  expectNear([estimate, se], [0.375, Math.sqrt((4 / 3) * (5 / 256))], 1e-14);
});

describe("no spread between clusters never gives a zero width", () => {
  test("no cases: exact limits on the clusters, and it says so", () => {
    const r = clusteredProportion(clustersOf("0/4 0/4 0/4 0/2"));
    const exact = clopperPearsonInterval(0, 4);
    expect([r.estimate, r.lower, r.upper, r.se, r.designEffect, r.effectiveN]).toEqual([0, 0, exact.upper, null, null, 4]);
    expect(r.logitT).toEqual({ lower: 0, upper: exact.upper });
    expect(r.note).toMatch(/None of the 14/);
  });

  test("nothing but cases", () => {
    const r = clusteredProportion(clustersOf("4/4 4/4 1/1"));
    expect([r.estimate, r.lower, r.upper]).toEqual([1, clopperPearsonInterval(3, 3).lower, 1]);
    expect(r.note).toMatch(/All of the 9/);
  });

  test("the same proportion everywhere: Wilson with design effect 1", () => {
    const r = clusteredProportion(clustersOf("1/4 2/8 1/4"));
    const { lower, upper } = wilsonInterval(4, 16);
    expect([r.lower, r.upper, r.logitT]).toEqual([lower, upper, { lower, upper }]);
    expect(r.note).toMatch(/same proportion/);
  });

  test("a design effect below 1 does not narrow the limits", () => {
    const r = clusteredProportion(clustersOf("1/4 1/4 2/4 1/4"));
    const { lower, upper } = wilsonInterval(5, 16);
    expect(r.designEffect).toBeLessThan(1);
    expectNear([r.lower, r.upper], [lower, upper], 1e-14);
    expect(r.note).toMatch(/below 1/);
  });

  test("one cluster has an estimate and no limits", () => {
    const r = clusteredProportion(clustersOf("1/4"));
    expect([r.estimate, r.lower, r.upper, r.logitT, r.se]).toEqual([0.25, null, null, { lower: null, upper: null }, null]);
    expect(r.note).toMatch(/one cluster/);
  });
});

const cluster = fc
  .integer({ min: 1, max: 12 })
  .chain((n) => fc.record({ cases: fc.integer({ min: 0, max: n }), n: fc.constant(n) }));
const herd = fc.array(cluster, { minLength: 2, maxLength: 25 });

describe("for any clusters", () => {
  test("every kind of interval holds the estimate and stays within 0 and 1", () => {
    const kinds = fc.constantFrom("wilson", "logit", "wald", "arcsine", "likelihood", "beta");
    fc.assert(
      fc.property(herd, kinds, fc.constantFrom(0.5, 0.95, 0.9999), (clusters, interval, level) => {
        const { estimate, lower, upper, method } = clusteredProportion(clusters, { interval, level });
        expect(0 <= lower! && lower! <= estimate && estimate <= upper! && upper! <= 1).toBe(true);
        expect(upper).toBeGreaterThan(lower!);
        expect(method).not.toBe("");
      }),
    );
  });

  test("both intervals hold the estimate, stay within 0 and 1 and have a width", () => {
    fc.assert(
      fc.property(herd, (clusters) => {
        const { estimate, lower, upper, logitT } = clusteredProportion(clusters);
        for (const [low, high] of [
          [lower!, upper!],
          [logitT.lower!, logitT.upper!],
        ] as const) {
          expect(0 <= low && low <= estimate && estimate <= high && high <= 1).toBe(true);
          expect(high).toBeGreaterThan(low);
        }
      }),
    );
  });

  test("order does not matter, empty clusters do not count, and a higher level is wider", () => {
    fc.assert(
      fc.property(herd, (clusters) => {
        const one = clusteredProportion(clusters);
        const other = clusteredProportion([{ cases: 0, n: 0 }, ...clusters].reverse());
        expectNear([other.lower, other.upper, other.icc ?? 0], [one.lower!, one.upper!, one.icc ?? 0], 1e-9);
        expect(other.clusters).toBe(clusters.length);
        const wide = clusteredProportion(clusters, { level: 0.99 });
        expect(wide.lower! <= one.lower! && wide.upper! >= one.upper!).toBe(true);
        expect(wide.logitT.lower! <= one.logitT.lower! && wide.logitT.upper! >= one.logitT.upper!).toBe(true);
      }),
    );
  });

  test("clusters of one are independent observations, but for K/(K-1)", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 1 }), { minLength: 3, maxLength: 60 }), (findings) => {
        const k = findings.length;
        const cases = findings.reduce((a, b) => a + b, 0);
        fc.pre(cases > 0 && cases < k);
        const r = clusteredProportion(findings.map((finding) => ({ cases: finding, n: 1 })));
        expectNear([r.designEffect], [k / (k - 1)], 1e-10);
      }),
    );
  });
});

test("a kind of interval there is not", () => {
  expect(faultCode(() => clusteredProportion(clustersOf("1/4 2/4"), { interval: "exact" as "beta" }))).toBe("out_of_range");
});

test.each([
  [[], "empty"],
  [[{ cases: 0, n: 0 }], "empty"],
  [[{ cases: 3, n: 2 }], "out_of_range"],
  [[{ cases: 1, n: 0 }], "empty"],
  [[{ cases: -1, n: 2 }], "not_a_count"],
  [[{ cases: NaN, n: 2 }], "not_a_number"],
])("%j is %s", (clusters, code) => {
  expect(faultCode(() => clusteredProportion(clusters))).toBe(code);
});
