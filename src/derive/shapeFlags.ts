import type { HorseStay } from "../study/HorseStay.js";
import type { Settings } from "../study/Settings.js";
import { heldToThreshold } from "./heldToThreshold.js";
import type { HoofShape } from "./hoofShape.js";
import type { ShapeFlag } from "./ShapeFlag.js";

/** Whether a foot is past a threshold of the settings; null when that cannot be said. */
export interface ShapeFlags {
  /** Frog index below the threshold. */
  readonly contracted: boolean | null;
  /** Gap between toe and heel angle at or above the threshold. */
  readonly underrun: boolean | null;
  /** Every threshold that could be put to the foot, raised or not, with its value and source. */
  readonly flags: readonly ShapeFlag[];
}

/**
 * Flags of a shape. They sort records; they are no diagnosis.
 *
 * Method: contracted is a frog index below `contractedFrogIndex`, underrun a gap at or above `underrunGapDeg`. The thresholds were
 * made for horses and ponies, so other species get no flags; published cut-offs conflict, so they are settings.
 *
 * Missing: null when the index is null or the animal is no horse or pony. A species that is not recorded is taken as horse.
 *
 * Source: Turner TA, objective assessment of hoof balance (frog below 0.67, gap from 5 degrees); others in `shapeThresholds`.
 */
export function shapeFlags(
  shape: Pick<HoofShape, "frogIndex" | "toeHeelGapDeg">,
  species: HorseStay["species"],
  settings: Pick<Settings, "contractedFrogIndex" | "underrunGapDeg">,
): ShapeFlags {
  const flagged = species === null || species === "horse" || species === "pony";
  const { frogIndex, toeHeelGapDeg } = shape;
  const contracted =
    flagged && frogIndex !== null ? heldToThreshold("contracted", frogIndex, settings.contractedFrogIndex) : null;
  const underrun = flagged && toeHeelGapDeg !== null ? heldToThreshold("underrun", toeHeelGapDeg, settings.underrunGapDeg) : null;
  return {
    contracted: contracted?.raised ?? null,
    underrun: underrun?.raised ?? null,
    flags: [contracted, underrun].filter((flag) => flag !== null),
  };
}
