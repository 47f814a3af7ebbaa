import type { Point } from "./Point.js";
import type { Points } from "./Points.js";
import { configured } from "./shape/configured.js";
import { landmarksOf } from "./shape/landmarksOf.js";
import { requireSameLandmarks } from "./shape/requireSameLandmarks.js";
import { superimposed } from "./shape/superimposed.js";

/** Shapes laid on their mean shape. */
export interface GeneralProcrustes {
  /** Mean of the aligned shapes, lying as the first shape does. */
  readonly mean: readonly Point[];
  /** Each shape centred, divided by its centroid size and turned, in the order given. */
  readonly aligned: readonly (readonly Point[])[];
  /** Root of the sum of squared distances from the mean landmark, of each shape as given. */
  readonly centroidSizes: readonly number[];
  /** Sum of squared distances of the aligned landmarks from the mean shape. */
  readonly ss: number;
  readonly shapes: number;
  readonly landmarks: number;
  readonly iterations: number;
}

/**
 * Generalised Procrustes superimposition: place, size and turn are taken out of a set of shapes, and what varies is shape.
 *
 * Method: every shape is centred and divided by its centroid size, then turned onto the mean of all until the mean stands still
 * (partial Procrustes: shapes keep size 1). Nothing is mirrored; turn left feet into right ones with `mirrored` before. Landmarks
 * must correspond in order. Every shape counts the same, so a horse with more feet weighs more.
 *
 * Errors (`EstimateError`): `too_few` for fewer than two shapes; `length_mismatch`; `not_a_number`; `no_variation` when all landmarks
 * of a shape lie in one place; `not_converged`.
 *
 * Source: Gower JC (1975) Psychometrika 40:33-51; Rohlf FJ, Slice D (1990) Syst Zool 39:40-59.
 */
export function generalProcrustes(shapes: readonly Points[]): GeneralProcrustes {
  const landmarks = requireSameLandmarks(shapes, 2);
  const sets = shapes.map((shape, i) => configured(shape, `shape ${i + 1}`));
  const { aligned, mean, iterations } = superimposed(sets.map(({ unit }) => unit));
  let ss = 0;
  for (const shape of aligned) for (let k = 0; k < mean.length; k += 1) ss += (shape[k]! - mean[k]!) ** 2;
  return {
    mean: landmarksOf(mean),
    aligned: aligned.map(landmarksOf),
    centroidSizes: sets.map(({ size }) => size),
    ss,
    shapes: shapes.length,
    landmarks,
    iterations,
  };
}
