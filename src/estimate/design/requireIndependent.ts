import { SingularValueDecomposition } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import { stackedQr } from "../numeric/stackedQr.js";
import type { DesignColumn } from "./DesignColumn.js";

/** A column whose part at right angles to the others is smaller than this, relative to itself, repeats them. */
const TOLERANCE = 1e-8;

/**
 * Checks that no column of a design repeats the others: none is constant beside an intercept or zero, none is a sum of multiples
 * of others. Judged on columns centred (with an intercept) and scaled to length 1, by the singular values of their QR triangle.
 *
 * Errors: `too_few` when there are fewer rows than coefficients; `collinear`, naming the columns.
 */
export function requireIndependent(columns: readonly DesignColumn[], n: number, intercept: boolean): void {
  const coefficients = columns.length + (intercept ? 1 : 0);
  if (n < coefficients) {
    throw new EstimateError(
      "too_few",
      `There are ${coefficients} coefficients and ${n} usable rows.`,
      "Use fewer terms or more rows.",
    );
  }
  if (columns.length === 0) return;
  const scaled = columns.map(({ name, values }) => {
    const middle = intercept ? sum(values) / n : 0;
    const moved = values.map((value) => value - middle);
    const length = Math.sqrt(sum(moved.map((value) => value * value)));
    const largest = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (length > 1e-13 * largest * Math.sqrt(n)) return moved.map((value) => value / length);
    throw new EstimateError("collinear", `Column "${name}" is ${values[0]!} in every row used.`, "Leave the term out.");
  });
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(stackedQr(scaled));
  const largest = Math.max(...diagonal);
  const names = columns.filter((_, j) =>
    diagonal.some((value, k) => value <= TOLERANCE * largest && Math.abs(rightSingularVectors.get(j, k)) > 1e-5),
  );
  if (names.length === 0) return;
  throw new EstimateError(
    "collinear",
    `Columns ${names.map(({ name }) => `"${name}"`).join(", ")} repeat each other: one follows from the others.`,
    "Leave out one of the terms they belong to.",
  );
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}
