import { EstimateError } from "./EstimateError.js";
import type { Interval } from "./Interval.js";
import { requireCount } from "./numeric/requireCount.js";
import { wilsonInterval } from "./wilsonInterval.js";

/** Difference of two proportions of the same pairs, between -1 and 1. */
export interface PairedDifference extends Interval {
  readonly estimate: number;
  readonly lower: number;
  readonly upper: number;
  /** Pairs. */
  readonly n: number;
  /** Pairs that disagree. */
  readonly discordant: number;
  /** Correlation within pairs that the limits rest on. */
  readonly phi: number;
}

/**
 * Difference of two proportions seen on the same pairs (the fore and the hind foot of one horse, the same horse in two
 * seasons), with Newcombe's score interval for paired data.
 *
 * Method: of the pairs, `both` are cases twice, `firstOnly` and `secondOnly` once, `neither` never; the estimate is
 * (firstOnly - secondOnly) / n. The Wilson limits of the two proportions are combined with the correlation phi of the pairs,
 * whose numerator is shrunk by n/2 towards zero when positive (method 10). Phi is 0 when a margin is empty.
 *
 * Missing: pairs with one half missing are left out before counting, and are to be reported.
 *
 * Errors: `not_a_number`, `not_a_count`; `empty` for no pairs; `out_of_range` for a level not between 0 and 1.
 *
 * Source: Newcombe RG (1998) Stat Med 17:2635-2650, method 10.
 */
export function newcombePairedDifference(
  both: number,
  firstOnly: number,
  secondOnly: number,
  neither: number,
  options: { readonly level?: number } = {},
): PairedDifference {
  const { level = 0.95 } = options;
  const n = requireCount("pairs with both", both) + requireCount("pairs with the first only", firstOnly);
  const pairs = n + requireCount("pairs with the second only", secondOnly) + requireCount("pairs with neither", neither);
  if (pairs === 0) throw new EstimateError("empty", "There are no pairs.", "Give at least one pair with both halves recorded.");
  const first = wilsonInterval(both + firstOnly, pairs, { level });
  const second = wilsonInterval(both + secondOnly, pairs, { level });
  const phi = shrunkPhi(both, firstOnly, secondOnly, neither);
  const estimate = (firstOnly - secondOnly) / pairs;
  const down = reach(first.estimate - first.lower, second.upper - second.estimate, phi);
  const up = reach(first.upper - first.estimate, second.estimate - second.lower, phi);
  return {
    estimate,
    lower: Math.max(-1, estimate - down),
    upper: Math.min(1, estimate + up),
    level,
    n: pairs,
    discordant: firstOnly + secondOnly,
    phi,
    method: "Newcombe score interval for paired proportions",
    note: null,
  };
}

function shrunkPhi(e: number, f: number, g: number, h: number): number {
  const margins = (e + f) * (g + h) * (e + g) * (f + h);
  if (margins === 0) return 0;
  const excess = e * h - f * g;
  const shrunk = excess > 0 ? Math.max(0, excess - (e + f + g + h) / 2) : excess;
  return shrunk / Math.sqrt(margins);
}

function reach(a: number, b: number, phi: number): number {
  return Math.sqrt(Math.max(0, a * a - 2 * phi * a * b + b * b));
}
