import type { LogLikelihood } from "./LogLikelihood.js";

export interface MaximiseOptions {
  /** Positive definite guess at the inverse of minus the matrix of second derivatives, row after row. */
  readonly inverse: Float64Array;
  /** Stops when the quadratic model promises no more than this; 1e-12 when left out. */
  readonly tolerance?: number;
  /** 200 when left out. */
  readonly iterations?: number;
}

export interface Maximum {
  readonly theta: Float64Array;
  readonly value: number;
  readonly gradient: Float64Array;
  readonly iterations: number;
  readonly evaluations: number;
  readonly converged: boolean;
}

/** No parameter moves further than this in one step. */
const longest = 2;

/**
 * Maximum of a smooth function by the BFGS quasi-Newton method with backtracking. Parameters should be of the order of one.
 *
 * Source: Nocedal J & Wright SJ (2006) Numerical Optimization, 2nd ed., algorithms 3.1 and 6.1.
 */
export function maximise(logLikelihood: LogLikelihood, start: Float64Array, options: MaximiseOptions): Maximum {
  const { tolerance = 1e-12, iterations: most = 200 } = options;
  const size = start.length;
  const inverse = options.inverse.slice();
  const theta = start.slice();
  const gradient = new Float64Array(size);
  const trial = new Float64Array(size);
  const trialGradient = new Float64Array(size);
  const step = new Float64Array(size);
  const change = new Float64Array(size);
  let value = logLikelihood(theta, gradient);
  let evaluations = 1;
  let iterations = 0;
  let idle = 0;
  let converged = false;

  while (iterations < most && value !== -Infinity) {
    const promised = direction(inverse, gradient, step);
    converged = promised < 2 * tolerance;
    if (converged) break;
    const reach = step.reduce((most, part) => Math.max(most, Math.abs(part)), 0);
    let scale = Math.min(1, longest / reach);
    const slack = 1e-13 * Math.abs(value);
    let there = -Infinity;
    for (let halving = 0; halving < 30; halving++, scale /= 2) {
      for (let i = 0; i < size; i++) trial[i] = theta[i]! + scale * step[i]!;
      there = logLikelihood(trial, trialGradient);
      evaluations++;
      if (there >= value + 1e-4 * scale * promised - slack) break;
      there = -Infinity;
    }
    // No uphill left that rounding lets us see.
    if (there === -Infinity) {
      converged = promised < 1e-6;
      break;
    }
    iterations++;
    const gain = there - value;
    for (let i = 0; i < size; i++) {
      step[i] = trial[i]! - theta[i]!;
      change[i] = gradient[i]! - trialGradient[i]!;
      theta[i] = trial[i]!;
      gradient[i] = trialGradient[i]!;
    }
    value = there;
    update(inverse, step, change);
    // A gradient that does not quite belong to the function promises what is not there.
    idle = gain < tolerance ? idle + 1 : 0;
    if (idle === 3) {
      converged = direction(inverse, gradient, step) < 1e-6;
      break;
    }
  }
  return { theta, value, gradient, iterations, evaluations, converged };
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** `step = inverse * gradient`; returns their product with the gradient: twice the gain promised. */
function direction(inverse: Float64Array, gradient: Float64Array, step: Float64Array): number {
  const size = gradient.length;
  for (let i = 0; i < size; i++) step[i] = dot(inverse.subarray(i * size, (i + 1) * size), gradient);
  return dot(step, gradient);
}

function update(inverse: Float64Array, step: Float64Array, change: Float64Array): void {
  const size = step.length;
  const curvature = dot(step, change);
  // Where the function is not concave along the step, the old guess is kept.
  if (!(curvature > 1e-10 * Math.sqrt(dot(step, step) * dot(change, change)))) return;
  const turned = new Float64Array(size);
  const both = 1 + direction(inverse, change, turned) / curvature;
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) {
      inverse[i * size + j]! += (both * step[i]! * step[j]! - turned[i]! * step[j]! - step[i]! * turned[j]!) / curvature;
    }
  }
}
