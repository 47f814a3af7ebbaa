import fc from "fast-check";
import { expect, test } from "vitest";
import { funnelLimits } from "../../src/estimate/funnelLimits.js";
import { logChoose } from "../../src/estimate/numeric/logChoose.js";
import { faultCode } from "./faultCode.js";

// R 4.2.2: r <- smallest count with pbinom(r, n, t) > p, by qbinom; (r - (pbinom(r, n, t) - p) / dbinom(r, n, t)) / n, cut at 0 and 1.
test.each([
  [0.2, 10, 0.95, 0, 0.429493882921],
  [0.2, 10, 0.998, 0, 0.597536039807],
  [0.2, 50, 0.95, 0.084404822012, 0.307093883352],
  [0.2, 50, 0.998, 0.034776143208, 0.379144097675],
  [0.35, 7, 0.95, 0, 0.665259083665],
  [0.05, 30, 0.998, 0, 0.194751918946],
  [0.5, 200, 0.95, 0.428127343382, 0.566872656618],
  [0.5, 200, 0.998, 0.388408207559, 0.606591792441],
])("target %f, group of %i, level %f, as written out in R", (target, n, level, lower, upper) => {
  const limits = funnelLimits(target, n, { level });
  // 12 digits are printed.
  expect(limits.lower).toBeCloseTo(lower, 11);
  expect(limits.upper).toBeCloseTo(upper, 11);
});

test("at least the level of groups like all others lies within the counts next to the limits", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), fc.integer({ min: 1, max: 200 }), (target, n) => {
      const { lower, upper } = funnelLimits(target, n);
      let inside = 0;
      for (let x = Math.floor(lower * n); x <= Math.ceil(upper * n); x += 1)
        inside += Math.exp(logChoose(n, x) + x * Math.log(target) + (n - x) * Math.log1p(-target));
      expect(inside).toBeGreaterThan(0.95 - 1e-9);
      // In a group of a few a single case may already be more than chance allows: then the target lies above the limit.
      if (n * Math.min(target, 1 - target) < 4) return;
      expect(lower).toBeLessThan(target);
      expect(upper).toBeGreaterThan(target);
    }),
  );
});

test("the funnel narrows, and of a target of none or all there is nothing to spread", () => {
  expect(funnelLimits(0.3, 400).upper).toBeLessThan(funnelLimits(0.3, 20).upper);
  expect(funnelLimits(0, 9)).toMatchObject({ lower: 0, upper: 0 });
  expect(funnelLimits(1, 9)).toMatchObject({ lower: 1, upper: 1 });
});

test("faults of the call", () => {
  expect(faultCode(() => funnelLimits(0.2, 0))).toBe("empty");
  expect(faultCode(() => funnelLimits(1.2, 5))).toBe("out_of_range");
  expect(faultCode(() => funnelLimits(0.2, 2.5))).toBe("not_a_count");
  expect(faultCode(() => funnelLimits(0.2, 5, { level: 1 }))).toBe("out_of_range");
});
