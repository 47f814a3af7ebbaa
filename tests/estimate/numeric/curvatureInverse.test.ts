import { expect, test } from "vitest";
import { curvatureInverse } from "../../../src/estimate/numeric/curvatureInverse.js";

const near = (values: Float64Array, wanted: readonly number[]) => {
  expect(values).toHaveLength(wanted.length);
  wanted.forEach((value, at) => {
    expect(values[at]).toBeCloseTo(value, 12);
  });
};

test("a summit: the inverse of minus the matrix, by hand", () => {
  // -[[-4, 1], [1, -2]] has determinant 7; eigenvalues 3 -+ sqrt 2.
  const { inverse, definiteness } = curvatureInverse(Float64Array.of(-4, 1, 1, -2));
  near(inverse, [2 / 7, 1 / 7, 1 / 7, 4 / 7]);
  expect(definiteness).toBeCloseTo((3 - Math.SQRT2) / (3 + Math.SQRT2), 12);
});

test("a saddle: the rising direction is turned round, and it shows", () => {
  const { inverse, definiteness } = curvatureInverse(Float64Array.of(-4, 0, 0, 2));
  near(inverse, [0.25, 0, 0, 0.5]);
  expect(definiteness).toBeCloseTo(-0.5, 12);
});
