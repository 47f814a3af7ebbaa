import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { kaplanMeier } from "../../src/estimate/kaplanMeier.js";
import { closedForm } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { leukaemia, threeGroups, timesOf } from "./leukaemia.js";
import { expectNear } from "./reference.js";

// R 4.2.2, survival 3.5-3: survfit(Surv(time, status) ~ x, aml, conf.type = "log-log" | "log"). In order: time, at risk, events, survival,
// Greenwood error, log-log limits, log limits.
// prettier-ignore
const maintained = [
  [9, 11, 1, 0.9090909, 0.08667842, 0.50808021, 0.9866738, 0.7541338, 1],
  [13, 10, 1, 0.8181818, 0.11629130, 0.44742861, 0.9511622, 0.6192490, 1],
  [18, 8, 1, 0.7159091, 0.13966497, 0.35019039, 0.8990240, 0.4884263, 1],
  [23, 7, 1, 0.6136364, 0.15263233, 0.26575204, 0.8352992, 0.3768671, 0.9991576],
  [31, 5, 1, 0.4909091, 0.16419327, 0.16733091, 0.7533998, 0.2548600, 0.9455850],
  [34, 4, 1, 0.3681818, 0.16266889, 0.09282957, 0.6570408, 0.1548771, 0.8752607],
  [48, 2, 1, 0.1840909, 0.15349275, 0.01173848, 0.5250148, 0.0359179, 0.9435258],
] as const;
// prettier-ignore
const notMaintained = [
  [5, 12, 2, 0.83333333, 0.10758287, 0.481714942, 0.9555094, 0.64703699, 1],
  [8, 10, 2, 0.66666667, 0.13608276, 0.337018933, 0.8597118, 0.44684608, 0.9946254],
  [12, 8, 1, 0.58333333, 0.14231876, 0.270138924, 0.8009402, 0.36161371, 0.9409980],
  [23, 6, 1, 0.48611111, 0.14813006, 0.191876620, 0.7296716, 0.26751825, 0.8833192],
  [27, 5, 1, 0.38888889, 0.14698618, 0.126272012, 0.6498174, 0.18539653, 0.8157357],
  [30, 4, 1, 0.29166667, 0.13871517, 0.072401609, 0.5608861, 0.11483115, 0.7408220],
  [33, 3, 1, 0.19444444, 0.12187451, 0.031198643, 0.4614295, 0.05692155, 0.6642237],
  [43, 2, 1, 0.09722222, 0.09186636, 0.005746306, 0.3489039, 0.01525653, 0.6195486],
] as const;

describe("weeks of remission", () => {
  test.each([
    ["maintained", leukaemia.maintained, maintained],
    ["not maintained", leukaemia.not, notMaintained],
  ])("%s: the curve", (_, rows, table) => {
    const [curve, log] = [kaplanMeier(rows), kaplanMeier(rows, { interval: "log" })];
    table.forEach(([time, atRisk, events, survival, se, lower, upper, lowerLog, upperLog], i) => {
      const step = curve.steps[i]!;
      expect([step.time, step.atRisk, step.events]).toEqual([time, atRisk, events]);
      // Seven printed decimals.
      for (const [found, wanted] of [
        [step.survival, survival],
        [step.se, se],
        [step.lower, lower],
        [step.upper, upper],
        [log.steps[i]!.lower, lowerLog],
        [log.steps[i]!.upper, upperLog],
      ] as const) {
        expect(Math.abs((found ?? NaN) - wanted)).toBeLessThan(5.1e-8);
      }
    });
  });

  test("at survival 0 there are no limits", () => {
    expect(kaplanMeier(leukaemia.not).steps.at(-1)).toEqual({
      time: 45,
      atRisk: 1,
      events: 1,
      survival: 0,
      se: null,
      lower: null,
      upper: null,
    });
  });

  test("medians 31 (13, none) and 23 (5, 33); on the log scale (18, none) and (8, none)", () => {
    const median = (rows: typeof leukaemia.not, interval: "log-log" | "log") => {
      const { estimate, lower, upper } = kaplanMeier(rows, { interval }).median;
      return [estimate, lower, upper];
    };
    expect(median(leukaemia.maintained, "log-log")).toEqual([31, 13, null]);
    expect(median(leukaemia.not, "log-log")).toEqual([23, 5, 33]);
    expect(median(leukaemia.maintained, "log")).toEqual([31, 18, null]);
    expect(median(leukaemia.not, "log")).toEqual([23, 8, null]);
    expect(kaplanMeier(leukaemia.maintained).quartiles.map((q) => q.estimate)).toEqual([18, 31, 48]);
    expect(kaplanMeier(leukaemia.not).quartiles.map((q) => q.estimate)).toEqual([8, 23, 33]);
  });

  test("restricted means to 40 weeks", () => {
    const [one, other] = [leukaemia.maintained, leukaemia.not].map((rows) => kaplanMeier(rows, { horizon: 40 }).restrictedMean!);
    expectNear(
      [one!.estimate, one!.se, other!.estimate, other!.se],
      [28.8977272727, 3.46757767889, 21.9305555556, 3.83564116318],
      1e-10,
    );
  });
});

