import { betaCumulative } from "../numeric/betaCumulative.js";

/** Ranks, from 1, of the order statistics that enclose a quantile; null where no value is low or high enough. */
export interface RankLimits {
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * The largest rank that lies above the `share` quantile with a probability of at most (1 - level)/2, and the smallest that lies below
 * it with at most that: the number of `n` independent values below the quantile is binomial.
 */
export function binomialRanks(n: number, share: number, level: number): RankLimits {
  const tail = (1 - level) / 2;
  // Chance that k values or more lie below the quantile; it falls from 1 at k = 0 to 0 at n + 1.
  const atLeast = (k: number): number => (k <= 0 ? 1 : k > n ? 0 : betaCumulative(share, k, n - k + 1));
  const firstBelow = (chance: number): number => {
    let [inside, outside] = [0, n + 1];
    while (outside - inside > 1) {
      const middle = (inside + outside) >> 1;
      if (atLeast(middle) <= chance) outside = middle;
      else inside = middle;
    }
    return outside;
  };
  const high = firstBelow(tail);
  // Rank r lies above the quantile when fewer than r values lie below it.
  const low = firstBelow(1 - tail) - 1;
  return { low: low >= 1 && 1 - atLeast(low) <= tail ? low : null, high: high <= n ? high : null };
}
