import { EstimateError } from "../EstimateError.js";
import { requireCount } from "./requireCount.js";
import { requireWithin } from "./requireWithin.js";

/**
 * Checks that `events` over `time` at risk is a rate: a count over a positive number.
 *
 * Errors: `not_a_number`, `not_a_count`; `out_of_range` for negative time or one too short for a finite rate; `empty` for no time at risk.
 */
export function requireRate(events: number, time: number): void {
  requireCount("number of events", events);
  requireWithin("time at risk", time, 0, Infinity);
  if (time > 0 && Number.isFinite(events / time)) return;
  if (time > 0) {
    throw new EstimateError(
      "out_of_range",
      `${events} events in a time of ${time} are no finite rate.`,
      "Give the time in a larger number of smaller units.",
    );
  }
  throw new EstimateError("empty", "There is no time at risk, so there is no rate.", "Give a time at risk above 0.");
}
