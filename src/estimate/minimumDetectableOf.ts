import { repeatedMeasures } from "../derive/repeatedMeasures.js";
import type { ShapeMeasure } from "../derive/ShapeMeasure.js";
import type { FootVisit } from "../study/FootVisit.js";
import { shapeRepeatability } from "./shapeRepeatability.js";

/**
 * Smallest change of one measure between two readings that is more than reading error, from the feet that two observers of this study
 * measured on one day.
 *
 * Missing: null with fewer than `leastFeet` (10) feet measured twice, since the error is then hardly known.
 *
 * Errors (`EstimateError`): `out_of_range` for a level not between 0 and 1.
 *
 * Source: as in `shapeRepeatability`.
 */
export function minimumDetectableOf(
  visits: readonly FootVisit[],
  measure: ShapeMeasure,
  options: { readonly level?: number; readonly leastFeet?: number } = {},
): number | null {
  const { leastFeet = 10, ...rest } = options;
  const [found] = shapeRepeatability(repeatedMeasures(visits, [measure]), rest);
  return found === undefined || found.feet < leastFeet ? null : found.minimumDetectable;
}
