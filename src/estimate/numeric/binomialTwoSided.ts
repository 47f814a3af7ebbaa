import { betaCumulative } from "./betaCumulative.js";
import { logChoose } from "./logChoose.js";

/**
 * Two-sided exact binomial p: probability, for chance `p` strictly between 0 and 1, of all counts no likelier than `cases` of
 * `n`. Likelihoods within a relative 1e-7 count as equal, against rounding.
 */
export function binomialTwoSided(cases: number, n: number, p: number): number {
  const log = (x: number): number => logChoose(n, x) + x * Math.log(p) + (n - x) * Math.log1p(-p);
  const here = log(cases) + Math.log1p(1e-7);
  if (n > MOST_COUNTS)
    return Math.min(
      1,
      bothTails(n, p, (x) => log(x) <= here),
    );
  let sum = 0;
  for (let x = 0; x <= n; x += 1) {
    const there = log(x);
    if (there <= here) sum += Math.exp(there);
  }
  return Math.min(1, sum);
}

/** Counts that are added up one by one at most. */
const MOST_COUNTS = 100_000;

/** P(X up to the last unlikely count below the peak) + P(X from the first unlikely one above it on), from beta distributions. */
function bothTails(n: number, p: number, unlikely: (x: number) => boolean): number {
  const peak = Math.min(n, Math.floor((n + 1) * p));
  if (unlikely(peak)) return 1;
  const below = edge(-1, peak, (x) => x < 0 || unlikely(x));
  const above = edge(n + 1, peak, (x) => x > n || unlikely(x));
  return (
    (below < 0 ? 0 : betaCumulative(1 - p, n - below, below + 1)) + (above > n ? 0 : betaCumulative(p, above, n - above + 1))
  );
}

/** The last count on the way from `outside`, which holds, to `inside`, which does not, that holds. */
function edge(outside: number, inside: number, holds: (x: number) => boolean): number {
  let [out, into] = [outside, inside];
  while (Math.abs(out - into) > 1) {
    const middle = Math.floor((out + into) / 2);
    if (holds(middle)) out = middle;
    else into = middle;
  }
  return out;
}
