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
 * Rows of a horse whose measures are those of its visit before, at the same stage, more exactly than anybody reads twice: copied forward,
 * or one visit written down under two dates.
 *
 * Method: each set of feet against the latest one of an earlier day at that stage (`alikeSets`).
 *
 * Missing: sets with fewer than six measures in common are not judged.
 *
 * Source: own.
 */
export function copiedRows({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const { sets, starts } = table;
  const pairs: [number, number][] = [];
  for (let horse = 0; horse + 1 < starts.length; horse++) {
    const latest = new Map<string | null, number>();
    for (let now = starts[horse] ?? 0; now < (starts[horse + 1] ?? 0); now++) {
      const stage = sets[now]?.stage ?? null;
      const before = latest.get(stage);
      if (before !== undefined && sets[before]?.visitDate === sets[now]?.visitDate) continue;
      if (before !== undefined) pairs.push([before, now]);
      latest.set(stage, now);
    }
  }
  return alikeSets(table, pairs, sameFeet).map(({ before, now, compared, equal, p }) => {
    const [earlier, set] = [sets[before], sets[now]];
    const rows = sharedRows(earlier, set);
    return fabricIssue({
      file: rows[0]?.[1].file ?? "visits.csv",
      line: Math.min(...rows.map(([, { line }]) => line)),
      code: "copied_forward",
      found:
        `${equal} of ${compared} measures of ${set?.horseId ?? ""} on ${set?.visitDate ?? ""} are exactly those of ` +
        `${earlier?.visitDate ?? ""} (lines ${rows.map(([row]) => row.line).join(", ")}); read anew, so many would be equal in ` +
        `${smallChance(p)} visits`,
      hint: "See whether the feet were measured on both days; take the measures out of the rows where they were only carried over.",
    });
  });
}
