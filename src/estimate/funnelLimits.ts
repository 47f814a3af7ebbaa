import { EstimateError } from "./EstimateError.js";
import { betaCumulative } from "./numeric/betaCumulative.js";
import { requireCount } from "./numeric/requireCount.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";

/** Between which shares a group of `n` should lie, if it is like all. */
export interface FunnelLimits {
  readonly n: number;
  readonly lower: number;
  readonly upper: number;
  readonly level: number;
}

/**
 * Exact limits of a funnel plot: between which shares a group of `n` independent things lies with probability `level` when the chance
 * of each is `target`.
 *
 * Method: of the binomial distribution, the smallest count r with P(X <= r) > p, drawn in by the part of its probability that is not
 * needed, (r - (P(X <= r) - p) / P(X = r)) / n, for p = (1 - level)/2 and (1 + level)/2; cut at 0 and 1.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for a group of none; `out_of_range` for a target not between 0 and 1, or the level.
 *
 * Source: Spiegelhalter DJ (2005) Stat Med 24:1185-1202, appendix (the interpolation from memory).
 */
export function funnelLimits(target: number, n: number, options: { readonly level?: number } = {}): FunnelLimits {
  const level = requireLevel(options.level ?? 0.95);
  requireWithin("target", target, 0, 1);
  if (requireCount("size of the group", n) === 0)
    throw new EstimateError("empty", "The group holds nothing.", "Leave groups without an observation out.");
  const [lower, upper] = [(1 - level) / 2, (1 + level) / 2].map((p) => limit(p, target, n)) as [number, number];
  return { n, lower, upper, level };
}

function limit(p: number, target: number, n: number): number {
  if (target === 0 || target === 1) return target;
  const upTo = (count: number) => (count < 0 ? 0 : count >= n ? 1 : betaCumulative(1 - target, n - count, count + 1));
  let [low, high] = [-1, n];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (upTo(middle) > p) high = middle;
    else low = middle;
  }
  const [at, below] = [upTo(high), upTo(high - 1)];
  return Math.min(1, Math.max(0, (high - (at - p) / (at - below)) / n));
}
