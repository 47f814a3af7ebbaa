import type { FootSet } from "../../derive/fabric/FootSet.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { alikeSets } from "./alike/alikeSets.js";
import { sameFeet } from "./alike/sameFeet.js";
import { sharedRows } from "./alike/sharedRows.js";
import { smallChance } from "./alike/smallChance.js";
import { fabricIssue } from "./fabricIssue.js";

/**
 * The same visit of a horse written down twice on one day, under another stage or observer: the measures of both are more exactly alike than
 * anybody reads twice, and than a trim leaves them.
 *
 * Method: the sets of one horse and day, each against the one before it in order of stage and observer (`alikeSets`). Rows that are alike in
 * stage and observer too are set aside on reading.
 *
 * Missing: sets with fewer than six measures in common are not judged.
 *
 * Source: own.
 */
export function repeatedRows({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const { sets } = table;
  const pairs: [number, number][] = [];
  for (let now = 1; now < sets.length; now++) {
    const [before, set] = [sets[now - 1], sets[now]];
    if (before?.horseId === set?.horseId && before?.visitDate === set?.visitDate) pairs.push([now - 1, now]);
  }
  return alikeSets(table, pairs, sameFeet).map(({ before, now, compared, equal, p }) => {
    const [first, second] = [sets[before], sets[now]];
    const rows = sharedRows(first, second);
    return fabricIssue({
      file: rows[0]?.[1].file ?? "visits.csv",
      line: rows[0]?.[1].line ?? null,
      code: "same_rows_twice",
      found:
        `${equal} of ${compared} measures of ${second?.horseId ?? ""} on ${second?.visitDate ?? ""} stand twice, as ${entry(first)} and as ` +
        `${entry(second)} (lines ${rows.flatMap(([a, b]) => [a.line, b.line]).join(", ")}); two readings would be so alike in ` +
        `${smallChance(p)} visits`,
      hint: "Keep one of the two entries, with the right stage and observer, and take the other out.",
    });
  });
}

function entry(set: FootSet | undefined): string {
  return `${set?.stage?.replaceAll("_", " ") ?? "no stage"} by ${set?.observerId ?? "nobody named"}`;
}
