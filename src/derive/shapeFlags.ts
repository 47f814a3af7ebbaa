import type { HorseStay } from "../study/HorseStay.js";
import type { Settings } from "../study/Settings.js";
import type { HoofShape } from "./hoofShape.js";

/** Whether a foot is past a threshold of the settings; null when that cannot be said. */
export interface ShapeFlags {
  /** Frog index below the threshold. */
  readonly contracted: boolean | null;
  /** Gap between toe and heel angle at or above the threshold. */
  readonly underrun: boolean | null;
}

/**
 * Flags of a shape. They sort records; they are no diagnosis.
 *
 * Method: contracted is a frog index below `contractedFrogIndex`, underrun a gap at or above `underrunGapDeg`. The thresholds were
 * made for horses and ponies, so other species get no flags; published cut-offs conflict, so they are settings.
 *
 * Missing: null when the index is null or the animal is no horse or pony. A species that is not recorded is taken as horse.
 *
 * Source: Turner TA, objective assessment of hoof balance (frog below 0.67, gap from 5 degrees).
 */
export function shapeFlags(
  shape: Pick<HoofShape, "frogIndex" | "toeHeelGapDeg">,
  species: HorseStay["species"],
  settings: Pick<Settings, "contractedFrogIndex" | "underrunGapDeg">,
): ShapeFlags {
  const flagged = species === null || species === "horse" || species === "pony";
  const { frogIndex, toeHeelGapDeg } = shape;
  return {
    contracted: flagged && frogIndex !== null ? frogIndex < settings.contractedFrogIndex : null,
    underrun: flagged && toeHeelGapDeg !== null ? toeHeelGapDeg >= settings.underrunGapDeg : null,
  };
}
