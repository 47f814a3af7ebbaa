import type { LogLikelihood } from "./LogLikelihood.js";

/**
 * Matrix of second derivatives by central differences of the gradient, row after row, made symmetric. Steps are `step` in
 * each parameter, so parameters should be of the order of one. Error of the order of `step` squared.
 */
export function differencedHessian(logLikelihood: LogLikelihood, theta: Float64Array, step = 1e-3): Float64Array {
  const size = theta.length;
  const hessian = new Float64Array(size * size);
  const at = theta.slice();
  const ahead = new Float64Array(size);
  const behind = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    at[i] = theta[i]! + step;
    const up = logLikelihood(at, ahead);
    at[i] = theta[i]! - step;
    const down = logLikelihood(at, behind);
    at[i] = theta[i]!;
    for (let j = 0; j < size; j++) {
      const slope = up === -Infinity || down === -Infinity ? NaN : (ahead[j]! - behind[j]!) / (2 * step);
      hessian[i * size + j]! += slope / 2;
      hessian[j * size + i]! += slope / 2;
    }
  }
  return hessian;
}
