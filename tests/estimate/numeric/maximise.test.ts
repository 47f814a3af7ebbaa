import { expect, test } from "vitest";
import type { LogLikelihood } from "../../../src/estimate/numeric/LogLikelihood.js";
import { maximise } from "../../../src/estimate/numeric/maximise.js";

const identity = (size: number) => Float64Array.from({ length: size * size }, (_, at) => (at % (size + 1) === 0 ? 1 : 0));

// Rosenbrock HH (1960) Comput J 3:175-184, upside down: its only maximum is 0 at (1, 1), along a bent ridge.
const rosenbrock: LogLikelihood = ([x = 0, y = 0], gradient) => {
  gradient[0] = 400 * x * (y - x * x) + 2 * (1 - x);
  gradient[1] = -200 * (y - x * x);
  return -100 * (y - x * x) ** 2 - (1 - x) ** 2;
};

test("Rosenbrock's ridge from his own start", () => {
  const { theta, value, converged, gradient } = maximise(rosenbrock, Float64Array.of(-1.2, 1), { inverse: identity(2) });
  expect(converged).toBe(true);
  expect(theta[0]).toBeCloseTo(1, 5);
  expect(theta[1]).toBeCloseTo(1, 5);
  expect(value).toBeCloseTo(0, 10);
  expect(Math.hypot(...gradient)).toBeLessThan(1e-4);
});

test("a parabola with its true curvature in one step, a long step cut to length", () => {
  const parabola: LogLikelihood = ([x = 0], gradient) => {
    gradient[0] = -4 * (x - 7);
    return -2 * (x - 7) ** 2;
  };
  const near = maximise(parabola, Float64Array.of(6), { inverse: Float64Array.of(0.25) });
  expect([near.theta[0], near.iterations]).toEqual([7, 1]);
  const far = maximise(parabola, Float64Array.of(0), { inverse: Float64Array.of(0.25) });
  expect(far.theta[0]).toBeCloseTo(7, 10);
  expect(far.iterations).toBe(4);
});

test("steps out of the domain are taken back", () => {
  // log x - x, highest at 1, nowhere defined below 0.
  const edged: LogLikelihood = ([x = 0], gradient) => {
    if (x <= 0) return -Infinity;
    gradient[0] = 1 / x - 1;
    return Math.log(x) - x;
  };
  const { theta, converged } = maximise(edged, Float64Array.of(3), { inverse: Float64Array.of(9) });
  expect(converged).toBe(true);
  expect(theta[0]).toBeCloseTo(1, 6);
});

test("what never ends is not called converged", () => {
  const slope: LogLikelihood = ([x = 0], gradient) => {
    gradient[0] = 1;
    return x;
  };
  expect(maximise(slope, Float64Array.of(0), { inverse: Float64Array.of(1), iterations: 20 })).toMatchObject({
    converged: false,
    iterations: 20,
  });
  const nowhere: LogLikelihood = () => -Infinity;
  expect(maximise(nowhere, Float64Array.of(0), { inverse: Float64Array.of(1) }).converged).toBe(false);
});
