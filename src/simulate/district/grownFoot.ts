import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import type { FootMeasures, FootState } from "./FootState.js";

/** A foot before a trim: its measures, and where its wall flares. */
export interface GrownFoot {
  readonly measures: FootMeasures;
  readonly flares: readonly ("toe" | "medial" | "lateral")[];
}

/**
 * A foot some days after its last trim. The toe grows and, where the foot is bare, wears; a shod foot tips back as it grows, a bare one
 * hardly. A wall that flares lies flatter than the wall across from it, and flares come with long gaps.
 */
export function grownFoot(foot: FootState, growthMmPerDay: number, daysSinceTrim: number, random: RandomSource): GrownFoot {
  const { trimmed } = foot;
  const grown = growthMmPerDay * daysSinceTrim * (foot.shod ? 0.95 : 0.45);
  const tipped = foot.shod ? -0.05 * daysSinceTrim : 0.01 * daysSinceTrim;
  const long = Math.max(0, daysSinceTrim - 42);
  const lateral = random.bernoulli(Math.min(0.9, (0.1 + 0.006 * long) * 2 * foot.flareTendency));
  const medial = random.bernoulli(0.02);
  const toe = random.bernoulli(Math.min(0.6, 0.05 + 0.005 * long));
  const measures = {
    ...trimmed,
    hoofWidthMm: trimmed.hoofWidthMm + (lateral ? 2.5 : 0) + (medial ? 2 : 0),
    hoofLengthMm: trimmed.hoofLengthMm + grown * 0.25,
    toeLengthMm: trimmed.toeLengthMm + foot.creepMm + grown,
    heelHeightMm: trimmed.heelHeightMm + grown * 0.4,
    toeAngleDeg: trimmed.toeAngleDeg + tipped - (toe ? 1.5 : 0),
    heelAngleDeg: trimmed.heelAngleDeg + tipped * 1.3,
    lateralWallAngleDeg: trimmed.lateralWallAngleDeg - (lateral ? 5 + 4 * random.uniform() : 0),
    medialWallAngleDeg: trimmed.medialWallAngleDeg - (medial ? 8 + 3 * random.uniform() : 0),
  };
  const flares = [
    ...(toe ? (["toe"] as const) : []),
    ...(medial ? (["medial"] as const) : []),
    ...(lateral ? (["lateral"] as const) : []),
  ];
  return { measures, flares };
}
