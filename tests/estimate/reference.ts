import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { expect } from "vitest";

const folder = `${import.meta.dirname}/../reference`;

/** Rows of a CSV file of tests/reference; what reads as a number is one. */
export function referenceRows(file: string): Record<string, string | number>[] {
  const records = parse<Record<string, string>>(readFileSync(`${folder}/${file}`), { columns: true });
  return records.map((record) =>
    Object.fromEntries(
      Object.entries(record).map(([name, text]) => [name, text !== "" && Number.isFinite(Number(text)) ? Number(text) : text]),
    ),
  );
}

/** One quantity of one reference fit of regression/references.csv: names and values in the order written there. */
export function referenceNamed(fit: string, quantity: string): readonly (readonly [string, number])[] {
  const rows = referenceRows("regression/references.csv").filter((row) => row["case"] === fit && row["quantity"] === quantity);
  if (rows.length === 0) throw new Error(`no ${quantity} of ${fit}`);
  return rows.map((row) => [String(row["name"]), Number(row["value"])]);
}

/** The values alone. */
export function referenceFit(fit: string): (quantity: string) => number[] {
  return (quantity) => referenceNamed(fit, quantity).map(([, value]) => value);
}

/** Holds each value to its reference within a relative tolerance (absolute where the reference is below 1e-12). */
export function expectNear(values: readonly (number | null | undefined)[], wanted: readonly number[], tolerance: number): void {
  expect(values.length).toBe(wanted.length);
  wanted.forEach((value, i) => {
    const off = Math.abs((values[i] ?? NaN) - value) / Math.max(Math.abs(value), 1e-12);
    expect(off, `value ${i}: ${String(values[i])}, not ${value}`).toBeLessThanOrEqual(tolerance);
  });
}
