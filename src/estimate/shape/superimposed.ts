import { EstimateError } from "../EstimateError.js";
import { alignment } from "./alignment.js";

/** Shapes laid on their mean. */
export interface Superimposed {
  /** Each shape of size 1, turned; x and y of each landmark in turn. */
  readonly aligned: readonly Float64Array[];
  /** Mean of the aligned shapes, as it comes: a little smaller than size 1. */
  readonly mean: Float64Array;
  readonly iterations: number;
}

/**
 * Turns shapes of size 1 until they lie as near as they can to their common mean, which is then turned to lie on the first shape.
 *
 * Errors: `not_converged` after 1000 rounds.
 */
export function superimposed(shapes: readonly Float64Array[]): Superimposed {
  let mean = shapes[0]!;
  for (let round = 1; round <= 1000; round += 1) {
    const target = mean;
    const aligned = shapes.map((shape) => turned(shape, alignment(target, shape)));
    mean = meanOf(aligned);
    let moved = 0;
    for (let k = 0; k < mean.length; k += 1) moved = Math.max(moved, Math.abs(mean[k]! - target[k]!));
    if (moved > 1e-14) continue;
    const home = alignment(shapes[0]!, mean);
    return { aligned: aligned.map((shape) => turned(shape, home)), mean: turned(mean, home), iterations: round };
  }
  throw new EstimateError(
    "not_converged",
    "The shapes did not settle on a common mean in 1000 rounds.",
    "Check that all sets list the same landmarks in the same order.",
  );
}

function turned(shape: Float64Array, { cosine, sine }: { readonly cosine: number; readonly sine: number }): Float64Array {
  const result = new Float64Array(shape.length);
  for (let k = 0; k < shape.length; k += 2) {
    result[k] = cosine * shape[k]! - sine * shape[k + 1]!;
    result[k + 1] = sine * shape[k]! + cosine * shape[k + 1]!;
  }
  return result;
}

function meanOf(shapes: readonly Float64Array[]): Float64Array {
  const mean = new Float64Array(shapes[0]!.length);
  for (const shape of shapes) for (let k = 0; k < mean.length; k += 1) mean[k]! += shape[k]!;
  return mean.map((sum) => sum / shapes.length);
}
