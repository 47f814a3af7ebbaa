import type { Matrix } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import type { Family } from "./Family.js";
import { leastSquares } from "./leastSquares.js";
import { linearPredictor } from "./linearPredictor.js";

/** A generalised linear model with its data: totals `y` over `m` units a row, one row an entry. */
export interface IrlsProblem {
  readonly family: Family;
  readonly columns: readonly Float64Array[];
  readonly y: Float64Array;
  readonly m: Float64Array;
  /** Known part of the linear predictor. */
  readonly offset?: Float64Array | undefined;
}

/** Where the iteration came to rest. */
export interface IrlsFit {
  readonly estimate: Float64Array;
  /** Inverse of the information. */
  readonly inverse: Matrix;
  /** Linear predictor, offset included. */
  readonly eta: Float64Array;
  readonly deviance: number;
  readonly iterations: number;
  /**
   * Null at a maximum. Otherwise coefficients along which the likelihood rises for ever: moving that way no row's expectation goes
   * away from what was seen, and some go nearer.
   */
  readonly separation: Float64Array | null;
}

const MOST_ITERATIONS = 200;
/** The largest change of a linear predictor at which the iteration rests; the next would be its square. */
const REST = 1e-9;
/** How far against a row a direction may go, beside the furthest it goes, and still count as separating. */
const SEPARATES = 1e-7;

/**
 * Maximum likelihood by iteratively reweighted least squares: Newton's method for a canonical link, each step by QR, halved while the
 * deviance rises. Separation is not guessed from large numbers: a step is proof of it when it moves no row the wrong way.
 *
 * Errors: `not_converged`.
 *
 * Source: McCullagh P, Nelder JA, Generalized Linear Models (iteration); Albert A, Anderson JA (1984) Biometrika 71:1-10 (separation).
 */
export function irls(problem: IrlsProblem, start?: Float64Array): IrlsFit {
  const { columns, offset } = problem;
  const estimate = start?.slice() ?? initialEstimate(problem);
  let eta = linearPredictor(columns, estimate, offset);
  let deviance = totalDeviance(problem, eta);
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations += 1) {
    const { estimate: step, inverse } = newtonStep(problem, eta);
    const move = linearPredictor(columns, step);
    const furthest = move.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (furthest < REST) return { estimate, inverse, eta, deviance, iterations, separation: null };
    if (separates(problem, move, SEPARATES * furthest)) {
      return { estimate, inverse, eta, deviance, iterations, separation: step };
    }
    let share = 1;
    let next = moved(eta, move, share);
    let nextDeviance = totalDeviance(problem, next);
    while (!(nextDeviance <= deviance + 1e-9 * (1 + Math.abs(deviance))) && share > 1e-9) {
      share /= 2;
      next = moved(eta, move, share);
      nextDeviance = totalDeviance(problem, next);
    }
    for (let j = 0; j < step.length; j += 1) estimate[j]! += share * step[j]!;
    [eta, deviance] = [next, nextDeviance];
  }
  throw new EstimateError(
    "not_converged",
    `The fit did not settle in ${MOST_ITERATIONS} iterations.`,
    "Look for a term that tells the outcome almost without error, or for an outlying value.",
  );
}

function initialEstimate({ family, columns, y, m, offset }: IrlsProblem): Float64Array {
  const eta = y.map((value, i) => family.start(value, m[i]!));
  const scale = eta.map((value, i) => Math.sqrt(m[i]! * family.variance(value)));
  return leastSquares(columns, offset === undefined ? eta : eta.map((value, i) => value - offset[i]!), scale).estimate;
}

function newtonStep({ family, columns, y, m }: IrlsProblem, eta: Float64Array): { estimate: Float64Array; inverse: Matrix } {
  const weights = eta.map((value, i) => m[i]! * family.variance(value));
  const response = eta.map((value, i) => (weights[i]! < 1e-290 ? 0 : family.residual(y[i]!, m[i]!, value) / weights[i]!));
  return leastSquares(columns, response, weights.map(Math.sqrt));
}

function totalDeviance({ family, y, m }: IrlsProblem, eta: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < eta.length; i += 1) sum += family.deviance(y[i]!, m[i]!, eta[i]!);
  return sum;
}

function moved(eta: Float64Array, move: Float64Array, share: number): Float64Array {
  return eta.map((value, i) => value + share * move[i]!);
}

function separates({ family, y, m }: IrlsProblem, move: Float64Array, slack: number): boolean {
  return move.every((value, i) => (y[i] === 0 || value >= -slack) && (y[i]! >= family.most(m[i]!) || value <= slack));
}
