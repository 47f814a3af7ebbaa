import { fabricIssue } from "./fabricIssue.js";
import { fabricMeasures } from "../../derive/fabric/fabricMeasures.js";
import { quoted } from "../../read/report/quoted.js";
import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/**
 * Measures a row must share with another, all of them: two feet of two horses are equal in one measure about once in ten times. Common
 * practice, no source.
 */
const FEWEST_MEASURES = 5;

/**
 * Rows of one day, foot and stage that hold the same five or more measures under the names of two horses: one visit written down twice, or
 * one horse under two names.
 *
 * Missing: rows with fewer measures are not compared; empty cells must match too.
 *
 * Source: own.
 */
export function sameRowsTwoHorses({ visits }: Pick<Study, "visits">): Issue[] {
  const measured = visits.filter((row) => fabricMeasures.filter(({ field }) => row[field] !== null).length >= FEWEST_MEASURES);
  const alike = grouped(measured, (row) =>
    JSON.stringify([row.visitDate, row.foot, row.stage, ...fabricMeasures.map(({ field }) => row[field])]),
  );
  const pairs = [...alike.values()].flatMap(([first, ...later]) =>
    first === undefined
      ? []
      : later.filter(({ horseId }) => horseId !== first.horseId).map((row): [FootVisit, FootVisit] => [first, row]),
  );
  const visitsTwice = grouped(pairs, ([a, b]) => JSON.stringify([a.visitDate, a.horseId, b.horseId]));
  return [...visitsTwice.values()].flatMap((rows) => {
    const [pair] = rows;
    if (pair === undefined) return [];
    const [a, b] = pair;
    const measures = fabricMeasures.filter(({ field }) => a[field] !== null).length;
    const feet = rows.map(([{ foot }]) => foot).join(", ");
    return [
      fabricIssue({
        file: b.file,
        line: b.line,
        column: "horse_id",
        code: "same_rows_two_horses",
        found:
          `on ${b.visitDate} ${measures} measures of each foot of ${quoted(b.horseId)} are those of ${quoted(a.horseId)} (${feet}; lines ` +
          `${rows.flatMap(([x, y]) => [x.line, y.line]).join(", ")})`,
        hint: "Keep the rows under the right name and take the others out.",
      }),
    ];
  });
}
