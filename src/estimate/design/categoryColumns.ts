import { EstimateError } from "../EstimateError.js";
import type { DesignColumn } from "./DesignColumn.js";

type Level = string | number | boolean;

/**
 * One column of 0 and 1 for every value of a category but its reference.
 *
 * Errors: `out_of_range` for a value that is not among `levels`, or is neither text, number nor boolean; `no_variation` when the
 * reference or a declared level has no row, or no row has another value than the reference.
 */
export function categoryColumns(
  rows: readonly object[],
  used: Int32Array,
  column: string,
  reference: Level,
  levels?: readonly Level[],
): readonly DesignColumn[] {
  const values = Array.from(used, (index) => (rows[index] as Readonly<Record<string, unknown>>)[column]);
  const found = new Map<Level, number>();
  values.forEach((value, i) => {
    if (!isLevel(value) || (levels !== undefined && value !== reference && !levels.includes(value))) {
      throw new EstimateError(
        "out_of_range",
        `Column "${column}" holds ${JSON.stringify(value)} in row ${used[i]! + 1}, which is not one of its declared levels.`,
        "Add it to the levels, or leave such rows out.",
      );
    }
    found.set(value, (found.get(value) ?? 0) + 1);
  });
  const others = (levels ?? [...found.keys()].sort(inOrder)).filter((level) => level !== reference);
  for (const level of [reference, ...others]) {
    if (found.has(level)) continue;
    throw new EstimateError(
      "no_variation",
      `No row used has ${JSON.stringify(level)} in column "${column}".`,
      `Values found: ${[...found.keys()].map((value) => JSON.stringify(value)).join(", ")}. Declare only levels that occur.`,
    );
  }
  if (others.length === 0) {
    throw new EstimateError(
      "no_variation",
      `Every row used has ${JSON.stringify(reference)} in column "${column}".`,
      "Leave the term out: there is nothing to hold the reference against.",
    );
  }
  return others.map((level) => ({
    name: `${column}: ${String(level)}`,
    values: Float64Array.from(values, (value) => (value === level ? 1 : 0)),
  }));
}

function isLevel(value: unknown): value is Level {
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean";
}

/** Numbers by size, then the rest by code unit, so that no locale decides. */
function inOrder(a: Level, b: Level): number {
  if (typeof a === "number" && typeof b === "number") return a - b;
  return String(a) < String(b) ? -1 : 1;
}
