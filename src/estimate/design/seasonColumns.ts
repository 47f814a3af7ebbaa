import { dayNumber } from "../../study/dayNumber.js";
import { EstimateError } from "../EstimateError.js";
import type { DesignColumn } from "./DesignColumn.js";

/**
 * Sine and cosine of the year, period 365.25 days counted from 1970-01-01, for each harmonic.
 *
 * Errors: `not_a_date` with the column and the row.
 */
export function seasonColumns(
  rows: readonly object[],
  used: Int32Array,
  column: string,
  harmonics: number,
): readonly DesignColumn[] {
  const days = Float64Array.from(used, (index) => {
    const date = (rows[index] as Readonly<Record<string, unknown>>)[column];
    const day = typeof date === "string" ? dayNumber(date) : null;
    if (day !== null) return day;
    throw new EstimateError(
      "not_a_date",
      `Column "${column}" holds ${JSON.stringify(date)} in row ${index + 1}, which is not a date.`,
      "Write dates as YYYY-MM-DD.",
    );
  });
  return Array.from({ length: harmonics }, (_, k) => {
    const angles = days.map((day) => (2 * Math.PI * (k + 1) * day) / 365.25);
    const suffix = k === 0 ? "" : ` ${k + 1}`;
    return [
      { name: `${column}: sine${suffix}`, values: angles.map(Math.sin) },
      { name: `${column}: cosine${suffix}`, values: angles.map(Math.cos) },
    ];
  }).flat();
}
