import { curvatureInverse } from "./curvatureInverse.js";
import { differencedHessian } from "./differencedHessian.js";
import { heldAt } from "./heldAt.js";
import type { LogLikelihood } from "./LogLikelihood.js";
import { maximise } from "./maximise.js";

export interface Climb {
  readonly theta: Float64Array;
  readonly value: number;
  /** Places of parameters that are free. */
  readonly free: readonly number[];
  readonly iterations: number;
  readonly evaluations: number;
  readonly converged: boolean;
}

interface ClimbOptions {
  readonly start: Float64Array;
  /** Places of parameters that may move. */
  readonly free: readonly number[];
  /** Those among them that are standard deviations; the log-likelihood does not feel their sign. */
  readonly sds: readonly number[];
  /** A log-likelihood of nearly the same shape, cheap to difference for a first guess at the curvature. */
  readonly guide: LogLikelihood;
}

/** Standard deviations below this are tried at 0. */
const SMALL = 0.05;
/** What a standard deviation above 0 must add to the log-likelihood. */
const WORTH = 1e-7;

/**
 * Maximum of a log-likelihood whose standard deviations may be 0. They are free to change sign on the way, so 0 is no edge; one
 * that ends next to 0 is held there if that is as good, and then tried once more from afar, lest 0 be only a local summit.
 */
export function climbToBoundary(logLikelihood: LogLikelihood, { start, free, sds, guide }: ClimbOptions): Climb {
  let best = climb(logLikelihood, guide, start, free);
  for (const place of sds) {
    if (Math.abs(best.theta[place]!) > SMALL) continue;
    const without = best.theta.slice();
    without[place] = 0;
    const rest = best.free.filter((other) => other !== place);
    const lower = climb(logLikelihood, guide, without, rest, best);
    const afar = best.theta.slice();
    afar[place] = 1;
    const other = climb(logLikelihood, guide, afar, best.free, lower);
    best = Math.abs(other.theta[place]!) > SMALL && other.value > lower.value + WORTH ? other : { ...lower, ...countsOf(other) };
  }
  for (const place of sds) best.theta[place] = Math.abs(best.theta[place]!);
  return best;
}

function countsOf({ iterations, evaluations }: Climb): { iterations: number; evaluations: number } {
  return { iterations, evaluations };
}

function climb(
  logLikelihood: LogLikelihood,
  guide: LogLikelihood,
  start: Float64Array,
  free: readonly number[],
  before: { readonly iterations: number; readonly evaluations: number } = { iterations: 0, evaluations: 0 },
): Climb {
  const from = Float64Array.from(free, (place) => start[place]!);
  const { inverse } = curvatureInverse(differencedHessian(heldAt(guide, start, free), from));
  const top = maximise(heldAt(logLikelihood, start, free), from, { inverse });
  const theta = start.slice();
  for (let i = 0; i < free.length; i++) theta[free[i]!] = top.theta[i]!;
  return {
    theta,
    value: top.value,
    free,
    iterations: before.iterations + top.iterations,
    evaluations: before.evaluations + top.evaluations + 2 * free.length,
    converged: top.converged,
  };
}
