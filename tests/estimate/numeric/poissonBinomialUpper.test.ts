import fc from "fast-check";
import { expect, test } from "vitest";
import { poissonBinomialUpper } from "../../../src/estimate/numeric/poissonBinomialUpper.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

const times = (n: number, p: number) => Array<number>(n).fill(p);

// R 4.2.2: pbinom(cases - 1, n, p, lower.tail = FALSE).
test.each([
  [4, 10, 0.3, 0.3503892816],
  [40, 400, 0.08, 0.0865781798817015],
  [60, 60, 0.5, 8.67361737988403e-19],
])("%d or more of %d events alike, chance %d: the binomial distribution", (cases, n, p, wanted) => {
  expectNear([poissonBinomialUpper(cases, times(n, p))], [wanted], 1e-11);
});

// R 4.2.2: sum(sapply(0:5, function(i) dbinom(i, 5, .1) * pbinom(3 - i, 4, .6, lower.tail = FALSE))).
test("events of two kinds", () => {
  expectNear([poissonBinomialUpper(4, [...times(5, 0.1), ...times(4, 0.6)])], [0.300605824], 1e-12);
});

test("three events by hand", () => {
  const [a, b, c] = [0.2, 0.5, 0.9];
  const chances = [1, 1 - (1 - a) * (1 - b) * (1 - c), a * b + a * c + b * c - 2 * a * b * c, a * b * c, 0];
  expectNear(
    chances.map((_, cases) => poissonBinomialUpper(cases, [a, b, c])),
    chances,
    1e-14,
  );
});

test("order does not matter, and one chance the more makes no count less likely", () => {
  const chance = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(fc.array(chance, { maxLength: 12 }), chance, fc.integer({ min: -2, max: 12 }), (list, more, cases) => {
      const upper = poissonBinomialUpper(cases, list);
      expect(poissonBinomialUpper(cases, [...list].reverse())).toBeCloseTo(upper, 12);
      expect(poissonBinomialUpper(cases, [...list, more])).toBeGreaterThanOrEqual(upper - 1e-12);
      expect(upper).toBeLessThanOrEqual(1 + 1e-12);
    }),
  );
});

test("more than there are is impossible, none or fewer is certain", () => {
  expect([poissonBinomialUpper(3, [0.5, 0.5]), poissonBinomialUpper(0, []), poissonBinomialUpper(-1, [0.5])]).toEqual([0, 1, 1]);
});

test.each([
  [1, [0.5, 1.2], "out_of_range"],
  [1, [NaN], "not_a_number"],
  [1, [null as unknown as number], "not_a_number"],
  [1.5, [0.5], "not_a_count"],
  [NaN, [0.5], "not_a_number"],
])("%d of %j is refused", (cases, list, code) => {
  expect(faultCode(() => poissonBinomialUpper(cases, list))).toBe(code);
});
