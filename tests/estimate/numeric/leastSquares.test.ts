import { expect, test } from "vitest";
import { leastSquares } from "../../../src/estimate/numeric/leastSquares.js";
import { faultCode } from "../faultCode.js";
import { expectNear } from "../reference.js";

// The first five rows of datasets::cars.
const columns = [Float64Array.of(1, 1, 1, 1, 1), Float64Array.of(4, 4, 7, 7, 8)];
const stopped = Float64Array.of(2, 10, 4, 22, 16);

// R 4.2.2: lm(dist ~ speed, cars[1:5, ], weights = c(1, 2, 1, 1, 4)), its coefficients and cov.unscaled.
test("weighted coefficients and the inverse of the cross-product by R's lm", () => {
  const { estimate, inverse } = leastSquares(columns, stopped, Float64Array.of(1, Math.SQRT2, 1, 1, 2));
  expectNear([...estimate], [-1.30708661417322, 2.13385826771654], 1e-12);
  expectNear(inverse.to1DArray(), [1.582677165354329, -0.2283464566929131, -0.228346456692913, 0.0354330708661417], 1e-12);
});

test("rows that lose all weight but one do not tell two coefficients apart", () => {
  expect(faultCode(() => leastSquares(columns, stopped, Float64Array.of(0, 0, 1, 0, 0)))).toBe("not_converged");
  expect(faultCode(() => leastSquares(columns, stopped, Float64Array.of(1, NaN, 1, 1, 1)))).toBe("not_converged");
});
