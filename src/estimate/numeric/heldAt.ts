import type { LogLikelihood } from "./LogLikelihood.js";

/** The log-likelihood as a function of the parameters at `free` alone, the others held where they are in `theta`. */
export function heldAt(logLikelihood: LogLikelihood, theta: Float64Array, free: readonly number[]): LogLikelihood {
  const whole = theta.slice();
  const wholeGradient = new Float64Array(theta.length);
  return (part, gradient) => {
    for (let i = 0; i < free.length; i++) whole[free[i]!] = part[i]!;
    const value = logLikelihood(whole, wholeGradient);
    for (let i = 0; i < free.length; i++) gradient[i] = wholeGradient[free[i]!]!;
    return value;
  };
}
