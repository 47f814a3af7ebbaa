import { EstimateError } from "../EstimateError.js";
import { climbToBoundary } from "../numeric/climbToBoundary.js";
import { curvatureInverse } from "../numeric/curvatureInverse.js";
import { differencedHessian } from "../numeric/differencedHessian.js";
import { heldAt } from "../numeric/heldAt.js";
import type { LogLikelihood } from "../numeric/LogLikelihood.js";
import type { RandomStructure } from "./RandomStructure.js";

/** A relative SD that is still growing beyond this means that what is left within groups is nothing. */
const RUNAWAY = 30;
const STARTS = [0.2, 1, 3];

/**
 * The parameters at which a profiled log-likelihood is highest: from the best of a few starts by a quasi-Newton climb that tries
 * each small SD at 0, then by Newton steps to full accuracy.
 *
 * Errors: `no_variation` when an SD runs away; `not_converged`.
 */
export function bestSpreads(logLikelihood: LogLikelihood, { size, free, sds }: RandomStructure): Float64Array {
  const gradient = new Float64Array(size);
  const starts = STARTS.flatMap((first) => STARTS.map((second) => Float64Array.of(first, second, 0).subarray(0, size)));
  const candidates = starts.map((theta) => theta.map((value, place) => (free.includes(place) ? value : 0)));
  const values = candidates.map((theta) => logLikelihood(theta, gradient));
  const start = candidates[values.indexOf(Math.max(...values))]!;
  let climb = climbToBoundary(logLikelihood, { start, free, sds, guide: logLikelihood });
  // With intercept and slope correlated the first SD has its covariance to take along, so it is tried at 0 here.
  if (free.includes(2) && Math.abs(climb.theta[0]!) < 0.05) {
    const slope = Math.hypot(climb.theta[1]!, climb.theta[2]!);
    const alone = climbToBoundary(logLikelihood, {
      start: Float64Array.of(0, slope, 0),
      free: [1],
      sds: [1],
      guide: logLikelihood,
    });
    if (alone.value >= climb.value - 1e-7) climb = alone;
  }
  const theta = polished(logLikelihood, climb.theta, climb.free);
  logLikelihood(theta, gradient);
  const steep = climb.free.some((place) => Math.abs(gradient[place]!) > 1e-3);
  if ((steep || !climb.converged) && theta.some((value) => Math.abs(value) > RUNAWAY)) {
    throw new EstimateError(
      "no_variation",
      "What the terms leave of the outcome never differs within groups, so there is no residual to measure their spread by.",
      "Use one row a group instead of mixed effects.",
    );
  }
  if (steep || !climb.converged) {
    throw new EstimateError(
      "not_converged",
      "The spreads between groups did not settle.",
      "Use fewer terms or fewer kinds of group.",
    );
  }
  // The likelihood is the same with a column of the triangle turned round; SDs are shown as not negative.
  if (theta[0]! < 0) [0, 2].forEach((place) => place < size && (theta[place] = -theta[place]!));
  theta[1] = Math.abs(theta[1]!);
  return theta;
}

function polished(logLikelihood: LogLikelihood, from: Float64Array, free: readonly number[]): Float64Array {
  const theta = from.slice();
  const held = heldAt(logLikelihood, theta, free);
  const part = Float64Array.from(free, (place) => theta[place]!);
  const gradient = new Float64Array(free.length);
  for (let turn = 0; turn < 3 && held(part, gradient) > -Infinity; turn += 1) {
    const { inverse, definiteness } = curvatureInverse(differencedHessian(held, part, 1e-4));
    if (!(definiteness > 0)) break;
    const steps = part.map((_, i) => gradient.reduce((sum, value, j) => sum + inverse[i * free.length + j]! * value, 0));
    if (!steps.every((step) => Math.abs(step) < 1e-2)) break;
    steps.forEach((step, i) => (part[i]! += step));
  }
  free.forEach((place, i) => (theta[place] = part[i]!));
  return theta;
}
