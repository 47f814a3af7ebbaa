import { inverse as inverseOf, Matrix } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import { linearPredictor } from "../numeric/linearPredictor.js";

interface ConditionalMaximum {
  readonly estimate: Float64Array;
  readonly inverse: Matrix;
  /** One array a coefficient, one number a stratum. */
  readonly scores: readonly Float64Array[];
  readonly logLik: number;
  readonly iterations: number;
}

/** What a stratum, or several of them, add to the likelihood, its slope and minus its curvature. */
interface Part {
  readonly logLik: number;
  readonly score: Float64Array;
  readonly information: Float64Array;
}

const MOST_ITERATIONS = 100;

/**
 * Maximum of the exact conditional likelihood of strata that stand one after the other, `sizes` rows each.
 *
 * Errors: `separation`, `not_converged`.
 */
export function conditionalLikelihood(
  columns: readonly Float64Array[],
  cases: Float64Array,
  sizes: readonly number[],
  names: readonly string[],
): ConditionalMaximum {
  const p = columns.length;
  const estimate = new Float64Array(p);
  let here = parts(columns, cases, sizes, estimate);
  for (let iterations = 1; iterations <= MOST_ITERATIONS; iterations += 1) {
    const sum = together(here, p);
    const inverse = inverseOf(Matrix.from1DArray(p, p, sum.information));
    const step = inverse.mmul(Matrix.columnVector(sum.score)).to1DArray();
    const move = linearPredictor(columns, step);
    const furthest = move.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (furthest < 1e-9) {
      const scores = columns.map((_, j) => Float64Array.from(here, ({ score }) => score[j]!));
      return { estimate, inverse, scores, logLik: sum.logLik, iterations };
    }
    if (separates(move, cases, sizes, 1e-7 * furthest)) throw separated(step, names);
    let share = 1;
    const next = () =>
      parts(
        columns,
        cases,
        sizes,
        estimate.map((value, j) => value + share * step[j]!),
      );
    let there = next();
    while (!(together(there, p).logLik >= sum.logLik - 1e-9 * (1 + Math.abs(sum.logLik))) && share > 1e-9) {
      share /= 2;
      there = next();
    }
    step.forEach((value, j) => (estimate[j]! += share * value));
    here = there;
  }
  throw new EstimateError(
    "not_converged",
    `The fit did not settle in ${MOST_ITERATIONS} iterations.`,
    "Look for a term that tells the outcome almost without error.",
  );
}

function together(list: readonly Part[], p: number): Part {
  const [score, information] = [new Float64Array(p), new Float64Array(p * p)];
  let logLik = 0;
  for (const part of list) {
    logLik += part.logLik;
    part.score.forEach((value, j) => (score[j]! += value));
    part.information.forEach((value, j) => (information[j]! += value));
  }
  return { logLik, score, information };
}

function parts(columns: readonly Float64Array[], cases: Float64Array, sizes: readonly number[], estimate: Float64Array): Part[] {
  const eta = linearPredictor(columns, estimate);
  let from = 0;
  return sizes.map((size) => {
    const part = stratum(columns, cases, eta, from, from + size);
    from += size;
    return part;
  });
}

/** The sums over all ways to choose as many cases, with first and second derivatives, member by member. */
function stratum(columns: readonly Float64Array[], cases: Float64Array, eta: Float64Array, from: number, to: number): Part {
  const p = columns.length;
  let m = 0;
  let highest = -Infinity;
  for (let i = from; i < to; i += 1) {
    m += cases[i]!;
    highest = Math.max(highest, eta[i]!);
  }
  const ways = new Float64Array(m + 1);
  const slopes = Array.from({ length: m + 1 }, () => new Float64Array(p));
  const bends = Array.from({ length: m + 1 }, () => new Float64Array(p * p));
  ways[0] = 1;
  for (let i = from; i < to; i += 1) {
    const odds = Math.exp(eta[i]! - highest);
    for (let k = Math.min(m, i - from + 1); k >= 1; k -= 1) {
      const [w, s, b] = [ways[k - 1]!, slopes[k - 1]!, bends[k - 1]!];
      for (let j = 0; j < p; j += 1) {
        const x = columns[j]![i]!;
        for (let l = 0; l < p; l += 1) {
          const z = columns[l]![i]!;
          bends[k]![j * p + l]! += odds * (b[j * p + l]! + x * s[l]! + z * s[j]! + x * z * w);
        }
      }
      for (let j = 0; j < p; j += 1) slopes[k]![j]! += odds * (s[j]! + columns[j]![i]! * w);
      ways[k]! += odds * w;
    }
  }
  const mean = slopes[m]!.map((value) => value / ways[m]!);
  const score = mean.map((value) => -value);
  let logLik = -Math.log(ways[m]!) - m * highest;
  for (let i = from; i < to; i += 1) {
    if (cases[i] !== 1) continue;
    logLik += eta[i]!;
    for (let j = 0; j < p; j += 1) score[j]! += columns[j]![i]!;
  }
  const information = bends[m]!.map((value, at) => value / ways[m]! - mean[Math.floor(at / p)]! * mean[at % p]!);
  return { logLik, score, information };
}

/** Whether moving this way ranks no row without the outcome above one with it, in any stratum. */
function separates(move: Float64Array, cases: Float64Array, sizes: readonly number[], slack: number): boolean {
  let from = 0;
  return sizes.every((size) => {
    let [least, most] = [Infinity, -Infinity];
    for (let i = from; i < from + size; i += 1) {
      if (cases[i] === 1) least = Math.min(least, move[i]!);
      else most = Math.max(most, move[i]!);
    }
    from += size;
    return least >= most - slack;
  });
}

function separated(step: readonly number[], names: readonly string[]): EstimateError {
  const largest = Math.max(...step.map(Math.abs));
  const list = names.filter((_, j) => Math.abs(step[j]!) > 1e-4 * largest).map((name) => `"${name}"`);
  return new EstimateError(
    "separation",
    `The term ${list.join(", ")} ${list.length === 1 ? "tells" : "together tell"} within every stratum which rows have the outcome, so there is no finite estimate.`,
    "Leave the term out, or use the exact test of discordant pairs.",
  );
}
