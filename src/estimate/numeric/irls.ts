import type { Matrix } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import type { Family } from "./Family.js";
import { leastSquares, type LeastSquares } from "./leastSquares.js";
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
  /** Information of each row, m variance. */
  readonly weights: Float64Array;
  /** y - m mean of each row. */
  readonly residuals: Float64Array;
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
  let here = evaluated(problem, linearPredictor(columns, estimate, offset));
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations += 1) {
    const { estimate: step, inverse } = newtonStep(columns, here);
    const move = linearPredictor(columns, step);
    const furthest = longest(move);
    const separation = furthest >= REST && separates(problem, move, SEPARATES * furthest) ? step : null;
    if (furthest < REST || separation !== null) return { ...here, estimate, inverse, iterations, separation };
    let share = 1;
    let next = evaluated(problem, moved(here.eta, move, share));
    while (!(next.deviance <= here.deviance + 1e-9 * (1 + Math.abs(here.deviance))) && share > 1e-9) {
      share /= 2;
      next = evaluated(problem, moved(here.eta, move, share));
    }
    for (let j = 0; j < step.length; j += 1) estimate[j]! += share * step[j]!;
    here = next;
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

/** A linear predictor with what follows from it. */
type Evaluated = Pick<IrlsFit, "eta" | "weights" | "residuals" | "deviance">;

function evaluated({ family, y, m }: IrlsProblem, eta: Float64Array): Evaluated {
  const weights = new Float64Array(eta.length);
  const residuals = new Float64Array(eta.length);
  return { eta, weights, residuals, deviance: family.evaluate(y, m, eta, weights, residuals) };
}

function newtonStep(columns: readonly Float64Array[], { weights, residuals }: Evaluated): LeastSquares {
  const response = new Float64Array(weights.length);
  const scale = new Float64Array(weights.length);
  for (let i = 0; i < weights.length; i += 1) {
    response[i] = weights[i]! < 1e-290 ? 0 : residuals[i]! / weights[i]!;
    scale[i] = Math.sqrt(weights[i]!);
  }
  return leastSquares(columns, response, scale);
}

function moved(eta: Float64Array, move: Float64Array, share: number): Float64Array {
  const next = new Float64Array(eta.length);
  for (let i = 0; i < eta.length; i += 1) next[i] = eta[i]! + share * move[i]!;
  return next;
}

function longest(move: Float64Array): number {
  let most = 0;
  for (const value of move) most = Math.max(most, Math.abs(value));
  return most;
}

function separates({ family, y, m }: IrlsProblem, move: Float64Array, slack: number): boolean {
  return move.every((value, i) => (y[i] === 0 || value >= -slack) && (y[i]! >= family.most(m[i]!) || value <= slack));
}
