import type { Foot } from "../study/Foot.js";
import type { FootVisit } from "../study/FootVisit.js";
import { grouped } from "../study/grouped.js";
import { byVisit } from "./byVisit.js";
import { footSide } from "./footSide.js";
import { shapeDefinitions } from "./shapeDefinitions.js";
import type { ShapeMeasure } from "./ShapeMeasure.js";
import { shapeValues } from "./shapeValues.js";

/** One measure of one foot, taken twice on one day with no trim in between. */
export interface RepeatedMeasure {
  readonly horseId: string;
  readonly visitDate: string;
  readonly foot: Foot;
  readonly measure: ShapeMeasure;
  /** The observer whose code comes first in code order. */
  readonly firstObserverId: string;
  readonly secondObserverId: string;
  readonly first: number;
  readonly second: number;
}

/**
 * Measures of two observers side by side, one row for each pair of observers, foot, day and measure, by day, horse, foot and measure: what
 * `intraclassCorrelation`, `standardErrorOfMeasurement` and `blandAltman` are made of.
 *
 * Method: rows of one horse, foot and day with different observers, taken before the trim or with no trim between them; rows after the
 * trim are left out, because a trim changes the shape. The second observer's row may stand under another stage, since a foot has one row
 * for each stage. Of several values of one observer the first counts; three observers make three pairs. What one observer measures twice
 * is not here, since a file holds no second row of it.
 *
 * Missing: a measure that either observer did not take makes no pair. Whether they knew each other's reading is not recorded.
 *
 * Source: own.
 */
export function repeatedMeasures(
  visits: readonly FootVisit[],
  measures: readonly ShapeMeasure[] = Object.keys(shapeDefinitions) as ShapeMeasure[],
): RepeatedMeasure[] {
  const read = visits.filter((row) => row.stage !== "after_trim" && row.observerId !== null && footSide(row.foot) !== null);
  const looks = [...grouped(read, ({ horseId, visitDate, foot }) => [horseId, visitDate, foot].join("\n")).values()].filter(
    (look) => new Set(look.map(({ observerId }) => observerId)).size > 1,
  );
  const pairs = looks.flatMap((look) => {
    const { horseId, visitDate, foot } = look[0]!;
    const values = look.map((row) => ({ observerId: row.observerId!, of: shapeValues(row) }));
    return measures.flatMap((measure) => {
      const readings = new Map<string, number>();
      for (const { observerId, of } of values) {
        const value = of[measure];
        if (value !== null && !readings.has(observerId)) readings.set(observerId, value);
      }
      const inOrder = [...readings].sort(([a], [b]) => (a < b ? -1 : 1));
      return inOrder.flatMap(([firstObserverId, first], place) =>
        inOrder.slice(place + 1).map(([secondObserverId, second]): RepeatedMeasure => ({
          ...{ horseId, visitDate, foot, measure },
          ...{ firstObserverId, secondObserverId, first, second },
        })),
      );
    });
  });
  return pairs.sort((a, b) => byVisit(a, b) || (a.foot < b.foot ? -1 : a.foot > b.foot ? 1 : 0));
}
