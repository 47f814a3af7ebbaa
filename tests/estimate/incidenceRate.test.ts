import fc from "fast-check";
import { expect, test } from "vitest";
import { incidenceRate } from "../../src/estimate/incidenceRate.js";
import { closedForm, closedFormCases } from "./closedForm.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";

// Exact limits of a Poisson count (Garwood 1936, Biometrika 28:437-442), six decimals from R 4.2.2: qchisq(0.025, 2 * x) / 2 and
// qchisq(0.975, 2 * x + 2) / 2.
test.each([
  [0, 0, 3.688879],
  [1, 0.025318, 5.571643],
  [2, 0.242209, 7.224688],
  [3, 0.618672, 8.767273],
  [4, 1.089865, 10.241589],
  [5, 1.623486, 11.668332],
  [7, 2.814363, 14.422675],
  [8, 3.453832, 15.763189],
  [10, 4.795389, 18.390356],
  [15, 8.395386, 24.740219],
  [20, 12.21652, 30.888378],
  [25, 16.178682, 36.904932],
  [50, 37.110964, 65.918767],
  [100, 81.363991, 121.626794],
])("%d events", (events, lower, upper) => {
  const rate = incidenceRate(events, 1);
  expect(rate.lower).toBeCloseTo(lower, 6);
  expect(rate.upper).toBeCloseTo(upper, 6);
});

// R 4.2.2: poisson.test(7484)$conf.int.
test("thousands of events", () => {
  const { lower, upper } = incidenceRate(7484, 1);
  expectNear([lower, upper], [7315.39242182433, 7655.51319355911], 1e-12);
});

// R 4.2.2: survival::cipoisson(4), cipoisson(8, 10); example of ?poisson.test; 90 % limits of 0 and 3.
test("with time at risk and at 90 %", () => {
  const limits = (events: number, time: number, level = 0.95) => {
    const { lower, upper } = incidenceRate(events, time, { level });
    return [lower, upper];
  };
  expectNear(limits(4, 1), [1.08986537363, 10.2415886754], 1e-10);
  expectNear(limits(8, 10), [0.3453832177, 1.576318922], 1e-9);
  expectNear(limits(137, 24.19893), [4.753124805, 6.692709334], 1e-9);
  expect(incidenceRate(137, 24.19893).estimate).toBeCloseTo(5.661407343, 9);
  expectNear(limits(0, 1, 0.9), [0, 2.995732], 1e-6);
  expectNear(limits(3, 1, 0.9), [0.817691, 7.753657], 1e-6);
  const horses = incidenceRate(15, 1234.5);
  expectNear([horses.estimate * 100, horses.lower * 100, horses.upper * 100], [1.21506683, 0.68006368, 2.00406795], 1e-8);
});

// survival 3.5-3: cipoisson(8, 10, method = "anscombe"). Byar's formula by R 4.2.2: x * (1 - 1 / (9 * x) - z / (3 * sqrt(x)))^3 and the same
// with x + 1 and +.
test("Anscombe's and Byar's limits", () => {
  const limits = (events: number, time: number, interval: "anscombe" | "byar", level = 0.95) => {
    const { lower, upper } = incidenceRate(events, time, { interval, level });
    return [lower, upper];
  };
  expectNear(limits(8, 10, "anscombe"), [0.3335229415, 1.5674281303], 1e-9);
  expectNear(limits(15, 1, "byar"), [8.38926401321, 24.7416313432], 1e-11);
  // Below these the formulas leave the range of a rate: at 0 events there is no root, and cubes turn negative.
  expectNear(limits(0, 1, "anscombe"), [0, (Math.sqrt(7 / 8) + 1.959963984540054 / 2) ** 2], 1e-12);
  expectNear(limits(0, 1, "byar"), [0, (1 - 1 / 9 + 1.959963984540054 / 3) ** 3], 1e-12);
  expectNear([limits(1, 1, "byar", 0.9999)[0], limits(1, 1, "anscombe", 0.9999)[0]], [0, 0], 0);
  expect(faultCode(() => incidenceRate(1, 1, { interval: "wald" as "byar" }))).toBe("out_of_range");
});

test.each(closedFormCases("rate ").filter((name) => !name.startsWith("ratio")))("%s by R's poisson.test", (name) => {
  const [events, time, level] = name.split(/[/ ]/).map(Number) as [number, number, number];
  const { lower, upper } = incidenceRate(events, time, { level });
  expectNear([lower, upper], closedForm(`rate ${name}`), 1e-11);
});

test("approximate limits hold the rate and lie near the exact ones when events are many", () => {
  const interval = fc.constantFrom("anscombe", "byar");
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 3000 }),
      interval,
      fc.double({ min: 0.01, max: 0.9999, noNaN: true }),
      (events, interval, level) => {
        const { estimate, lower, upper } = incidenceRate(events, 2, { interval, level });
        expect(0 <= lower && lower <= estimate && estimate < upper).toBe(true);
      },
    ),
  );
  for (const interval of ["anscombe", "byar"] as const) {
    const [near, exact] = [incidenceRate(2000, 1, { interval }), incidenceRate(2000, 1)];
    expectNear([near.lower, near.upper], [exact.lower, exact.upper], 5e-4);
  }
});

test("limits hold the rate, widen with the level and scale with the time", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1000 }), fc.double({ min: 0.001, max: 1e5, noNaN: true }), (events, time) => {
      const one = incidenceRate(events, time);
      expect(0 <= one.lower && one.lower <= one.estimate && one.estimate < one.upper).toBe(true);
      expect(incidenceRate(events, time, { level: 0.99 }).upper).toBeGreaterThan(one.upper);
      expectNear([incidenceRate(events, time * 2).upper], [one.upper / 2], 1e-12);
    }),
  );
});

test.each([
  [0, 0, "empty"],
  [3, 0, "empty"],
  [3, -1, "out_of_range"],
  [-3, 1, "not_a_count"],
  [3.5, 1, "not_a_count"],
  [3, NaN, "not_a_number"],
])("%d events in %d is %s", (events, time, code) => {
  expect(faultCode(() => incidenceRate(events, time))).toBe(code);
});
