import { EstimateError } from "../EstimateError.js";

/**
 * The value itself as true or false when it is one of them, or 1 or 0.
 *
 * Errors: `not_a_number` for NaN and infinite numbers; `out_of_range` for anything else that is neither yes nor no.
 */
export function requireFinding(name: string, value: unknown): boolean {
  if (value === true || value === 1) return true;
  if (value === false || value === 0) return false;
  throw new EstimateError(
    typeof value === "number" && !Number.isFinite(value) ? "not_a_number" : "out_of_range",
    `Found ${typeof value === "string" ? JSON.stringify(value) : String(value)} as ${name}, which is neither yes nor no.`,
    "Give true or false, or 1 or 0, and null where it was not recorded.",
  );
}
