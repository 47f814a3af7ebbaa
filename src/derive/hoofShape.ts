import type { FootVisit } from "../study/FootVisit.js";

/** Shape of one foot at one visit, from its measures. */
export interface HoofShape {
  /** Hoof width over hoof length. */
  readonly shapeIndex: number | null;
  /** Frog width over frog length. */
  readonly frogIndex: number | null;
  /** Toe length over heel height. */
  readonly toeHeelRatio: number | null;
  /** Toe angle minus heel angle, degrees; larger is a lower heel. */
  readonly toeHeelGapDeg: number | null;
  /** Lateral minus medial wall angle, degrees; below 0 the outer wall lies flatter than the inner one. */
  readonly wallAngleDifferenceDeg: number | null;
  /** Side of the wall with the smaller angle to the ground, where a flare shows; null when an angle is missing or both are equal. */
  readonly flatterWall: "medial" | "lateral" | null;
}

/**
 * Shape indices of one foot at one visit.
 *
 * Method: ratios and differences of the measures of one row, so of one stage. Measures before and after a trim are never mixed. Many
 * sound feet have a flatter outer wall, so `flatterWall` alone is no flare.
 *
 * Missing: an index is null when one of its measures is null, and a ratio when its divisor is 0.
 *
 * Source: width over length, frog width over frog length, toe over heel and the gap between toe and heel angle are common practice;
 * Turner TA, objective assessment of hoof balance, uses frog index and gap.
 */
export function hoofShape(visit: FootVisit): HoofShape {
  const wallAngleDifferenceDeg = difference(visit.lateralWallAngleDeg, visit.medialWallAngleDeg);
  return {
    shapeIndex: ratio(visit.hoofWidthMm, visit.hoofLengthMm),
    frogIndex: ratio(visit.frogWidthMm, visit.frogLengthMm),
    toeHeelRatio: ratio(visit.toeLengthMm, visit.heelHeightMm),
    toeHeelGapDeg: difference(visit.toeAngleDeg, visit.heelAngleDeg),
    wallAngleDifferenceDeg,
    flatterWall: flatter(wallAngleDifferenceDeg),
  };
}

function flatter(differenceDeg: number | null): HoofShape["flatterWall"] {
  if (differenceDeg === null || differenceDeg === 0) return null;
  return differenceDeg < 0 ? "lateral" : "medial";
}

function ratio(above: number | null, below: number | null): number | null {
  return above === null || below === null || below === 0 ? null : above / below;
}

function difference(of: number | null, less: number | null): number | null {
  return of === null || less === null ? null : of - less;
}
