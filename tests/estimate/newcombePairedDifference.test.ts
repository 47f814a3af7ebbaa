import fc from "fast-check";
import { expect, test } from "vitest";
import { newcombePairedDifference } from "../../src/estimate/newcombePairedDifference.js";
import { faultCode } from "./faultCode.js";

// Newcombe 1998, Stat Med 17:2635-2650, Table III, method 10; six decimals from R 4.2.2. The last but one is the approval rating
// example of R's ?mcnemar.test (Agresti 1990, p. 350).
// prettier-ignore
const table = [
  [36, 12, 2, 0, 0.2, 0.056930, 0.340428],
  [20, 12, 2, 16, 0.2, 0.056156, 0.329207],
  [18, 12, 2, 18, 0.2, 0.056172, 0.328976],
  [36, 14, 0, 0, 0.28, 0.152840, 0.416651],
  [18, 14, 0, 18, 0.28, 0.144083, 0.396325],
  [0, 29, 1, 0, 28 / 30, 0.666592, 0.988183],
  [2, 98, 0, 0, 0.98, 0.917793, 0.994498],
  [0, 30, 0, 0, 1, 0.839468, 1],
  [54, 0, 0, 0, 0, -0.066414, 0.066414],
  [27, 0, 0, 27, 0, -0.035070, 0.035070],
  [794, 150, 86, 570, 0.04, 0.021230, 0.058704],
] as const;

test.each(table)("%d, %d, %d, %d", (both, first, second, neither, estimate, lower, upper) => {
  const interval = newcombePairedDifference(both, first, second, neither);
  expect(interval.estimate).toBeCloseTo(estimate, 12);
  expect(interval.lower).toBeCloseTo(lower, 5);
  expect(interval.upper).toBeCloseTo(upper, 5);
  expect([interval.n, interval.discordant]).toEqual([both + first + second + neither, first + second]);
});

test("for any pairs limits hold the estimate and swapping the halves flips the sign", () => {
  const cell = fc.integer({ min: 0, max: 200 });
  fc.assert(
    fc.property(cell, cell, cell, cell, (e, f, g, h) => {
      fc.pre(e + f + g + h > 0);
      const one = newcombePairedDifference(e, f, g, h);
      expect(-1 <= one.lower && one.lower <= one.estimate && one.estimate <= one.upper && one.upper <= 1).toBe(true);
      const other = newcombePairedDifference(e, g, f, h);
      expect(other.lower).toBeCloseTo(-one.upper, 12);
      expect(other.upper).toBeCloseTo(-one.lower, 12);
      const wide = newcombePairedDifference(e, f, g, h, { level: 0.99 });
      expect(wide.lower <= one.lower + 1e-12 && wide.upper >= one.upper - 1e-12).toBe(true);
    }),
  );
});

test("no pairs, or half a pair, is refused", () => {
  expect(faultCode(() => newcombePairedDifference(0, 0, 0, 0))).toBe("empty");
  expect(faultCode(() => newcombePairedDifference(1, 0.5, 0, 0))).toBe("not_a_count");
  expect(faultCode(() => newcombePairedDifference(1, -1, 0, 0))).toBe("not_a_count");
});
