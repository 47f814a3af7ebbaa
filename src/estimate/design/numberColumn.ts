import { EstimateError } from "../EstimateError.js";

/**
 * A column of the rows at `used` as numbers; true and false count as 1 and 0.
 *
 * Errors: `not_a_number`, with the column and the row, for text and whatever else is neither number nor boolean;
 * `out_of_range` for numbers that cannot be squared (beyond 1e100, or none above 1e-100).
 */
export function numberColumn(rows: readonly object[], used: Int32Array, column: string): Float64Array {
  const values = new Float64Array(used.length);
  let largest = 0;
  for (let i = 0; i < used.length; i += 1) {
    const value = (rows[used[i]!] as Readonly<Record<string, unknown>>)[column];
    if (typeof value === "number" && Number.isFinite(value)) largest = Math.max(largest, Math.abs((values[i] = value)));
    else if (typeof value === "boolean") values[i] = value ? 1 : 0;
    else throw notANumber(column, value, used[i]! + 1);
  }
  if (largest === 0 || (largest > 1 / BEYOND && largest < BEYOND)) return values;
  throw new EstimateError(
    "out_of_range",
    `The largest number of column "${column}" is ${largest}, whose square is no number.`,
    "Give the column in another unit.",
  );
}

const BEYOND = 1e100;

function notANumber(column: string, value: unknown, row: number): EstimateError {
  const text = JSON.stringify(value);
  return new EstimateError(
    "not_a_number",
    `Column "${column}" holds ${text} in row ${row}, which is not a number.`,
    typeof value === "string"
      ? `For categories say which value the others are held against: { column: "${column}", reference: ${text} }.`
      : "Give numbers, or true and false.",
  );
}
