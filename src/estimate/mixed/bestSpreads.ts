import { EstimateError } from "../EstimateError.js";
import { climbToBoundary, type Climb } from "../numeric/climbToBoundary.js";
import { curvatureInverse } from "../numeric/curvatureInverse.js";
import { differencedHessian } from "../numeric/differencedHessian.js";
import { heldAt } from "../numeric/heldAt.js";
import type { LogLikelihood } from "../numeric/LogLikelihood.js";
import type { RandomStructure } from "./RandomStructure.js";

/** Relative SDs to start from. */
const STARTS = [0.1, 0.5, 2, 10, 50, 300, 2000];

/**
 * The parameters at which a profiled log-likelihood is highest: from the best of a few starts, in units of the start, by a
 * quasi-Newton climb that tries each small SD at 0, then by Newton steps to full accuracy.
 *
 * Errors: `no_variation` when the likelihood rises without end; `not_converged`.
 */
export function bestSpreads(given: LogLikelihood, structure: RandomStructure): Float64Array {
  const { free, sds } = structure;
  const units = bestStart(given, structure);
  const logLikelihood = inUnits(given, units);
  let climb = climbToBoundary(logLikelihood, {
    start: units.map((_, place) => (free.includes(place) && place < 2 ? 1 : 0)),
    free,
    sds,
    guide: logLikelihood,
  });
  if (free.includes(2)) climb = withoutIntercept(logLikelihood, climb);
  const theta = polished(logLikelihood, climb);
  const gradient = new Float64Array(theta.length);
  logLikelihood(theta, gradient);
  const settled = climb.converged && climb.free.every((place) => Math.abs(gradient[place]!) < 1e-3);
  theta.forEach((value, place) => (theta[place] = value * units[place]!));
  if (!settled) throw unsettled(given, theta);
  // The likelihood is the same with a column of the triangle turned round; SDs are shown as not negative.
  if (theta[0]! < 0) [0, 2].forEach((place) => place < theta.length && (theta[place] = -theta[place]!));
  theta[1] = Math.abs(theta[1]!);
  return theta;
}

/** Why there is no summit: where the likelihood goes on rising with all SDs, nothing is left within groups. */
function unsettled(logLikelihood: LogLikelihood, theta: Float64Array): EstimateError {
  const gradient = new Float64Array(theta.length);
  const further = logLikelihood(
    theta.map((value) => 4 * value),
    gradient,
  );
  if (further === -Infinity || further > logLikelihood(theta, gradient) + 1) {
    return new EstimateError(
      "no_variation",
      "What the terms leave of the outcome never differs within groups, so there is no residual to measure their spread by.",
      "Use one row a group instead of mixed effects.",
    );
  }
  return new EstimateError(
    "not_converged",
    "The spreads between groups did not settle.",
    "Use fewer terms or kinds of group; centre the column of a random slope, whose intercepts lie where it is 0.",
  );
}

/** The best SDs among the starts, all alike first and then one by one; for a covariance the unit of the slope's SD. */
function bestStart(logLikelihood: LogLikelihood, { size, free }: RandomStructure): Float64Array {
  const gradient = new Float64Array(size);
  const value = (sds: readonly number[]) =>
    logLikelihood(
      Float64Array.from({ length: size }, (_, place) => (free.includes(place) ? (sds[place] ?? 0) : 0)),
      gradient,
    );
  const best = (make: (sd: number) => readonly number[]) =>
    STARTS.map(make).reduce((one, other) => (value(other) > value(one) ? other : one));
  let sds = best((sd) => [sd, sd]);
  for (let place = 0; place < 2; place += 1) {
    const others = sds;
    sds = best((sd) => others.map((other, k) => (k === place ? sd : other)));
  }
  return Float64Array.from({ length: size }, (_, place) => sds[Math.min(place, 1)]!);
}

function inUnits(logLikelihood: LogLikelihood, units: Float64Array): LogLikelihood {
  return (theta, gradient) => {
    const value = logLikelihood(
      theta.map((part, place) => part * units[place]!),
      gradient,
    );
    units.forEach((unit, place) => (gradient[place]! *= unit));
    return value;
  };
}

/** With intercept and slope correlated the intercept's SD takes the covariance along, so both are tried at 0 together here. */
function withoutIntercept(logLikelihood: LogLikelihood, climb: Climb): Climb {
  if (Math.abs(climb.theta[0]!) > 0.05) return climb;
  const start = Float64Array.of(0, Math.hypot(climb.theta[1]!, climb.theta[2]!), 0);
  const alone = climbToBoundary(logLikelihood, { start, free: [1], sds: [1], guide: logLikelihood });
  return alone.value >= climb.value - 1e-7 ? alone : climb;
}

function polished(logLikelihood: LogLikelihood, { theta: from, free }: Climb): Float64Array {
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
