import { EstimateError } from "../EstimateError.js";
import type { ClusteredBinomial } from "../numeric/ClusteredBinomial.js";
import { exchangeable, type EstimatingEquations } from "../numeric/exchangeable.js";
import { pairCorrelation } from "../numeric/pairCorrelation.js";

/** Where the estimating equations came to rest. */
interface GeeParts {
  readonly estimate: Float64Array;
  readonly equations: EstimatingEquations;
  /** Working correlation; 0 under independence or when no cluster has a pair of feet. */
  readonly alpha: number;
  readonly phi: number;
  readonly paired: boolean;
  readonly iterations: number;
}

const MOST_ITERATIONS = 200;
const REST = 1e-10;

/**
 * Solves the estimating equations by Fisher scoring from the independence fit `start`, the working correlation and dispersion being
 * recomputed before each step: `phi` a number, `estimated` anew as the weighted mean square of the Pearson residuals, or held at
 * their plain mean square in the `independence` fit; alpha the mean product within clusters over phi; the means are
 * over `less` feet and pairs fewer than there are.
 *
 * Errors: `out_of_range` when alpha leaves what a correlation in clusters of that size can be; `not_converged`.
 */
export function geeParts(
  data: ClusteredBinomial,
  start: Float64Array,
  correlation: "exchangeable" | "independence",
  scale: "independence" | "estimated" | number,
  less: number,
): GeeParts {
  const held = scale === "independence" ? pairCorrelation(data, start, less).square : scale;
  const largest = data.sizes.reduce((most, size) => Math.max(most, size), 0);
  const estimate = start.slice();
  let [alphaBefore, step, share] = [Infinity, Infinity, 1];
  let before = estimate.map(() => 0);
  for (let iterations = 0; iterations <= MOST_ITERATIONS; iterations += 1) {
    const { product, weightedSquare } = pairCorrelation(data, estimate, less);
    const phi = held === "estimated" ? weightedSquare : held;
    const alpha = correlation === "independence" || product === null ? 0 : product / phi;
    requireCorrelation(alpha, largest);
    const equations = exchangeable(data, estimate, alpha);
    if (step < REST && Math.abs(alpha - alphaBefore) < REST) {
      return { estimate, equations, alpha, phi, paired: product !== null, iterations };
    }
    const change = Float64Array.from(equations.inverse.mmul(equations.score).to1DArray());
    // Steps to and fro between coefficients and correlation: half steps settle what whole ones would repeat.
    if (dot(change, before) < -dot(before, before) / 4) share = 0.5;
    change.forEach((value, j) => (estimate[j]! += share * value));
    step = Math.max(...change.map(Math.abs));
    before = change;
    alphaBefore = alpha;
  }
  throw new EstimateError(
    "not_converged",
    `The estimating equations did not settle in ${MOST_ITERATIONS} steps.`,
    'Use fewer terms, or correlation: "independence".',
  );
}

function dot(a: Float64Array, b: Float64Array): number {
  return a.reduce((sum, value, j) => sum + value * b[j]!, 0);
}

function requireCorrelation(alpha: number, largest: number): void {
  if (alpha < 1 - 1e-9 && (largest - 1) * alpha > -1 + 1e-9) return;
  throw new EstimateError(
    "out_of_range",
    `The correlation within clusters comes out at ${alpha.toPrecision(4)}, which clusters of ${largest} cannot have.`,
    'Use correlation: "independence", whose robust errors need no working correlation.',
  );
}
