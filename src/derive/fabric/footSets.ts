import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import { byVisit } from "../byVisit.js";
import { examination } from "../examination.js";
import { footSide } from "../footSide.js";
import type { FootSet, StandingFoot } from "./FootSet.js";

/**
 * The rows of the visits as they were written, one set for each horse, day, stage and observer, by horse, day and stage: what is compared
 * when labels may have been swapped. Of two rows of one foot in a set the first counts.
 *
 * Missing: feet that were not looked at and specimens of unknown side are in no set.
 */
export function footSets(visits: readonly FootVisit[]): FootSet[] {
  const seen = visits.filter((row) => footSide(row.foot) !== null && examination(row) === "seen");
  const sets = grouped(seen, ({ horseId, visitDate, stage, observerId }) =>
    [horseId, visitDate, stage ?? "", observerId ?? ""].join("\n"),
  );
  return [...sets.values()]
    .map((rows): FootSet => {
      const { horseId, visitDate, stage, observerId } = rows[0]!;
      const byFoot: Partial<Record<StandingFoot, FootVisit>> = {};
      for (const row of rows) byFoot[row.foot as StandingFoot] ??= row;
      return { horseId, visitDate, stage, observerId, rows: byFoot };
    })
    .sort((a, b) => (a.horseId === b.horseId ? byVisit(a, b) || stageRank(a) - stageRank(b) : a.horseId < b.horseId ? -1 : 1));
}

function stageRank({ stage }: FootSet): number {
  return [null, "before_trim", "single", "after_trim"].indexOf(stage);
}
