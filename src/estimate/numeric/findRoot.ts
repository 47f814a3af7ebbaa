import { EstimateError } from "../EstimateError.js";

/**
 * Where a continuous function of one number crosses zero between `low` and `high`, where its signs must differ.
 *
 * Method: Brent's: inverse quadratic or linear interpolation while that shrinks the bracket fast enough, halving otherwise.
 * Stops when the bracket is as narrow as rounding allows, or 2e-20 of its first width.
 *
 * Errors: `out_of_range` when both ends have the same sign; `not_converged` after 300 steps.
 *
 * Source: Brent RP (1973) Algorithms for Minimization without Derivatives, chapter 4.
 */
export function findRoot(f: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (!(Math.sign(fa) * Math.sign(fb) <= 0)) {
    throw new EstimateError(
      "out_of_range",
      `The function does not change sign between ${low} and ${high}.`,
      "Give a bracket whose ends lie on both sides of the root.",
    );
  }
  let [c, fc] = [a, fa];
  const floor = 1e-4 * Number.EPSILON * Math.abs(high - low);
  let step = b - a;
  let before = step;
  for (let turn = 0; turn < 300; turn += 1) {
    if (Math.sign(fb) === Math.sign(fc)) {
      [c, fc] = [a, fa];
      before = step = b - a;
    }
    if (Math.abs(fc) < Math.abs(fb)) {
      [a, b, c] = [b, c, b];
      [fa, fb, fc] = [fb, fc, fb];
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + floor;
    const half = (c - b) / 2;
    if (fb === 0 || Math.abs(half) <= tolerance) return b;
    const jump = interpolated(a, b, c, fa, fb, fc);
    const inside = jump * half > 0 && Math.abs(jump) < Math.min(1.5 * Math.abs(half), Math.abs(before) / 2);
    before = inside ? step : half;
    step = inside ? jump : half;
    [a, fa] = [b, fb];
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    fb = f(b);
  }
  throw new EstimateError("not_converged", `No root was found between ${low} and ${high}.`, "Give a narrower bracket.");
}

/** Step from b to where the parabola (or line) through the points, taken as x of f, crosses zero. */
function interpolated(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa;
  if (a === c) return ((b - c) * s) / (1 - s) || 0;
  const [q, r] = [fa / fc, fb / fc];
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1)) || 0;
}
