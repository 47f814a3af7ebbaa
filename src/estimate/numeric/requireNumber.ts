import { EstimateError } from "../EstimateError.js";

/**
 * The value itself when it is a finite number.
 *
 * Errors: `not_a_number` for NaN, an infinite number or anything that is no number.
 */
export function requireNumber(name: string, value: number): number {
  if (typeof value === "number" && Number.isFinite(value)) return value;
  throw new EstimateError(
    "not_a_number",
    `Found ${String(value)} as ${name}; a finite number is needed.`,
    "Leave out what was not recorded (as null) before estimating; a missing value is never NaN.",
  );
}
