import { expect, test } from "vitest";
import { curvatureInverse } from "../../../src/estimate/numeric/curvatureInverse.js";
import { differencedHessian } from "../../../src/estimate/numeric/differencedHessian.js";
import type { LogLikelihood } from "../../../src/estimate/numeric/LogLikelihood.js";

// x^2 y + exp(y): second derivatives 2y, 2x, exp(y).
const surface: LogLikelihood = ([x = 0, y = 0], gradient) => {
  gradient[0] = 2 * x * y;
  gradient[1] = x * x + Math.exp(y);
  return x * x * y + Math.exp(y);
};

test("second derivatives by hand", () => {
  const hessian = differencedHessian(surface, Float64Array.of(1.5, -0.4), 1e-4);
  // Error of the order of the step squared.
  [-0.8, 3, 3, Math.exp(-0.4)].forEach((value, at) => {
    expect(hessian[at]).toBeCloseTo(value, 7);
  });
});

test("NaN where a neighbour cannot be computed", () => {
  const edge: LogLikelihood = ([x = 0], gradient) => {
    gradient[0] = 1;
    return x > 1 ? -Infinity : x;
  };
  const hessian = differencedHessian(edge, Float64Array.of(1));
  expect(hessian[0]).toBeNaN();
  expect(curvatureInverse(hessian)).toEqual({ inverse: Float64Array.of(0.01), definiteness: NaN });
});
