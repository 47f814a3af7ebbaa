import { requireCount } from "./requireCount.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Probability that at least `cases` of independent events happen, each with its own probability; 1 for `cases` of 0 or less.
 *
 * Method: the distribution of the count is built up event by event (exact, all terms positive).
 *
 * Errors: `not_a_number`; `not_a_count`; `out_of_range` for a probability outside 0 to 1.
 */
export function poissonBinomialUpper(cases: number, probabilities: readonly number[]): number {
  probabilities.forEach((p) => requireWithin("chance of an event", p, 0, 1));
  requireCount("number of events", Math.max(0, cases));
  if (cases <= 0) return 1;
  // The last place stands for `cases` or more.
  const chances = new Float64Array(cases + 1);
  chances[0] = 1;
  for (const p of probabilities) {
    for (let count = cases; count > 0; count--) {
      const stays = count === cases ? chances[count]! : chances[count]! * (1 - p);
      chances[count] = stays + chances[count - 1]! * p;
    }
    chances[0] *= 1 - p;
  }
  return chances[cases]!;
}
