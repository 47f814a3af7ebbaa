import type { FootVisit } from "../../src/study/FootVisit.js";
import type { Study } from "../../src/study/Study.js";
import { footVisit } from "../footVisit.js";
import { horseStay, studyOf, yard } from "../study.js";

/**
 * A herd small enough to work by hand: horses A to F at yard North (A, B, C) and yard South (D, E, F), every horse on 42 days,
 * seen on the dates given, near fore and near hind graded as given.
 */
export function herd(
  grades: Readonly<Record<string, readonly (readonly [date: string, fore: number | null, hind: number | null])[]>>,
): Study {
  const visits = Object.entries(grades).flatMap(([horseId, dates]) =>
    dates.flatMap(([visitDate, fore, hind]): FootVisit[] => [
      footVisit({ horseId, visitDate, foot: "LF", thrushGrade: fore, examined: true }),
      footVisit({ horseId, visitDate, foot: "LH", thrushGrade: hind, examined: true }),
    ]),
  );
  const horses = Object.keys(grades).map((horseId) =>
    horseStay({ horseId, yardId: horseId < "D" ? "North" : "South", plannedIntervalDays: 42, joinedOn: "2024-01-01" }),
  );
  const yards = [yard({ yardId: "North", gaugeId: "G" }), yard({ yardId: "South", gaugeId: "G" })];
  return studyOf({ visits, horses, yards });
}

/** The same study with rows in the opposite order and the horses named otherwise. */
export function reversed(study: Study): Study {
  return {
    ...study,
    visits: [...study.visits].reverse(),
    horses: [...study.horses].reverse(),
    yards: [...study.yards].reverse(),
  };
}

/** The same study with every horse under another name, in the same order of names; nothing else changes. */
export function renamed(study: Study): Study {
  const other = <Row extends { readonly horseId: string }>(row: Row): Row => ({ ...row, horseId: `Horse ${row.horseId}` });
  return { ...study, visits: study.visits.map(other), horses: study.horses.map(other) };
}
