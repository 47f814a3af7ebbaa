import { examination } from "../../derive/examination.js";
import { grouped } from "../../study/grouped.js";
import type { FootVisit } from "../../study/FootVisit.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { smallChance } from "./alike/smallChance.js";
import { fabricIssue } from "./fabricIssue.js";
import { falseAlarmShare } from "./falseAlarmShare.js";

/** Fewer graded feet may well be alike. Common practice, no source. */
const FEWEST_FEET = 20;

/**
 * Observers who gave every foot the same thrush grade, although the other observers' horses make that improbable.
 *
 * Method: one visit to each horse counts, the first that was graded, since the feet and visits of a horse hang together. The chance is the share
 * of the other observers' horses with that grade on all feet, to the power of the horses of this observer; one horse with it and one without
 * are added to the share, so that it is never 0 or 1. Times the observers, it must be `falseAlarmShare` at most.
 *
 * Missing: observers with fewer than 20 graded feet, or without any other to hold them against, are not judged. Yards may truly differ:
 * an observer of one dry yard may be right.
 *
 * Source: own.
 */
export function unvaryingGrades({ visits }: Pick<Study, "visits">): Issue[] {
  const graded = visits.filter((row) => row.observerId !== null && row.thrushGrade !== null && examination(row) !== "not_seen");
  const observers = grouped(graded, ({ observerId }) => observerId);
  const unvarying = [...observers].filter(([, rows]) => {
    return rows.length >= FEWEST_FEET && rows.every(({ thrushGrade }) => thrushGrade === rows[0]?.thrushGrade);
  });
  if (unvarying.length === 0) return [];
  const firstVisits = new Map([...observers].map(([observerId, rows]) => [observerId, firstVisitsOf(rows)]));
  return unvarying.flatMap(([observerId, rows]) => {
    const [first] = rows;
    const others = [...firstVisits].flatMap(([id, of]) => (id === observerId ? [] : of));
    if (first === undefined || others.length === 0) return [];
    const grade = first.thrushGrade;
    const alike = others.filter((feet) => feet.every(({ thrushGrade }) => thrushGrade === grade)).length;
    const share = (alike + 1) / (others.length + 2);
    const horses = firstVisits.get(observerId)?.length ?? 0;
    const chance = share ** horses;
    if (chance * observers.size > falseAlarmShare) return [];
    return [
      fabricIssue({
        file: first.file,
        line: first.line,
        column: "thrush_grade",
        code: "grades_never_vary",
        found:
          `all ${rows.length} thrush grades by ${observerId ?? ""}, on ${horses} horses, are ${grade ?? ""}, where other observers gave all feet ` +
          `of a horse that grade on ${alike} of ${others.length} horses; by chance that comes ${smallChance(chance)} times`,
        hint: "Ask whether the frogs were graded or the column filled in; leave the grade empty where none was given.",
      }),
    ];
  });
}

/** The graded feet of the first graded visit to each horse. */
function firstVisitsOf(rows: readonly FootVisit[]): FootVisit[][] {
  return [...grouped(rows, ({ horseId }) => horseId).values()].map((ofHorse) => {
    const day = ofHorse.reduce((first, { visitDate }) => (visitDate < first ? visitDate : first), ofHorse[0]?.visitDate ?? "");
    return ofHorse.filter(({ visitDate }) => visitDate === day);
  });
}
