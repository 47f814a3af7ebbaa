import type { FootVisit } from "../../study/FootVisit.js";
import { grouped } from "../../study/grouped.js";
import { examination } from "../examination.js";
import { footSide } from "../footSide.js";
import type { FootSet, StandingFoot } from "./FootSet.js";

/**
 * The rows of the visits as they were written, one set for each horse, day, stage and observer, by horse, day, stage and observer: what is
 * compared when labels may have been swapped. Of two rows of one foot in a set the first counts.
 *
 * Missing: feet that were not looked at and specimens of unknown side are in no set.
 */
export function footSets(visits: readonly FootVisit[]): FootSet[] {
  const seen = visits.filter((row) => footSide(row.foot) !== null && examination(row) === "seen");
  return [...grouped(seen, ({ horseId }) => horseId)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([, ofHorse]) =>
      [...grouped(ofHorse, ({ visitDate }) => visitDate).values()]
        .flatMap(setsOfDay)
        .sort(
          (a, b) =>
            compared(a.visitDate, b.visitDate) ||
            stages.indexOf(a.stage) - stages.indexOf(b.stage) ||
            compared(a.observerId ?? "", b.observerId ?? ""),
        ),
    );
}

const stages: readonly FootVisit["stage"][] = [null, "before_trim", "single", "after_trim"];

function compared(a: string, b: string): number {
  return a === b ? 0 : a < b ? -1 : 1;
}

function setsOfDay(rows: readonly FootVisit[]): FootSet[] {
  const sets: (FootSet & { readonly rows: Partial<Record<StandingFoot, FootVisit>> })[] = [];
  for (const row of rows) {
    const { horseId, visitDate, stage, observerId } = row;
    let set = sets.find((each) => each.stage === stage && each.observerId === observerId);
    if (set === undefined) sets.push((set = { horseId, visitDate, stage, observerId, rows: {} }));
    set.rows[row.foot as StandingFoot] ??= row;
  }
  return sets;
}
