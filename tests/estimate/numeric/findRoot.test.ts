import fc from "fast-check";
import { expect, test } from "vitest";
import { findRoot } from "../../../src/estimate/numeric/findRoot.js";
import { faultCode } from "../faultCode.js";

test("roots known in closed form, in few steps", () => {
  let steps = 0;
  const counted = (f: (x: number) => number) => (x: number) => {
    steps += 1;
    return f(x);
  };
  expect(findRoot(counted((x) => x * x - 2), 0, 2)).toBeCloseTo(Math.SQRT2, 14); // prettier-ignore
  expect(findRoot(counted((x) => Math.exp(x) - 1e5), -50, 50)).toBeCloseTo(Math.log(1e5), 13); // prettier-ignore
  expect(findRoot(counted((x) => 1e-300 * (x - 0.3)), 0, 1)).toBeCloseTo(0.3, 14); // prettier-ignore
  // Halving alone would take more than 50 steps for each.
  expect(steps).toBeLessThan(45);
});

test("a flat root at zero, and a jump", () => {
  expect(Math.abs(findRoot((x) => x ** 9, -1, 1.3))).toBeLessThan(1e-15);
  expect(findRoot((x) => (x < 0.7 ? -1 : 1), 0, 1)).toBeCloseTo(0.7, 12);
});

test("an end may be the root, and the ends may be given either way round", () => {
  expect(findRoot((x) => x - 1, 1, 3)).toBe(1);
  expect(findRoot((x) => x - 1, 3, 0)).toBeCloseTo(1, 14);
});

test("any rising line", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
      (root, slope) => {
        const found = findRoot((x) => slope * (x - root), root - 7, root + 11);
        expect(Math.abs(found - root)).toBeLessThanOrEqual(1e-15 * Math.abs(root) + 1e-14);
      },
    ),
  );
});

test("no change of sign, or NaN, is refused", () => {
  expect(faultCode(() => findRoot((x) => x * x + 1, -1, 1))).toBe("out_of_range");
  expect(faultCode(() => findRoot(() => NaN, -1, 1))).toBe("out_of_range");
});
