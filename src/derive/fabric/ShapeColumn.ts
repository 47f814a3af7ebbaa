/** A measure of a foot as a column of `visits.csv`. */
export interface ShapeColumn {
  readonly field:
    | "hoofWidthMm"
    | "hoofLengthMm"
    | "toeLengthMm"
    | "heelHeightMm"
    | "toeAngleDeg"
    | "heelAngleDeg"
    | "frogWidthMm"
    | "frogLengthMm"
    | "medialWallAngleDeg"
    | "lateralWallAngleDeg";
  readonly column: string;
  readonly title: string;
  readonly unit: "mm" | "deg";
  /** To what step it is usually read. */
  readonly step: number;
  /** What changes together on one foot, as width and wall angle do with a flare. */
  readonly moves: "wall" | "toe" | "heel" | "frog";
}
