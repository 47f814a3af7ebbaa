import fc from "fast-check";
import { expect, test } from "vitest";
import { agrestiCoullInterval } from "../../src/estimate/agrestiCoullInterval.js";
import { wilsonInterval } from "../../src/estimate/wilsonInterval.js";
import { faultCode } from "./faultCode.js";

// R 4.2.2 from the definition in Agresti & Coull 1998; limits beyond 0 and 1 are cut here.
test.each([
  [81, 263, 0.2552206652, 0.3662774317],
  [15, 148, 0.0613859749, 0.1614876663],
  [0, 20, 0, 0.1898095605],
  [1, 29, 0, 0.1862865086],
])("%d of %d", (cases, n, lower, upper) => {
  const interval = agrestiCoullInterval(cases, n);
  expect(interval.estimate).toBe(cases / n);
  expect(interval.lower).toBeCloseTo(lower, 9);
  expect(interval.upper).toBeCloseTo(upper, 9);
});

test("it is never narrower than the Wilson interval (Agresti & Coull 1998)", () => {
  const counts = fc.integer({ min: 1, max: 2000 }).chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n)));
  fc.assert(
    fc.property(counts, ([cases, n]) => {
      const [own, wilson] = [agrestiCoullInterval(cases, n), wilsonInterval(cases, n)];
      expect(own.lower).toBeLessThanOrEqual(wilson.lower + 1e-12);
      expect(own.upper).toBeGreaterThanOrEqual(wilson.upper - 1e-12);
    }),
  );
});

test("0 of 0 is empty", () => {
  expect(faultCode(() => agrestiCoullInterval(0, 0))).toBe("empty");
});
