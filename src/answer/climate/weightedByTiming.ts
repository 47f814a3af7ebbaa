import { refusedEffect } from "../../estimate/climate/refusedEffect.js";
import { effectOfExposure } from "../../estimate/effectOfExposure.js";
import type { ExposureEffect } from "../../estimate/ExposureEffect.js";
import type { ExposureModel } from "../../estimate/ExposureModel.js";
import { visitTimingWeights } from "../../estimate/visitTimingWeights.js";
import { dateOfDay } from "../../study/dateOfDay.js";
import { dayNumber } from "../../study/dayNumber.js";
import { grouped } from "../../study/grouped.js";
import type { ClimateRow } from "./ClimateRow.js";
import { certain } from "./certain.js";

const weekDays = 7;

/** The effect with visits weighted against coming sooner after a bad one: weeks of each horse from visit to visit. */
export function weightedByTiming(model: ExposureModel): ExposureEffect {
  const rows = model.rows as readonly ClimateRow[];
  const name = "Visits weighted by their timing";
  const base = { name, contrast: model.exposure, adjustedFor: [], level: model.level ?? 0.95 };
  return refusedEffect(base, () => {
    const stretches = [...grouped(rows, (row) => row.horseId).values()].flatMap(stretchesOf);
    const { weights, effectiveVisits } = visitTimingWeights({
      rows: stretches,
      visited: "visited",
      numerator: ["sinceWeeks", { season: "date" }],
      denominator: ["sinceWeeks", { season: "date" }, "lastGrade"],
      cluster: "horseId",
    });
    const at = new Map(
      stretches.flatMap((stretch, place) =>
        stretch.visited ? [[`${stretch.horseId}\n${stretch.date}`, weights[place] ?? null] as const] : [],
      ),
    );
    const weighted = rows.map((row) => ({ ...row, timingWeight: at.get(`${row.horseId}\n${row.visitDate}`) ?? null }));
    const effect = effectOfExposure({ ...model, rows: weighted, method: "gee", weights: "timingWeight" }, { name });
    const note = `Visits as sure as ${effectiveVisits.toFixed(0)} equally weighted ones; first visits have no weight.`;
    return { ...effect, note: [note, effect.note].filter((text) => text !== null).join(" ") };
  });
}

/** Each week between two visits of one horse, with whether the next visit came in it and how bad the last one was. */
function stretchesOf(list: readonly ClimateRow[]) {
  const visits = [...grouped(list, (row) => row.visitDate)].sort(([a], [b]) => (a < b ? -1 : 1));
  return visits.slice(1).flatMap(([next], place) => {
    const [last, feet] = certain(visits[place]);
    const grades = feet.flatMap((row) => row.thrushGrade ?? []);
    const days = certain(dayNumber(next)) - certain(dayNumber(last));
    const weeks = Math.max(1, Math.ceil(days / weekDays));
    return Array.from({ length: weeks }, (_, week) => ({
      horseId: certain(list[0]).horseId,
      date: week === weeks - 1 ? next : dateOfDay(certain(dayNumber(last)) + weekDays * (week + 1)),
      sinceWeeks: week + 1,
      lastGrade: grades.length === 0 ? null : Math.max(...grades),
      visited: week === weeks - 1,
    }));
  });
}
