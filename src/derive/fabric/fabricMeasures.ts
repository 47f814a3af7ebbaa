import type { ShapeColumn } from "./ShapeColumn.js";

/** The measures of a foot that a fabric check compares, with the step to which each is usually read. Common practice, no source. */
export const fabricMeasures: readonly ShapeColumn[] = [
  { field: "hoofWidthMm", column: "hoof_width_mm", title: "hoof width", unit: "mm", step: 1, moves: "wall" },
  { field: "hoofLengthMm", column: "hoof_length_mm", title: "hoof length", unit: "mm", step: 1, moves: "toe" },
  { field: "toeLengthMm", column: "toe_length_mm", title: "toe length", unit: "mm", step: 1, moves: "toe" },
  { field: "heelHeightMm", column: "heel_height_mm", title: "heel height", unit: "mm", step: 1, moves: "heel" },
  { field: "toeAngleDeg", column: "toe_angle_deg", title: "toe angle", unit: "deg", step: 0.5, moves: "toe" },
  { field: "heelAngleDeg", column: "heel_angle_deg", title: "heel angle", unit: "deg", step: 0.5, moves: "heel" },
  { field: "frogWidthMm", column: "frog_width_mm", title: "frog width", unit: "mm", step: 1, moves: "frog" },
  { field: "frogLengthMm", column: "frog_length_mm", title: "frog length", unit: "mm", step: 1, moves: "frog" },
  {
    field: "medialWallAngleDeg",
    column: "medial_wall_angle_deg",
    title: "medial wall angle",
    unit: "deg",
    step: 0.5,
    moves: "wall",
  },
  {
    field: "lateralWallAngleDeg",
    column: "lateral_wall_angle_deg",
    title: "lateral wall angle",
    unit: "deg",
    step: 0.5,
    moves: "wall",
  },
];
