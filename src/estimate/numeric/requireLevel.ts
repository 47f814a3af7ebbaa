import { EstimateError } from "../EstimateError.js";
import { requireNumber } from "./requireNumber.js";

/**
 * The confidence level itself when it lies between 0 and 1, ends excluded.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function requireLevel(level: number): number {
  requireNumber("confidence level", level);
  if (level > 0 && level < 1) return level;
  throw new EstimateError(
    "out_of_range",
    `Found ${level} as confidence level; it must lie between 0 and 1.`,
    "Give the level as a fraction, such as 0.95.",
  );
}
