import { EstimateError } from "../EstimateError.js";
import { requireCount } from "./requireCount.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Checks that `events` over `time` at risk is a rate: a count over a positive number.
 *
 * Errors: `not_a_number`, `not_a_count`; `out_of_range` for negative time; `empty` for no time at risk.
 */
export function requireRate(events: number, time: number): void {
  requireCount("number of events", events);
  requireWithin("time at risk", time, 0, Infinity);
  if (time > 0) return;
  throw new EstimateError("empty", "There is no time at risk, so there is no rate.", "Give a time at risk above 0.");
}
