import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { EstimateError } from "./EstimateError.js";
import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { coordinates } from "./shape/coordinates.js";
import { landmarksOf } from "./shape/landmarksOf.js";
import { requireSameLandmarks } from "./shape/requireSameLandmarks.js";

/** One direction in which shapes vary. */
export interface ShapeComponent {
  /** Variance of the scores, divisor n - 1. */
  readonly variance: number;
  /** Share of the whole variance. */
  readonly proportion: number;
  /** How each landmark moves when the score rises by 1; the squares sum to 1, and the largest movement is positive. */
  readonly direction: readonly Point[];
  /** Score of each shape, in the order given. */
  readonly scores: readonly number[];
}

/** Principal components of shape. */
export interface ShapePrincipalComponents {
  readonly mean: readonly Point[];
  /** By falling variance; those without variance are left out. */
  readonly components: readonly ShapeComponent[];
  /** Sum of the variances of all coordinates. */
  readonly totalVariance: number;
  readonly shapes: number;
  readonly landmarks: number;
}

/**
 * Principal components of aligned shapes, such as those of `generalProcrustes`. They describe how this set of shapes varies; feet of
 * one horse vary together, and no test follows from them.
 *
 * Method: singular values of the coordinates less their means, in the space in which the shapes are aligned, not projected onto its
 * tangent; for feet the two differ little.
 *
 * Errors (`EstimateError`): `too_few` for fewer than two shapes; `length_mismatch`; `not_a_number`; `no_variation` when all are equal.
 *
 * Source: Dryden IL, Mardia KV (1998) Statistical Shape Analysis, section 5.5.
 */
export function shapePrincipalComponents(aligned: readonly Points[]): ShapePrincipalComponents {
  const landmarks = requireSameLandmarks(aligned, 2);
  const n = aligned.length;
  const table = new Matrix(
    aligned.map((shape) => {
      const { x, y } = coordinates(shape);
      return Array.from({ length: 2 * landmarks }, (_, k) => (k % 2 === 0 ? x[k / 2]! : y[(k - 1) / 2]!));
    }),
  );
  const mean = table.mean("column");
  const centred = table.subRowVector(mean);
  const { diagonal, leftSingularVectors, rightSingularVectors } = new SingularValueDecomposition(centred, {
    autoTranspose: true,
  });
  const variances = diagonal.slice(0, Math.min(n - 1, 2 * landmarks)).map((value) => value ** 2 / (n - 1));
  const totalVariance = variances.reduce((sum, value) => sum + value, 0);
  const size = mean.reduce((sum, value) => sum + value * value, 0);
  if (!(totalVariance > 1e-28 * size)) {
    throw new EstimateError("no_variation", "All shapes are equal.", "Principal components need shapes that differ.");
  }
  const kept = variances.filter((variance) => variance > 1e-15 * totalVariance);
  const components = kept.map((variance, j): ShapeComponent => {
    const direction = Float64Array.from(rightSingularVectors.getColumn(j));
    const largest = direction.reduce((most, value) => (Math.abs(value) > Math.abs(most) + 1e-9 ? value : most), 0);
    const sign = largest < 0 ? -1 : 1;
    return {
      variance,
      proportion: variance / totalVariance,
      direction: landmarksOf(direction.map((value) => sign * value)),
      scores: leftSingularVectors.getColumn(j).map((value) => sign * value * diagonal[j]!),
    };
  });
  return { mean: landmarksOf(Float64Array.from(mean)), components, totalVariance, shapes: n, landmarks };
}
