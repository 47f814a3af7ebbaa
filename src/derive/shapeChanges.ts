import type { ShapeMeasure } from "./ShapeMeasure.js";
import type { ShapeMeasureRow } from "./ShapeMeasureRow.js";
import { grouped } from "../study/grouped.js";

/** Change of one measure of one foot, from the first to the last time it was taken at one stage. */
export interface ShapeChange extends Pick<ShapeMeasureRow, "horseId" | "footId" | "foot" | "end" | "stage" | "measure"> {
  readonly from: string;
  readonly to: string;
  readonly days: number;
  /** Times it was taken. */
  readonly times: number;
  readonly first: number;
  readonly last: number;
  readonly change: number;
  /** Smallest difference of two readings that is more than reading error; null when it is not known. */
  readonly minimumDetectable: number | null;
  /** Larger than the minimum detectable change; null when that is not known: then no change is called real. */
  readonly detectable: boolean | null;
}

/**
 * How far each foot has gone from its first shape, one row for each foot, stage and measure that was taken on two days or more, in the
 * order of the rows given.
 *
 * Method: last minus first reading, held to the minimum detectable change of that measure, which is made for the difference of two
 * readings (`minimumDetectableChange` of the standard error of measurement, from `repeatedMeasures`). A trend over all readings is a
 * matter for a model on the rows themselves. Where one day has several readings the first counts. Specimens have no history.
 *
 * Missing: without a minimum detectable change for a measure, `detectable` is null.
 *
 * Source: common practice, no source; no change below the minimum detectable one is called real.
 */
export function shapeChanges(
  rows: readonly ShapeMeasureRow[],
  minimumDetectable: Partial<Readonly<Record<ShapeMeasure, number>>> = {},
): ShapeChange[] {
  const histories = grouped(
    rows.filter(({ side }) => side !== null),
    ({ footId, stage, measure }) => [footId, stage, measure].join("\n"),
  );
  return [...histories.values()].flatMap((history) => {
    const days = [...grouped(history, ({ visitDate }) => visitDate).values()].map(([reading]) => reading!);
    days.sort((a, b) => a.daysSinceFirst - b.daysSinceFirst);
    const [first, last] = [days[0]!, days.at(-1)!];
    if (days.length < 2) return [];
    const { horseId, footId, foot, end, stage, measure } = first;
    const change = last.value - first.value;
    const least = minimumDetectable[measure] ?? null;
    return [
      {
        ...{ horseId, footId, foot, end, stage, measure },
        ...{ from: first.visitDate, to: last.visitDate, days: last.daysSinceFirst - first.daysSinceFirst, times: days.length },
        ...{ first: first.value, last: last.value, change, minimumDetectable: least },
        detectable: least === null ? null : Math.abs(change) > least,
      },
    ];
  });
}
