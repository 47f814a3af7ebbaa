import type { FootLandmarks } from "./FootLandmarks.js";
import type { OutlineOptions } from "./OutlineOptions.js";
import { requireWithin } from "./numeric/requireWithin.js";
import type { Points } from "./Points.js";
import { footFrame } from "./shape/footFrame.js";
import { ringOf } from "./shape/ringOf.js";
import { widthsAt } from "./shape/widthsAt.js";

/** How much a foot narrows towards the toe. Lengths are in the unit of the points. */
export interface ToeTaper {
  /** Width at `fromToe` over the greatest width; lower is more pointed. */
  readonly taper: number;
  readonly widthNearToe: number;
  readonly greatestWidth: number;
  /** Where the foot is widest, as a share of its length from the toe. */
  readonly widestFromToe: number;
  /** Toe to the middle between the heels. */
  readonly length: number;
  /** Greatest width over length. */
  readonly shapeIndex: number;
  /** Where the width near the toe was taken, as a share of the length. */
  readonly fromToe: number;
  /** Says that an open outline was closed; null when it was not. */
  readonly note: string | null;
}

/**
 * Toe taper: width of the ground surface at a quarter of its length from the toe, over its greatest width.
 *
 * Method: the axis runs from the toe to the middle between the heels, which is also the length; widths are taken at right angles to
 * it, across the outline from edge to edge. The greatest width is searched over the whole outline. A half ellipse with its tip at the
 * toe and its widest place at the heels has the root of 7/16, 0.661. Another share of the length than a quarter can be asked for.
 *
 * Errors (`EstimateError`): those of `outlineMoments`; `out_of_range` for landmarks that do not fit each other or the outline, or a
 * share that is not between 0 and 1.
 *
 * Source: common practice, no source: front feet are rounder, hind feet narrower towards the toe. The quarter is this project's choice.
 */
export function toeTaper(
  points: Points,
  landmarks: FootLandmarks,
  options: OutlineOptions & { readonly fromToe?: number } = {},
): ToeTaper {
  const { fromToe = 0.25 } = options;
  requireWithin("share of the length", fromToe, Number.MIN_VALUE, 1);
  const ring = ringOf(points, options);
  const { along, across, length } = footFrame(ring, landmarks);
  // Between two corners the width is the greater of straight lines, so it is greatest at a corner.
  const levels = along.slice().sort();
  const { least, greatest } = widthsAt(along, across, levels);
  let [widest, greatestWidth] = [0, -1];
  for (let i = 0; i < levels.length; i += 1) {
    const width = greatest[i]! - least[i]!;
    if (width > greatestWidth) [widest, greatestWidth] = [levels[i]!, width];
  }
  const near = widthsAt(along, across, Float64Array.of(fromToe * length));
  const widthNearToe = Math.max(0, near.greatest[0]! - near.least[0]!);
  return {
    taper: widthNearToe / greatestWidth,
    widthNearToe,
    greatestWidth,
    widestFromToe: widest / length,
    length,
    shapeIndex: greatestWidth / length,
    fromToe,
    note: ring.note,
  };
}
