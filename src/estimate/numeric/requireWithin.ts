import { EstimateError } from "../EstimateError.js";
import { requireNumber } from "./requireNumber.js";

/**
 * The value itself when it is a number from `low` to `high`, both included.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function requireWithin(name: string, value: number, low: number, high: number): number {
  requireNumber(name, value);
  if (value >= low && value <= high) return value;
  const range = high === Infinity ? `${low} or more` : `between ${low} and ${high}`;
  throw new EstimateError("out_of_range", `${name} is ${value}; it must be ${range}.`, `Give a ${name} that is ${range}.`);
}
