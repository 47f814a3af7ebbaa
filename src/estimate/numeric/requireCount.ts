import { EstimateError } from "../EstimateError.js";
import { requireNumber } from "./requireNumber.js";

/**
 * The value itself when it can be a number of things: whole and not negative.
 *
 * Errors: `not_a_number`; `not_a_count`.
 */
export function requireCount(name: string, value: number): number {
  requireNumber(name, value);
  if (Number.isSafeInteger(value) && value >= 0) return value;
  throw new EstimateError("not_a_count", `Found ${value} as ${name}; a count is needed.`, "Give a whole number, 0 or more.");
}
