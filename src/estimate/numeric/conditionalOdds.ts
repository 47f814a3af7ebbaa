import { findRoot } from "./findRoot.js";

/** Distribution of a count given all margins, for an odds ratio of 1: logarithms of weights from the lowest count upwards. */
export interface ConditionalCount {
  readonly lowest: number;
  readonly logWeights: Float64Array;
}

/** What the conditional distribution says about the odds ratio. */
export interface ConditionalOdds {
  /** Conditional maximum likelihood estimate; 0 or Infinity at the ends, null when only one count is possible. */
  readonly estimate: number | null;
  readonly lower: number;
  readonly upper: number;
  /** Probability, at odds ratio 1, of a count at most the one seen. */
  readonly pLess: number;
  /** Probability, at odds ratio 1, of a count at least the one seen. */
  readonly pGreater: number;
  /** Probability, at odds ratio 1, of all counts no likelier than the one seen. */
  readonly pTwoSided: number;
}

/**
 * Conditional estimate, exact limits and exact p of a common odds ratio from the distribution of one count given the margins.
 *
 * Method: at log odds ratio t the probabilities are proportional to exp(logWeight + t x). The estimate makes the expected
 * count the one seen; `lower` makes P(X >= seen) equal `lowerTail`, `upper` makes P(X <= seen) equal `upperTail`; a tail of 0
 * leaves that side open. In the two-sided p, likelihoods within a relative 1e-7 count as equal, against rounding.
 *
 * Source: Fisher RA (1935) J R Stat Soc 98:39-82; Gart JJ (1970) Biometrika 57:471-475.
 */
export function conditionalOdds(
  { lowest, logWeights }: ConditionalCount,
  seen: number,
  tails: { readonly lowerTail: number; readonly upperTail: number },
): ConditionalOdds {
  const at = seen - lowest;
  const top = logWeights.length - 1;
  const flat = chances(logWeights, 0);
  const root = (f: (t: number) => number): number => Math.exp(rootOf(f));
  const atLeast = (t: number): number => chanceOf(chances(logWeights, t), (x) => x >= at);
  const atMost = (t: number): number => chanceOf(chances(logWeights, t), (x) => x <= at);
  const here = chanceOf(flat, (x) => x === at) * (1 + 1e-7);
  return {
    estimate: top === 0 ? null : at === 0 ? 0 : at === top ? Infinity : root((t) => mean(chances(logWeights, t)) - at),
    lower: at === 0 || tails.lowerTail === 0 ? 0 : root((t) => atLeast(t) - tails.lowerTail),
    upper: at === top || tails.upperTail === 0 ? Infinity : root((t) => tails.upperTail - atMost(t)),
    pLess: Math.min(1, atMost(0)),
    pGreater: Math.min(1, atLeast(0)),
    pTwoSided: Math.min(
      1,
      chanceOf(flat, (_, chance) => chance <= here),
    ),
  };
}

/** Probabilities of the counts from the lowest plus `from` on; those outside are too small for a number. */
interface Chances {
  readonly from: number;
  readonly values: Float64Array;
}

/** The smallest logarithm whose exponential is not 0. */
const VANISHING = -745;

/** Probabilities at a log odds ratio. Logarithms of the weights rise to one peak and fall after it, so only what lies round it is computed. */
function chances(logWeights: Float64Array, t: number): Chances {
  const log = (x: number): number => logWeights[x]! + t * x;
  let [low, high] = [0, logWeights.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (log(middle + 1) > log(middle)) low = middle + 1;
    else high = middle;
  }
  const peak = log(low);
  let [from, to] = [low, low + 1];
  while (from > 0 && log(from - 1) - peak > VANISHING) from -= 1;
  while (to < logWeights.length && log(to) - peak > VANISHING) to += 1;
  const values = new Float64Array(to - from);
  let total = 0;
  for (let i = 0; i < values.length; i += 1) total += values[i] = Math.exp(log(from + i) - peak);
  for (let i = 0; i < values.length; i += 1) values[i]! /= total;
  return { from, values };
}

function chanceOf({ from, values }: Chances, keep: (x: number, chance: number) => boolean): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) if (keep(from + i, values[i]!)) sum += values[i]!;
  return sum;
}

function mean({ from, values }: Chances): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]! * (from + i);
  return sum;
}

/** Root of a rising function of the log odds ratio, the bracket doubled until it holds it. */
function rootOf(f: (t: number) => number): number {
  let reach = 2;
  while (reach < 1024 && !(f(-reach) <= 0 && f(reach) >= 0)) reach *= 2;
  return findRoot(f, -reach, reach);
}
