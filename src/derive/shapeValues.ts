import type { FootVisit } from "../study/FootVisit.js";
import { hoofShape } from "./hoofShape.js";
import type { ShapeMeasure } from "./ShapeMeasure.js";

/**
 * Every shape measure of one row, measured and derived; see `shapeDefinitions` for what each is.
 *
 * Missing: null where a measure, or one of those it is made of, was not taken.
 */
export function shapeValues(visit: FootVisit): Readonly<Record<ShapeMeasure, number | null>> {
  const { shapeIndex, frogIndex, toeHeelRatio, toeHeelGapDeg, wallAngleDifferenceDeg } = hoofShape(visit);
  const { hoofWidthMm, hoofLengthMm, toeLengthMm, heelHeightMm, toeAngleDeg, heelAngleDeg } = visit;
  const { frogWidthMm, frogLengthMm, medialWallAngleDeg, lateralWallAngleDeg } = visit;
  return {
    ...{ hoofWidthMm, hoofLengthMm, toeLengthMm, heelHeightMm, toeAngleDeg, heelAngleDeg },
    ...{ frogWidthMm, frogLengthMm, medialWallAngleDeg, lateralWallAngleDeg },
    ...{ shapeIndex, frogIndex, toeHeelRatio, toeHeelGapDeg, wallAngleDifferenceDeg },
  };
}
