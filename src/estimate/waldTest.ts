import { EigenvalueDecomposition, Matrix, solve } from "ml-matrix";
import type { Coefficient } from "./Coefficient.js";
import { EstimateError } from "./EstimateError.js";
import { chiSquareUpper } from "./numeric/chiSquareUpper.js";
import { fUpper } from "./numeric/fUpper.js";
import type { RegressionFit } from "./RegressionFit.js";

/** A joint test of several coefficients. */
export interface WaldTest {
  readonly names: readonly string[];
  /** Chi-square, or F when the coefficients are tested by t. */
  readonly statistic: number;
  /** Number of coefficients; for F also the degrees of freedom it is judged by. */
  readonly df: readonly [number] | readonly [number, number];
  readonly p: number;
  readonly method: string;
}

/**
 * Wald test that all the named coefficients of a fit are 0: both halves of a season, all levels of a category. It uses the covariance
 * of the fit, so after a fit with clusters it is a robust test. With t tests it is the F test with the least of their degrees of
 * freedom. A name may be a coefficient's (`ground: peat`) or, for a category or season, its column (`ground`).
 *
 * Errors: `unknown_column` for a name the fit does not have; `too_few` when the covariance cannot carry a joint test, as with no
 * more clusters than coefficients.
 *
 * Source: Liang KY, Zeger SL (1986) Biometrika 73:13-22.
 */
export function waldTest(fit: RegressionFit, names: readonly string[]): WaldTest {
  const places = [...new Set(names.flatMap((name) => placesOf(fit.coefficients, name)))];
  const tested = places.map((place) => fit.coefficients[place]!);
  const label = tested.map(({ name }) => name);
  // In units of the standard errors, so that the units of the terms do not matter.
  const correlations = new Matrix(
    places.map((j) => places.map((k) => fit.covariance[j]![k]! / (fit.coefficients[j]!.se * fit.coefficients[k]!.se))),
  );
  const ratios = Matrix.columnVector(tested.map(({ estimate, se }) => estimate / se));
  requireTestable(correlations, label);
  const statistic = ratios.transpose().mmul(solve(correlations, ratios)).get(0, 0);
  const size = tested.length;
  const freedoms = tested.flatMap(({ df }) => (df === null ? [] : [df]));
  const words = `test of ${label.join(", ")}`;
  if (freedoms.length === 0) {
    return { names: label, statistic, df: [size], p: chiSquareUpper(statistic, size), method: `Wald chi-square ${words}` };
  }
  const [f, df] = [statistic / size, Math.min(...freedoms)];
  return { names: label, statistic: f, df: [size, df], p: fUpper(f, size, df), method: `Wald F ${words}` };
}

function placesOf(coefficients: readonly Coefficient[], name: string): readonly number[] {
  const all = coefficients.map((_, place) => place);
  const places = all.filter((place) => coefficients[place]!.name === name);
  if (places.length > 0) return places;
  const under = all.filter(
    (place) => coefficients[place]!.name.startsWith(`${name}: `) && !coefficients[place]!.name.includes(" × "),
  );
  if (under.length > 0) return under;
  throw new EstimateError(
    "unknown_column",
    `The fit has no coefficient "${name}".`,
    `It has ${coefficients.map((coefficient) => `"${coefficient.name}"`).join(", ")}.`,
  );
}

function requireTestable(correlations: Matrix, names: readonly string[]): void {
  const finite = correlations.to1DArray().every(Number.isFinite);
  const least = finite ? Math.min(...new EigenvalueDecomposition(correlations, { assumeSymmetric: true }).realEigenvalues) : 0;
  if (least > 1e-10) return;
  throw new EstimateError(
    "too_few",
    `The errors of ${names.map((name) => `"${name}"`).join(", ")} cannot be told apart, so they cannot be tested together.`,
    "Use more clusters, or test fewer coefficients.",
  );
}
