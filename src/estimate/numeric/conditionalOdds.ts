import { findRoot } from "./findRoot.js";

/** Distribution of a count given all margins, for an odds ratio of 1: logarithms of weights from the lowest count upwards. */
export interface ConditionalCount {
  readonly lowest: number;
  readonly logWeights: readonly number[];
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
  const flat = probabilities(logWeights, 0);
  const here = flat[at]! * (1 + 1e-7);
  const root = (f: (t: number) => number): number => Math.exp(rootOf(f));
  const tail = (t: number, keep: (x: number) => boolean): number => sumWhere(probabilities(logWeights, t), keep);
  return {
    estimate: top === 0 ? null : at === 0 ? 0 : at === top ? Infinity : root((t) => mean(probabilities(logWeights, t)) - at),
    lower: at === 0 || tails.lowerTail === 0 ? 0 : root((t) => tail(t, (x) => x >= at) - tails.lowerTail),
    upper: at === top || tails.upperTail === 0 ? Infinity : root((t) => tails.upperTail - tail(t, (x) => x <= at)),
    pLess: Math.min(
      1,
      sumWhere(flat, (x) => x <= at),
    ),
    pGreater: Math.min(
      1,
      sumWhere(flat, (x) => x >= at),
    ),
    pTwoSided: Math.min(
      1,
      sumWhere(flat, (x) => flat[x]! <= here),
    ),
  };
}

function probabilities(logWeights: readonly number[], t: number): number[] {
  const logs = logWeights.map((weight, x) => weight + t * x);
  const largest = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  const weights = logs.map((log) => Math.exp(log - largest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

function sumWhere(values: readonly number[], keep: (x: number) => boolean): number {
  return values.reduce((sum, value, x) => (keep(x) ? sum + value : sum), 0);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value, x) => sum + value * x, 0);
}

/** Root of a rising function of the log odds ratio, the bracket doubled until it holds it. */
function rootOf(f: (t: number) => number): number {
  let reach = 2;
  while (reach < 1024 && !(f(-reach) <= 0 && f(reach) >= 0)) reach *= 2;
  return findRoot(f, -reach, reach);
}
