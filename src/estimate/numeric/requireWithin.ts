import { EstimateError } from "../EstimateError.js";
import { requireNumber } from "./requireNumber.js";

/**
 * The value itself when it is a number from `low` to `high`, both included; `Number.MIN_VALUE` as `low` means above 0.
 *
 * Errors: `not_a_number`; `out_of_range`.
 */
export function requireWithin(name: string, value: number, low: number, high: number): number {
  requireNumber(name, value);
  if (value >= low && value <= high) return value;
  const words = range(low, high);
  throw new EstimateError("out_of_range", `Found ${value} as ${name}; it must be ${words}.`, `Give a number that is ${words}.`);
}

function range(low: number, high: number): string {
  if (low === high) return String(low);
  if (high < Infinity) return `between ${low} and ${high}`;
  return low === Number.MIN_VALUE ? "above 0" : `${low} or more`;
}
