import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { shapeMeasures } from "./shapeMeasures.js";
import type { ShapeMeasure } from "./ShapeMeasure.js";
import type { ShapeMeasureRow } from "./ShapeMeasureRow.js";

/** One measure of the fore feet beside the same measure of the hind feet of one horse, on one day, at one stage. */
export interface FrontHindContrast extends Pick<
  ShapeMeasureRow,
  "horseId" | "yardId" | "species" | "type" | "ageClass" | "visitDate" | "stage" | "measure"
> {
  /** Mean of the fore feet measured; null when none was. */
  readonly fore: number | null;
  readonly hind: number | null;
  /** Fore minus hind; null when an end is missing. */
  readonly difference: number | null;
  readonly foreFeet: number;
  readonly hindFeet: number;
}

/**
 * Fore feet beside hind feet within a horse, for any shape measure: one row for each horse, day, stage and measure with at least one
 * foot, by day, horse and measure. Breed or type and age class stand in each row, so that they can be kept apart.
 *
 * Method: mean over the feet of an end. The pairing takes out the size of the horse, not of its ends. Several days of one horse are
 * not independent: take one value a horse, or a model with the horse in it. Stages and age classes are never mixed.
 *
 * Missing: an end without the measure is null, and so is the difference. Specimens are left out.
 */
export function frontHindContrasts(
  study: Pick<Study, "visits" | "horses">,
  measures?: readonly ShapeMeasure[],
): FrontHindContrast[] {
  const rows = shapeMeasures(study, measures).filter(({ side }) => side !== null);
  const days = grouped(rows, ({ horseId, visitDate, stage, measure }) => [visitDate, horseId, stage, measure].join("\n"));
  return [...days.values()].map((feet) => {
    const { horseId, yardId, species, type, ageClass, visitDate, stage, measure } = feet[0]!;
    const [fore, hind] = (["fore", "hind"] as const).map((end) =>
      feet.filter((row) => row.end === end).map(({ value }) => value),
    ) as [number[], number[]];
    const [foreMean, hindMean] = [meanOf(fore), meanOf(hind)];
    return {
      ...{ horseId, yardId, species, type, ageClass, visitDate, stage, measure },
      ...{ fore: foreMean, hind: hindMean, foreFeet: fore.length, hindFeet: hind.length },
      difference: foreMean === null || hindMean === null ? null : foreMean - hindMean,
    };
  });
}

function meanOf(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}
