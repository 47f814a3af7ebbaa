import { fabricIssue } from "./fabricIssue.js";
import type { FootSet } from "../../derive/fabric/FootSet.js";
import { footSets } from "../../derive/fabric/footSets.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { alikeRows } from "./alike/alikeRows.js";
import { pairedRows } from "./alike/pairedRows.js";
import { smallChance } from "./alike/smallChance.js";

/**
 * The same visit of a horse written down twice on one day, under another stage or observer: the measures of both are more exactly alike than
 * anybody reads twice, and than a trim leaves them.
 *
 * Method: the sets of one horse and day, each against the one written before it (`alikeRows`). Rows that are alike in stage too are
 * set aside on reading.
 *
 * Missing: sets with fewer than six measures in common are not judged.
 *
 * Source: own.
 */
export function repeatedRows({ visits }: Pick<Study, "visits">, sets: readonly FootSet[] = footSets(visits)): Issue[] {
  const days = grouped(sets, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
  const comparisons = [...days.values()].flatMap((sets) =>
    sets.slice(1).flatMap((now, place) => {
      const before = sets[place];
      return before === undefined ? [] : [pairedRows(before, now)];
    }),
  );
  return alikeRows(comparisons).map(({ of: { before, now, pairs }, compared, equal, p }) =>
    fabricIssue({
      file: pairs[0]?.[1].file ?? "visits.csv",
      line: pairs[0]?.[1].line ?? null,
      code: "same_rows_twice",
      found:
        `${equal} of ${compared} measures of ${now.horseId} on ${now.visitDate} stand twice, as ${entry(before)} and as ${entry(now)} ` +
        `(lines ${pairs.flatMap(([a, b]) => [a.line, b.line]).join(", ")}); two readings would be so alike in ${smallChance(p)} visits`,
      hint: "Keep one of the two entries, with the right stage and observer, and take the other out.",
    }),
  );
}

function entry({ stage, observerId }: { readonly stage: string | null; readonly observerId: string | null }): string {
  return `${stage?.replaceAll("_", " ") ?? "no stage"} by ${observerId ?? "nobody named"}`;
}
