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
 * Rows of a horse whose measures are those of its visit before, at the same stage, more exactly than anybody reads twice: copied forward,
 * or one visit written down under two dates.
 *
 * Method: each set of feet against the one before at that stage (`alikeRows`).
 *
 * Missing: sets with fewer than six measures in common are not judged.
 *
 * Source: own.
 */
export function copiedRows({ visits }: Pick<Study, "visits">, sets: readonly FootSet[] = footSets(visits)): Issue[] {
  const histories = grouped(sets, ({ horseId, stage }) => `${horseId}\n${stage ?? ""}`);
  const comparisons = [...histories.values()].flatMap((sets) =>
    sets.slice(1).flatMap((now, place) => {
      const before = sets[place];
      return before === undefined || before.visitDate === now.visitDate ? [] : [pairedRows(before, now)];
    }),
  );
  return alikeRows(comparisons).map(({ of: { before, now, pairs }, compared, equal, p }) =>
    fabricIssue({
      file: pairs[0]?.[1].file ?? "visits.csv",
      line: firstLine(pairs.map(([, row]) => row.line)),
      code: "copied_forward",
      found:
        `${equal} of ${compared} measures of ${now.horseId} on ${now.visitDate} are exactly those of ${before.visitDate} ` +
        `(lines ${pairs.map(([row]) => row.line).join(", ")}); read anew, so many would be equal in ${smallChance(p)} visits`,
      hint: "See whether the feet were measured on both days; take the measures out of the rows where they were only carried over.",
    }),
  );
}

function firstLine(lines: readonly number[]): number | null {
  return lines.length === 0 ? null : Math.min(...lines);
}
