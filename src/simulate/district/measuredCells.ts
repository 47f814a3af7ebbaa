import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { FootMeasures } from "./FootState.js";
import { rounded } from "./rounded.js";
import type { VisitCells } from "./VisitCells.js";

/** Standard deviation of reading a gauge or ruler, and the step to which it is read. */
const readings = [
  ["hoofWidthMm", "hoof_width_mm", 1, 0],
  ["hoofLengthMm", "hoof_length_mm", 1, 0],
  ["toeLengthMm", "toe_length_mm", 1, 0],
  ["heelHeightMm", "heel_height_mm", 1, 0],
  ["toeAngleDeg", "toe_angle_deg", 0.6, 0.5],
  ["heelAngleDeg", "heel_angle_deg", 0.8, 0.5],
  ["frogWidthMm", "frog_width_mm", 1, 0],
  ["frogLengthMm", "frog_length_mm", 1.2, 0],
  ["medialWallAngleDeg", "medial_wall_angle_deg", 0.8, 0.5],
  ["lateralWallAngleDeg", "lateral_wall_angle_deg", 0.8, 0.5],
] as const;

/** Measures as somebody reads and writes them down: with an error of reading, to the millimetre or half degree, now and then left out. */
export function measuredCells(measures: FootMeasures, random: RandomSource): VisitCells {
  const cells: VisitCells = {};
  for (const [measure, header, sd, step] of readings) {
    const read = random.normal(measures[measure], sd);
    if (random.bernoulli(0.03)) continue;
    cells[header] = step === 0 ? rounded(read) : rounded(rounded(read / step) * step, 1);
  }
  return cells;
}
