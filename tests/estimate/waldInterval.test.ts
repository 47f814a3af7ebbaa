import { expect, test } from "vitest";
import { waldInterval } from "../../src/estimate/waldInterval.js";
import { faultCode } from "./faultCode.js";

// Newcombe 1998, Stat Med 17:857-872, Table I, method 1, has these cases; digits from R 4.2.2: p + c(-1, 1) * qnorm(0.975) *
// sqrt(p * (1 - p) / n). For 1 of 29 the formula gives -0.0319267260, which is cut at 0.
test.each([
  [81, 263, 0.2521901262, 0.3637794555],
  [15, 148, 0.0527300064, 0.1499726963],
  [1, 29, 0, 0.1008922432],
  [28, 29, 1 - 0.1008922432, 1],
])("%d of %d", (cases, n, lower, upper) => {
  const interval = waldInterval(cases, n);
  expect(interval.estimate).toBe(cases / n);
  expect(interval.lower).toBeCloseTo(lower, 9);
  expect(interval.upper).toBeCloseTo(upper, 9);
  expect(interval.note).toBeNull();
});

test.each([
  [0, 20],
  [20, 20],
  [0, 1],
  [1, 1],
])("%d of %d has no width, and it says so", (cases, n) => {
  const { lower, upper, note } = waldInterval(cases, n);
  expect([lower, upper]).toEqual([cases / n, cases / n]);
  expect(note).toMatch(/not certainty/);
});

test("half of 100 at 90 %: 1.645 x 0.05 either side", () => {
  expect(waldInterval(50, 100, { level: 0.9 }).upper).toBeCloseTo(0.5 + 1.6448536269514722 * 0.05, 12);
});

test("0 of 0 is empty, more cases than examined out of range, a level of 95 too", () => {
  expect(faultCode(() => waldInterval(0, 0))).toBe("empty");
  expect(faultCode(() => waldInterval(2, 1))).toBe("out_of_range");
  expect(faultCode(() => waldInterval(1, 2, { level: 95 }))).toBe("out_of_range");
});
