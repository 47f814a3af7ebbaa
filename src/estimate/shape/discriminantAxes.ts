import { inverse, Matrix, SingularValueDecomposition } from "ml-matrix";
import type { DiscriminantRule } from "./discriminantRule.js";

/** Directions that tell classes apart, in the space of the standardised terms. */
export interface DiscriminantAxes {
  readonly singularValues: readonly number[];
  /** One array a direction, one number a term; the spread within classes along each is 1. */
  readonly directions: readonly Float64Array[];
}

/**
 * Singular values and directions of the class means, weighted, about their weighted mean; divisor the number of classes less 1.
 * Directions without spread between classes are left out. The largest number of a direction is positive.
 */
export function discriminantAxes({ means, triangle }: DiscriminantRule, weights: readonly number[]): DiscriminantAxes {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const p = means[0]!.length;
  const middle = Array.from({ length: p }, (_, j) => means.reduce((sum, mean, c) => sum + weights[c]! * mean[j]!, 0) / total);
  const between = means.map((mean, c) =>
    Array.from(mean, (value, j) => Math.sqrt(weights[c]! / (means.length - 1)) * (value - middle[j]!)),
  );
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(new Matrix(between), { autoTranspose: true });
  const rank = Math.min(means.length - 1, p);
  const singularValues = diagonal.slice(0, rank).filter((value) => value > 1e-8 * diagonal[0]!);
  const back = inverse(triangle).transpose();
  const directions = singularValues.map((_, k) => {
    const direction = Float64Array.from(back.mmul(Matrix.columnVector(rightSingularVectors.getColumn(k))).to1DArray());
    const largest = direction.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
    return largest < 0 ? direction.map((value) => 0 - value) : direction;
  });
  return { singularValues, directions };
}
