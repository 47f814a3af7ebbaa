import { Matrix } from "ml-matrix";
import { EstimateError } from "../EstimateError.js";
import { chiSquareQuantile } from "./chiSquareQuantile.js";
import { irls, type IrlsFit, type IrlsProblem } from "./irls.js";

/**
 * Profile likelihood limits of the number a'g, g the coefficients of a fitted model: where the deviance, at its least over all
 * coefficients that give a'g that value, has risen by the chi-square quantile with 1 degree of freedom. `index` names a coefficient
 * that a'g depends on, which is solved for.
 *
 * Errors: `not_converged`.
 *
 * Source: Venzon DJ, Moolgavkar SH (1988) Applied Statistics 37:87-94 for the definition; found here by the secant method on the
 * signed root of the rise, which is nearly a straight line.
 */
export function profileLimits(
  problem: IrlsProblem,
  fit: IrlsFit,
  a: readonly number[],
  index: number,
  level: number,
): readonly [number, number] {
  const target = Math.sqrt(chiSquareQuantile(level, 1));
  const spread = fit.inverse.mmul(Matrix.columnVector([...a])).to1DArray();
  const variance = a.reduce((sum, value, k) => sum + value * spread[k]!, 0);
  const estimate = a.reduce((sum, value, k) => sum + value * fit.estimate[k]!, 0);
  const others = problem.columns.map((_, k) => k).filter((k) => k !== index);
  const pivot = problem.columns[index]!.map((value) => value / a[index]!);
  const columns = others.map((k) => problem.columns[k]!.map((value, i) => value - a[k]! * pivot[i]!));

  /** Root of the rise of the deviance with a'g held `distance` from its estimate. */
  const rise = (distance: number): number => {
    const offset = pivot.map((value, i) => value * (estimate + distance) + (problem.offset?.[i] ?? 0));
    if (columns.length === 0) return Math.sqrt(Math.max(0, alone(problem, offset) - fit.deviance));
    const start = Float64Array.from(others, (k) => fit.estimate[k]! + (spread[k]! / variance) * distance);
    return Math.sqrt(Math.max(0, irls({ ...problem, columns, offset }, start).deviance - fit.deviance));
  };
  const away = (side: number): number => {
    let [before, riseBefore] = [0, 0];
    let distance = side * target * Math.sqrt(variance);
    for (let turn = 0; turn < 50; turn += 1) {
      const now = rise(distance);
      if (Math.abs(now - target) < 1e-10 * target) return distance;
      const step = ((target - now) * (distance - before)) / (now - riseBefore);
      // With large counts the deviances are known less exactly: near the limit, steps that no longer shrink are rounding.
      if (Math.abs(now - target) < 1e-6 * target && !(Math.abs(step) < Math.abs(distance - before))) return distance;
      [before, riseBefore, distance] = [distance, now, distance + step];
    }
    throw new EstimateError("not_converged", "A profile limit was not found in 50 steps.", "Ask for Wald limits.");
  };
  return [estimate + away(-1), estimate + away(1)];
}

function alone({ family, y, m }: IrlsProblem, eta: Float64Array): number {
  return family.evaluate(y, m, eta, new Float64Array(eta.length), new Float64Array(eta.length));
}
