import { expect, test } from "vitest";
import { naturalSpline } from "../../src/estimate/naturalSpline.js";
import { climateReference } from "./climateReference.js";
import { faultCode } from "./faultCode.js";

const places = [-3, 0, 2.5, 10, 14.2, 33, 41, 55];

// R 4.2.2 splines::ns, inside and outside the boundary knots.
test.each([
  ["two knots", { knots: [10, 30], boundary: [0, 50] }],
  ["one knot and intercept", { knots: [12.5], boundary: [1, 40], intercept: true }],
  ["no knot", { knots: [], boundary: [0, 50] }],
] as const)("%s as splines::ns", (name, choices) => {
  const values = places.flatMap(naturalSpline(choices));
  climateReference("spline", name).forEach((wanted, i) => {
    expect(values[i]).toBeCloseTo(wanted, 12);
  });
});

test("straight beyond the boundary, smooth at the knots", () => {
  const basis = naturalSpline({ knots: [10, 30], boundary: [0, 50] });
  const bend = (at: number, h: number) => basis(at - h).map((low, j) => (low - 2 * basis(at)[j]! + basis(at + h)[j]!) / (h * h));
  for (const at of [-20, 70]) for (const value of bend(at, 5)) expect(Math.abs(value)).toBeLessThan(1e-12);
  // The second derivative is the same from both sides of a knot; steps of 1e-3 leave some 1e-4 of it.
  bend(10 - 1e-3, 5e-4).forEach((value, j) => {
    expect(Math.abs(value - bend(10 + 1e-3, 5e-4)[j]!)).toBeLessThan(1e-4);
  });
});

test("knots out of order and NaN are refused", () => {
  expect(faultCode(() => naturalSpline({ knots: [30, 10], boundary: [0, 50] }))).toBe("out_of_range");
  expect(faultCode(() => naturalSpline({ knots: [60], boundary: [0, 50] }))).toBe("out_of_range");
  expect(faultCode(() => naturalSpline({ knots: [], boundary: [0, 50] })(NaN))).toBe("not_a_number");
});
