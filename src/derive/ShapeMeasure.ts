import type { HoofShape } from "./hoofShape.js";
import type { FootVisit } from "../study/FootVisit.js";

/** A number that describes the shape of one foot: what was measured, and the indices made of it. */
export type ShapeMeasure =
  | keyof Pick<
      FootVisit,
      | "hoofWidthMm"
      | "hoofLengthMm"
      | "toeLengthMm"
      | "heelHeightMm"
      | "toeAngleDeg"
      | "heelAngleDeg"
      | "frogWidthMm"
      | "frogLengthMm"
      | "medialWallAngleDeg"
      | "lateralWallAngleDeg"
    >
  | keyof Omit<HoofShape, "flatterWall">;
