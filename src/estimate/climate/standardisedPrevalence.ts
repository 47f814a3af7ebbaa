import { averagedLogistic } from "../numeric/averagedLogistic.js";
import type { FittedModel } from "./fittedModel.js";

interface Slopes {
  readonly mean: number;
  readonly slopes: readonly number[];
}

/** Reads the prevalence of all rows with one coefficient's column set to a value, and differences of two, each with its variance. */
export function standardisedPrevalence(
  { fit, design, parameters, sds }: FittedModel,
  place: number,
): {
  readonly at: (value: number) => { readonly mean: number; readonly variance: number };
  readonly between: (from: number, to: number) => { readonly difference: number; readonly variance: number };
} {
  const beta = fit.coefficients.map(({ estimate }) => estimate);
  const spread = Math.sqrt(sds.reduce((sum, sd) => sum + sd * sd, 0));
  // Rows that agree in everything but the exposure are read once.
  const patterns = new Map<string, { readonly x: readonly number[]; count: number }>();
  for (let i = 0; i < design.n; i += 1) {
    const x = design.columns.map((column, j) => (j === place ? 0 : column[i]!));
    const key = x.join(" ");
    const known = patterns.get(key);
    if (known === undefined) patterns.set(key, { x, count: 1 });
    else known.count += 1;
  }
  const slopesAt = (value: number): Slopes => {
    const slopes = new Array<number>(parameters.length).fill(0);
    let mean = 0;
    for (const { x, count } of patterns.values()) {
      const eta = x.reduce((sum, each, j) => sum + beta[j]! * each, beta[place]! * value);
      const { mean: risk, slope, bend } = averagedLogistic(eta, spread);
      const weight = count / design.n;
      mean += weight * risk;
      x.forEach((each, j) => (slopes[j]! += weight * slope * (j === place ? value : each)));
      sds.filter((sd) => sd > 0).forEach((sd, k) => (slopes[beta.length + k]! += weight * bend * sd * sd));
    }
    return { mean, slopes };
  };
  const variance = (slopes: readonly number[]) =>
    slopes.reduce((sum, a, i) => sum + slopes.reduce((part, b, j) => part + a * b * parameters[i]![j]!, 0), 0);
  return {
    at: (value) => {
      const { mean, slopes } = slopesAt(value);
      return { mean, variance: variance(slopes) };
    },
    between: (from, to) => {
      const [low, high] = [slopesAt(from), slopesAt(to)];
      return { difference: high.mean - low.mean, variance: variance(high.slopes.map((slope, j) => slope - low.slopes[j]!)) };
    },
  };
}
