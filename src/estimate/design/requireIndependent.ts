import { SingularValueDecomposition } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import { stackedQr } from "../numeric/stackedQr.js";
import type { DesignColumn } from "./DesignColumn.js";

/** A column whose part at right angles to the others is smaller than this, relative to itself, repeats them. */
const TOLERANCE = 1e-8;

/**
 * Checks that no column of a design repeats the others: none is constant beside an intercept or zero, none is a sum of multiples
 * of others. Judged on columns centred (with an intercept) and scaled to length 1, by the singular values of their QR triangle. `where`
 * is said in the message when columns repeat each other: " within strata".
 *
 * Errors: `too_few` when there are fewer rows than coefficients; `collinear`, naming the columns.
 */
export function requireIndependent(columns: readonly DesignColumn[], n: number, intercept: boolean, where = ""): void {
  const coefficients = columns.length + (intercept ? 1 : 0);
  if (n < coefficients) {
    throw new EstimateError(
      "too_few",
      `There are ${coefficients} coefficients and ${n} usable rows.`,
      "Use fewer terms or more rows.",
    );
  }
  if (columns.length === 0) return;
  const scaled = columns.map((column) => {
    const moved = intercept ? centred(column.values) : column.values.slice();
    const [length, largest] = [Math.sqrt(sumOfSquares(moved)), largestOf(column.values)];
    if (!(length > 1e-13 * largest * Math.sqrt(n))) {
      throw new EstimateError(
        "collinear",
        `Column "${column.name}" is ${column.values[0]!} in every row used.`,
        "Leave the term out.",
      );
    }
    for (let i = 0; i < moved.length; i += 1) moved[i]! /= length;
    return moved;
  });
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(stackedQr(scaled));
  const largest = Math.max(...diagonal);
  const names = columns.filter((_, j) =>
    diagonal.some((value, k) => value <= TOLERANCE * largest && Math.abs(rightSingularVectors.get(j, k)) > 1e-5),
  );
  if (names.length === 0) return;
  throw new EstimateError(
    "collinear",
    `Columns ${names.map(({ name }) => `"${name}"`).join(", ")} repeat each other${where}: one follows from the others.`,
    "Leave out one of the terms they belong to.",
  );
}

function centred(values: Float64Array): Float64Array {
  let sum = 0;
  for (const value of values) sum += value;
  const [middle, moved] = [sum / values.length, new Float64Array(values.length)];
  for (let i = 0; i < moved.length; i += 1) moved[i] = values[i]! - middle;
  return moved;
}

function sumOfSquares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

function largestOf(values: Float64Array): number {
  let most = 0;
  for (const value of values) most = Math.max(most, Math.abs(value));
  return most;
}
