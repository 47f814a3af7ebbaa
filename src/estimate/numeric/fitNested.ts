import { climbToBoundary, type Climb } from "./climbToBoundary.js";
import { curvatureInverse } from "./curvatureInverse.js";
import { differencedHessian } from "./differencedHessian.js";
import { heldAt } from "./heldAt.js";
import { jointModes, type JointModes } from "./jointModes.js";
import type { LogLikelihood } from "./LogLikelihood.js";
import type { NestedCounts } from "./NestedCounts.js";
import { nestedLaplace } from "./nestedLaplace.js";
import { nestedQuadrature, type QuadraturePoints } from "./nestedQuadrature.js";

export interface NestedFitOptions {
  /** Places of the SDs that are part of the model: `terms` for the outer groups', `terms + 1` for the inner groups'. */
  readonly sds: readonly number[];
  readonly method: "quadrature" | "laplace";
  /** Points of the rule; when left out they are raised until the rule is fine enough. */
  readonly points?: QuadraturePoints | undefined;
  /** Where to start. Parameters: coefficients, outer SD, inner SD. */
  readonly start: Float64Array;
}

/** A nested logistic fit in numbers. */
export interface NestedFit {
  readonly theta: Float64Array;
  /** Places of the parameters that are estimated: all but SDs that are no part of the model or came out as 0. */
  readonly free: readonly number[];
  /** Inverse of the observed information over the estimated parameters, row after row. */
  readonly covariance: Float64Array;
  /** See `curvatureInverse`. */
  readonly definiteness: number;
  readonly logLik: number;
  /** How far one more Newton step would go, in standard errors. */
  readonly distance: number;
  readonly iterations: number;
  readonly evaluations: number;
  readonly converged: boolean;
  readonly points: QuadraturePoints | null;
  /** What a finer rule adds to the log-likelihood of the same parameters; null for Laplace. */
  readonly change: number | null;
  /** Where the random effects are, under `theta`. */
  readonly modes: JointModes;
}

/** A rule is fine enough when a finer one changes the log-likelihood by less than this part of it. */
const FINE = 1e-8;
const FINEST = 150;

/**
 * Maximum likelihood of a nested logistic model, with the random effects integrated out by the joint Laplace approximation or,
 * from its maximum on, by quadrature.
 */
export function fitNested(data: NestedCounts, options: NestedFitOptions): NestedFit {
  const { sds, method } = options;
  const modes = jointModes(data);
  const guide = nestedLaplace(data, modes);
  const free = [...Array.from({ length: data.terms }, (_, place) => place), ...sds];
  const climb = climbToBoundary(guide, { start: options.start, free, sds, guide });
  if (method === "laplace") return { ...polished(guide, climb), points: null, change: null, modes };

  let points = options.points ?? (sds.includes(data.terms) ? { outer: 15, inner: 21 } : { outer: 1, inner: 31 });
  let before = climb;
  for (;;) {
    const logLikelihood = nestedQuadrature(data, modes, points);
    // Laplace may put an SD at 0 that is not; at 0 the slope is 0 and the climb would never leave.
    const start = before.theta.slice();
    for (const place of sds) start[place] = Math.max(start[place]!, 0.2);
    before = added(before, climbToBoundary(logLikelihood, { start, free, sds, guide }));
    const { theta, value } = before;
    const finer = { outer: points.outer === 1 ? 1 : Math.ceil(points.outer * 1.4), inner: Math.ceil(points.inner * 1.4) };
    const change = nestedQuadrature(data, modes, finer)(theta, new Float64Array(theta.length)) - value;
    const fine = Math.abs(change) < FINE * Math.max(1, Math.abs(value));
    if (fine || options.points !== undefined || finer.inner > FINEST) {
      return { ...polished(logLikelihood, before), points, change, modes };
    }
    points = finer;
  }
}

function added(before: Climb, now: Climb): Climb {
  return { ...now, iterations: before.iterations + now.iterations, evaluations: before.evaluations + now.evaluations };
}

/** One Newton step with the true curvature, which is wanted anyway. */
function polished(logLikelihood: LogLikelihood, climb: Climb): Omit<NestedFit, "points" | "change" | "modes"> {
  const { free, iterations } = climb;
  const size = free.length;
  const held = heldAt(logLikelihood, climb.theta, free);
  const part = Float64Array.from(free, (place) => climb.theta[place]!);
  const { inverse: covariance, definiteness } = curvatureInverse(differencedHessian(held, part, 1e-4));
  const gradient = new Float64Array(size);
  held(part, gradient);
  const step = (at: number) => gradient.reduce((sum, slope, i) => sum + covariance[at * size + i]! * slope, 0);
  const next = part.map((value, at) => value + (definiteness > 0 ? step(at) : 0));
  const logLik = held(next, gradient);
  const theta = climb.theta.slice();
  free.forEach((place, at) => {
    theta[place] = next[at]!;
  });
  const distance = Math.sqrt(gradient.reduce((sum, slope, at) => sum + slope * step(at), 0));
  const evaluations = climb.evaluations + 2 * size + 2;
  return { theta, free, covariance, definiteness, logLik, distance, iterations, evaluations, converged: climb.converged };
}
