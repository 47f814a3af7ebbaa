import type { ShapeMeasure } from "./ShapeMeasure.js";

/** What a shape measure is, to be printed beside every figure of it. */
export interface ShapeDefinition {
  readonly title: string;
  /** `mm`, `deg`, or null for a ratio. */
  readonly unit: "mm" | "deg" | null;
  /** Digits after the point that a reading carries. */
  readonly digits: number;
  readonly definition: string;
  readonly source: string;
}

const practice = "common practice, no source";
const turner = "Turner TA, Objective assessment of hoof balance";

/** Definition of every shape measure. Two records may be compared only when both were measured in this way. */
// prettier-ignore
export const shapeDefinitions: Readonly<Record<ShapeMeasure, ShapeDefinition>> = {
  hoofWidthMm: { title: "Hoof width", unit: "mm", digits: 0, definition: "widest part of the bare ground surface, at right angles to the midline", source: practice },
  hoofLengthMm: { title: "Hoof length", unit: "mm", digits: 0, definition: "tip of the toe to the line across the heel buttresses, not the bulbs", source: practice },
  toeLengthMm: { title: "Toe length", unit: "mm", digits: 0, definition: "hairline to ground at mid-toe, along the wall, without the shoe", source: practice },
  heelHeightMm: { title: "Heel height", unit: "mm", digits: 0, definition: "hairline to ground at the heel, vertical", source: practice },
  toeAngleDeg: { title: "Toe angle", unit: "deg", digits: 1, definition: "toe wall to ground plane", source: practice },
  heelAngleDeg: { title: "Heel angle", unit: "deg", digits: 1, definition: "heel tubules to ground plane", source: practice },
  frogWidthMm: { title: "Frog width", unit: "mm", digits: 0, definition: "widest part of the frog, at its base", source: practice },
  frogLengthMm: { title: "Frog length", unit: "mm", digits: 0, definition: "apex to base of the frog", source: practice },
  medialWallAngleDeg: { title: "Inner wall angle", unit: "deg", digits: 1, definition: "inner quarter wall to ground plane", source: practice },
  lateralWallAngleDeg: { title: "Outer wall angle", unit: "deg", digits: 1, definition: "outer quarter wall to ground plane", source: practice },
  shapeIndex: { title: "Shape index", unit: null, digits: 2, definition: "hoof width over hoof length", source: practice },
  frogIndex: { title: "Frog index", unit: null, digits: 2, definition: "frog width over frog length", source: turner },
  toeHeelRatio: { title: "Toe to heel", unit: null, digits: 2, definition: "toe length over heel height", source: practice },
  toeHeelGapDeg: { title: "Toe-heel gap", unit: "deg", digits: 1, definition: "toe angle minus heel angle; larger is a lower heel", source: turner },
  wallAngleDifferenceDeg: { title: "Outer less inner wall", unit: "deg", digits: 1, definition: "outer wall angle minus inner wall angle; below 0 the outer wall lies flatter", source: practice },
};
