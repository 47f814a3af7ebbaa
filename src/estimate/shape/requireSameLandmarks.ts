import { EstimateError } from "../EstimateError.js";
import type { Points } from "../Points.js";

/**
 * Checks that there are `fewest` shapes or more and that all have as many landmarks as the first.
 *
 * Errors: `too_few`; `length_mismatch`, with the place of the shape.
 */
export function requireSameLandmarks(shapes: readonly Points[], fewest: number): number {
  const wanted = shapes[0]?.length ?? 0;
  if (shapes.length < fewest) {
    throw new EstimateError("too_few", `There are ${shapes.length} shapes; ${fewest} or more are needed.`, "Give more shapes.");
  }
  const other = shapes.findIndex((shape) => shape.length !== wanted);
  if (other === -1) return wanted;
  throw new EstimateError(
    "length_mismatch",
    `Shape ${other + 1} has ${shapes[other]!.length} landmarks, the first ${wanted}.`,
    "Give the same landmarks in the same order; outlines can be resampled to the same number of points.",
  );
}
