import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { quantileSorted } from "simple-statistics";
import type { RandomSource } from "../numeric/RandomSource.js";

/** Draws a quantile rests on. */
const DRAWS = 10_000;

/**
 * The number of standard errors within which all of several contrasts of a normal or t vector stay together with the chance given.
 *
 * Method: the greatest absolute t of all contrasts in 10,000 draws from the covariance, divided by one chi a draw where there are degrees of freedom; its quantile.
 *
 * Source: Montiel Olea JL, Plagborg-Moller M (2019) J Appl Econom 34:1-17 (sup-t bands).
 */
export function simultaneousQuantile(
  covariance: readonly (readonly number[])[],
  contrasts: readonly (readonly number[])[],
  level: number,
  df: number | null,
  random: RandomSource,
): number {
  const size = covariance.length;
  // In units of the standard errors and a shade wider, so that a covariance of less than full rank can be taken apart too.
  const sds = covariance.map((row, j) => Math.sqrt(row[j]!));
  const correlation = new Matrix(
    covariance.map((row, i) => row.map((value, j) => value / (sds[i]! * sds[j]!) + (i === j ? 1e-10 : 0))),
  );
  const lower = new CholeskyDecomposition(correlation).lowerTriangularMatrix;
  const rows = contrasts
    .map((contrast) => {
      const scaled = contrast.map((value, j) => value * sds[j]!);
      return Array.from({ length: size }, (_, k) => scaled.reduce((sum, value, j) => sum + value * lower.get(j, k), 0));
    })
    .map((row) => ({ row, length: Math.hypot(...row) }))
    .filter(({ length }) => length > 0)
    .map(({ row, length }) => row.map((value) => value / length));
  const greatest = Array.from({ length: DRAWS }, () => {
    const z = Array.from({ length: size }, () => random.normal());
    let most = 0;
    for (const row of rows) {
      let sum = 0;
      for (let k = 0; k < size; k += 1) sum += row[k]! * z[k]!;
      most = Math.max(most, Math.abs(sum));
    }
    return df === null ? most : most / Math.sqrt(chiSquare(df, random) / df);
  });
  return quantileSorted(
    greatest.sort((a, b) => a - b),
    level,
  );
}

function chiSquare(df: number, random: RandomSource): number {
  let sum = 0;
  for (let k = 0; k < df; k += 1) sum += random.normal() ** 2;
  return sum;
}