describe("invented times with ties, by R's survfit", () => {
  test.each(["log-log", "log"] as const)("curve and quartiles with %s limits", (interval) => {
    const curve = kaplanMeier(threeGroups.flat(), { interval, level: 0.9 });
    expectNear(
      curve.steps.flatMap(({ time, atRisk, events, survival, se, lower, upper }) => [
        time,
        atRisk,
        events,
        survival,
        se,
        lower,
        upper,
      ]),
      closedForm(`km ${interval}`),
      1e-10,
    );
    // The file writes -1 where R has NA.
    const quartiles = curve.quartiles.flatMap(({ estimate, lower, upper }) => [estimate, lower ?? -1, upper ?? -1]);
    expect(quartiles).toEqual(closedForm(`km quantiles ${interval}`));
  });

  test("restricted mean to 30", () => {
    const { estimate, se, lower, upper } = kaplanMeier(threeGroups.flat(), { horizon: 30 }).restrictedMean!;
    const [mean, error] = closedForm("km mean to 30") as [number, number];
    expectNear([estimate, se], [mean, error], 1e-11);
    expectNear([lower, upper], [mean - 1.959963984540054 * error, mean + 1.959963984540054 * error], 1e-11);
  });

  test("a curve that runs level at one half has its median half-way", () => {
    const { steps, median } = kaplanMeier(timesOf("1 2 3 4 5+ 6 7+ 8"));
    expectNear([...steps.map((step) => step.survival), median.estimate], closedForm("km 5 days"), 1e-12);
  });
});

describe("for any times", () => {
  const row = fc.record({ time: fc.integer({ min: 0, max: 60 }), event: fc.boolean() });

  test("the curve falls, limits hold it and stay within 0 and 1, and order does not matter", () => {
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 40 }),
        fc.constantFrom("log-log" as const, "log" as const),
        (rows, interval) => {
          const curve = kaplanMeier(rows, { interval });
          let before = 1;
          for (const { survival, lower, upper } of curve.steps) {
            expect(survival).toBeLessThan(before);
            before = survival;
            if (survival === 0) continue;
            expect(0 <= lower! && lower! <= survival && survival <= upper! && upper! <= 1).toBe(true);
          }
          expect(kaplanMeier([...rows].reverse(), { interval })).toEqual(curve);
          expect(curve.events + curve.censored).toBe(rows.length);
        },
      ),
    );
  });

  test("without censoring it is the share still to come", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 30 }), (times) => {
        const { steps } = kaplanMeier(times.map((time) => ({ time, event: true })));
        for (const step of steps) {
          expect(step.survival).toBeCloseTo(times.filter((time) => time > step.time).length / times.length, 10);
        }
        const mean = kaplanMeier(times.map((time) => ({ time, event: true })), { horizon: 31 }).restrictedMean!; // prettier-ignore
        expect(mean.estimate).toBeCloseTo(times.reduce((a, b) => a + b, 0) / times.length, 10);
      }),
    );
  });
});

test("missing rows are counted, not dropped in silence", () => {
  const curve = kaplanMeier([...timesOf("3 5+"), { time: null, event: true }, { time: 4, event: null }]);
  expect([curve.n, curve.missing, curve.events, curve.censored]).toEqual([2, 2, 1, 1]);
});

test("without events nothing falls, and nothing is known beyond the longest time", () => {
  const curve = kaplanMeier(timesOf("3+ 5+"), { horizon: 4 });
  expect([curve.steps.length, curve.median.estimate]).toEqual([0, null]);
  expect(curve.restrictedMean).toMatchObject({ estimate: 4, lower: null, upper: null });
  expect(kaplanMeier(timesOf("3 5+"), { horizon: 6 }).restrictedMean).toMatchObject({ estimate: null });
});

test.each([
  [[], {}, "empty"],
  [[{ time: null, event: true }], {}, "empty"],
  [[{ time: -1, event: true }], {}, "out_of_range"],
  [[{ time: NaN, event: true }], {}, "not_a_number"],
  [[{ time: 1, event: true }], { horizon: 0 }, "out_of_range"],
])("%j with %j is %s", (rows, options, code) => {
  expect(faultCode(() => kaplanMeier(rows, options))).toBe(code);
});
