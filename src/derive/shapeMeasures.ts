import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { ageClass } from "./ageClass.js";
import { byVisit } from "./byVisit.js";
import { footEnd } from "./footEnd.js";
import { footShoeing } from "./footShoeing.js";
import { footSide } from "./footSide.js";
import { requiredDay } from "./requiredDay.js";
import { shapeDefinitions } from "./shapeDefinitions.js";
import type { ShapeMeasure } from "./ShapeMeasure.js";
import type { ShapeMeasureRow } from "./ShapeMeasureRow.js";
import { shapeValues } from "./shapeValues.js";
import { stayAt } from "./stayAt.js";

/**
 * Shape measures in long form, one row for each foot, day, stage and measure, by day, horse, foot and measure; rows of one foot, stage and
 * measure are its history.
 *
 * Method: `shapeValues` of each row of the visits, with the stay of that day (`stayAt`), the age class and the shoeing of the foot. Filter
 * to one stage before anything is compared: a trim changes the shape. Specimens are included, with no side.
 *
 * Missing: a measure that was not taken has no row.
 */
export function shapeMeasures(
  study: Pick<Study, "visits" | "horses">,
  measures: readonly ShapeMeasure[] = Object.keys(shapeDefinitions) as ShapeMeasure[],
): ShapeMeasureRow[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const firstDays = new Map<string, number>();
  const visits = [...study.visits].sort((a, b) => byVisit(a, b) || (a.foot < b.foot ? -1 : a.foot > b.foot ? 1 : 0));
  return visits.flatMap((visit) => {
    const { horseId, foot, visitDate, stage, observerId } = visit;
    const values = shapeValues(visit);
    const taken = measures.filter((measure) => values[measure] !== null);
    if (taken.length === 0) return [];
    const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
    const day = requiredDay(visitDate);
    const footId = `${horseId} ${foot}`;
    const row = {
      ...{ horseId, footId, yardId: stay?.yardId ?? null, species: stay?.species ?? null, type: stay?.type ?? null },
      ...{ ageClass: ageClass(stay?.birthYear ?? null, visitDate), shoeing: footShoeing(visit, stay), visitDate },
      ...{ daysSinceFirst: 0, foot, end: footEnd(foot), side: footSide(foot), stage, observerId },
    };
    return taken.map((measure): ShapeMeasureRow => {
      const history = `${footId}\n${stage ?? ""}\n${measure}`;
      const firstDay = firstDays.get(history) ?? day;
      firstDays.set(history, firstDay);
      return { ...row, daysSinceFirst: day - firstDay, measure, value: values[measure]! };
    });
  });
}
