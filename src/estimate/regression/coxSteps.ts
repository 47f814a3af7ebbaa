import { Matrix, solve } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import { coxLikelihood, type CoxData, type CoxLikelihood } from "../numeric/coxLikelihood.js";
import { linearPredictor } from "../numeric/linearPredictor.js";

const MOST_ITERATIONS = 100;
/** The largest change of a linear predictor at which the iteration rests; the next would be its square. */
const REST = 1e-9;
/** How far against an event a direction may go, beside the furthest it goes, and still count as separating. */
const SEPARATES = 1e-7;

/**
 * Maximum of the partial likelihood by Newton's method from coefficients of 0, steps halved while the likelihood falls.
 *
 * Errors: `separation` when a step is proof that the likelihood rises for ever; `not_converged`.
 */
export function coxSteps(
  data: CoxData,
  start: CoxLikelihood,
  names: readonly string[],
  event: string,
): { readonly estimate: Float64Array; readonly fit: CoxLikelihood; readonly iterations: number } {
  const estimate = new Float64Array(names.length);
  let here = start;
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations += 1) {
    const step = solve(here.information, Matrix.columnVector(here.score)).to1DArray();
    const move = linearPredictor(data.columns, step);
    const furthest = move.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (furthest < REST) return { estimate, fit: here, iterations };
    if (separates(data, move, SEPARATES * furthest)) throw separation(names, step, event);
    const next = improved(data, estimate, step, here);
    if (next === null) break;
    here = next;
  }
  throw new EstimateError(
    "not_converged",
    `The proportional hazards fit did not settle in ${MOST_ITERATIONS} iterations.`,
    "Look for a term that tells the order of events almost without error, or for an outlying value.",
  );
}

/** Moves `estimate` by the largest half, quarter ... of the step that does not lower the likelihood; null when none does. */
function improved(data: CoxData, estimate: Float64Array, step: readonly number[], here: CoxLikelihood): CoxLikelihood | null {
  for (let share = 1; share > 1e-9; share /= 2) {
    const trial = estimate.map((value, j) => value + share * step[j]!);
    const next = coxLikelihood(data, linearPredictor(data.columns, trial));
    if (!(next.logLik >= here.logLik - 1e-9 * (1 + Math.abs(here.logLik)))) continue;
    estimate.set(trial);
    return next;
  }
  return null;
}

/** Whether at every event time those with the event are moved no less than anybody else at risk, and somewhere more. */
function separates({ events, starts }: CoxData, move: Float64Array, slack: number): boolean {
  let [most, least, apart] = [-Infinity, Infinity, false];
  for (let block = 0; block + 1 < starts.length; block += 1) {
    for (let i = starts[block]!; i < starts[block + 1]!; i += 1) {
      most = Math.max(most, move[i]!);
      least = Math.min(least, move[i]!);
    }
    for (let i = starts[block]!; i < starts[block + 1]!; i += 1) {
      if (events[i] !== 1) continue;
      if (move[i]! < most - slack) return false;
      if (least < most - slack) apart = true;
    }
  }
  return apart;
}

function separation(names: readonly string[], step: readonly number[], event: string): EstimateError {
  const largest = Math.max(...step.map(Math.abs));
  const guilty = names.filter((_, j) => Math.abs(step[j]!) > 1e-4 * largest).map((name) => `"${name}"`);
  const one = guilty.length === 1;
  return new EstimateError(
    "separation",
    `Of those at risk, "${event}" always happens to the one whose ${guilty.join(", ")} ${one ? "is" : "together are"} outermost, so ${one ? "its coefficient has" : "their coefficients have"} no finite estimate.`,
    "Leave the term out or merge its categories, and show curves by group instead.",
  );
}
