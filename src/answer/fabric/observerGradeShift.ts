import { examination } from "../../derive/examination.js";
import { footSide } from "../../derive/footSide.js";
import { stayAt } from "../../derive/stayAt.js";
import { grouped } from "../../study/grouped.js";
import type { FootVisit } from "../../study/FootVisit.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { fabricIssue } from "./fabricIssue.js";
import { falseAlarmShare } from "./falseAlarmShare.js";
import { type HorseVisit, oddsShift } from "../../estimate/fabric/oddsShift.js";

/** Odds must differ by more than this at the near end of the interval; smaller shifts are for an analysis to allow for. Common practice, no source. */
const LEAST_RATIO = 1.5;

/**
 * Observers whose horses have thrush far more, or far less, often than those of others in the same yards and quarters: their eye differs, and a
 * change of observer would be taken for a change of feet.
 *
 * Method: a visit to a horse counts as a case when any graded foot does. The odds under one observer against those under all others are
 * pooled over yards and quarters of the year, so that neither stands in for the observer (`oddsShift`, whose interval leaves out one horse at a
 * time, since the visits to a horse hang together); the interval at `falseAlarmShare` over the observers must lie beyond 1.5 on one side.
 *
 * Missing: visits without a grade, observer or yard are left out. Yards and quarters with one observer say nothing: where each yard has its own,
 * a shift cannot be told from the yard.
 *
 * Source: see `oddsShift`; the limits are own.
 */
export function observerGradeShift(study: Pick<Study, "visits" | "horses" | "settings">): Issue[] {
  const visits = horseVisits(study);
  const observers = [...grouped(visits, ({ observerId }) => observerId).keys()].sort();
  const strataOf = new Map<string, HorseVisit[][]>(observers.map((observerId) => [observerId, []]));
  for (const stratum of grouped(visits, (visit) => visit.stratum).values()) {
    for (const observerId of new Set(stratum.map((visit) => visit.observerId))) strataOf.get(observerId)?.push(stratum);
  }
  const level = 1 - falseAlarmShare / Math.max(1, observers.length);
  return observers.flatMap((observerId, place) => {
    // Of two observers the second says what the first does.
    if (observers.length < 2 || (observers.length === 2 && place === 0)) return [];
    const shift = oddsShift(strataOf.get(observerId) ?? [], observerId, level);
    if (shift === null || (shift.lower <= LEAST_RATIO && shift.upper >= 1 / LEAST_RATIO)) return [];
    const first = study.visits.find((row) => row.observerId === observerId && row.thrushGrade !== null);
    if (first === undefined) return [];
    const { a, b, c, d } = shift.table;
    const others = observers.length === 2 ? (observers[0] ?? "") : "others";
    return [
      fabricIssue({
        file: first.file,
        line: first.line,
        column: "observer_id",
        code: "grades_shift_with_observer",
        found:
          `in the same yards and quarters, grade ${study.settings.caseGrade} or more was found at ${a} of ${a + b} visits by ` +
          `${observerId} and at ${c} of ${c + d} by ${others}: odds ratio ${shift.ratio.toFixed(2)} (${(100 * level).toFixed(1)} % interval ` +
          `${shift.lower.toFixed(2)} to ${shift.upper.toFixed(2)}, ${shift.horses} horses)`,
        hint: "Let both observers grade the same feet, each without the other's grade, and compare before and after a change of observer apart.",
      }),
    ];
  });
}

/** Whether each observer found thrush on any foot, for each horse and day. */
function horseVisits({ visits, horses, settings }: Pick<Study, "visits" | "horses" | "settings">): HorseVisit[] {
  const stays = grouped(horses, ({ horseId }) => horseId);
  const graded = visits.filter(
    (row) => row.thrushGrade !== null && row.observerId !== null && footSide(row.foot) !== null && examination(row) === "seen",
  );
  return [...grouped(graded, ({ horseId }) => horseId)].flatMap(([horseId, ofHorse]) =>
    [...grouped(ofHorse, ({ visitDate }) => visitDate)].flatMap(([visitDate, ofDay]) => {
      const yardId = stayAt(stays.get(horseId) ?? [], horseId, visitDate)?.yardId ?? null;
      if (yardId === null) return [];
      const stratum = `${yardId}\n${visitDate.slice(0, 4)}\n${Math.ceil(Number(visitDate.slice(5, 7)) / 3)}`;
      const isCase = ({ thrushGrade }: FootVisit) => (thrushGrade ?? 0) >= settings.caseGrade;
      return [...grouped(ofDay, ({ observerId }) => observerId ?? "")].map(([observerId, feet]) => ({
        horseId,
        observerId,
        stratum,
        thrush: feet.some(isCase),
      }));
    }),
  );
}
