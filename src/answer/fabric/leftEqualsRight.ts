import type { FootSet } from "../../derive/fabric/FootSet.js";
import type { FootTable } from "../../derive/fabric/FootTable.js";
import { standingFeet } from "../../derive/fabric/standingFeet.js";
import { tableOfFeet } from "../../derive/fabric/tableOfFeet.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import type { AlikePair } from "./alike/AlikePair.js";
import { alikeSets } from "./alike/alikeSets.js";
import { smallChance } from "./alike/smallChance.js";
import { fabricIssue } from "./fabricIssue.js";

/** From so many sets of one observer on, and this share of them, it is a habit and is told once. Common practice, no source. */
const HABIT = { sets: 3, share: 0.5 };
const hint = "Ask whether both sides were measured; leave the cells of a foot that was not measured empty.";

/**
 * Left feet whose measures are those of the right feet, more exactly than anybody reads two feet: one side was measured, and the other filled
 * in. Told for each set, or once for an observer who does it in half of the measured sets.
 *
 * Method: left fore against right fore and left hind against right hind of each set (`alikeSets`).
 *
 * Missing: sets with fewer than six measures on both sides are not judged.
 *
 * Source: own.
 */
export function leftEqualsRight({ visits }: Pick<Study, "visits">, table: FootTable = tableOfFeet(visits)): Issue[] {
  const feet = [
    ["LF", "RF"],
    ["LH", "RH"],
  ] as const;
  const every = table.sets.map((_, place) => [place, place] as const);
  const found = alikeSets(table, every, feet);
  const observerOf = (place: number) => table.sets[place]?.observerId ?? null;
  return [...grouped(found, ({ now }) => observerOf(now))].flatMap(([observerId, alike]) => {
    const measured = table.sets.filter((set) => set.observerId === observerId && sidesMeasured(set)).length;
    const habit = alike.length >= HABIT.sets && alike.length >= HABIT.share * measured;
    return habit ? [habitOf(table, observerId, alike, measured)] : alike.map((each) => single(table, each));
  });
}

function sidesMeasured({ rows: { LF, RF, LH, RH } }: FootSet): boolean {
  const measured = (row: FootSet["rows"]["LF"]) => (row?.hoofWidthMm ?? row?.toeLengthMm ?? null) !== null;
  return (measured(LF) && measured(RF)) || (measured(LH) && measured(RH));
}

function rowsOf(table: FootTable, place: number) {
  const set = table.sets[place];
  return standingFeet.flatMap((foot) => set?.rows[foot] ?? []);
}

function single(table: FootTable, { now, compared, equal, p }: AlikePair): Issue {
  const rows = rowsOf(table, now);
  const [first] = rows;
  return fabricIssue({
    file: first?.file ?? "visits.csv",
    line: first?.line ?? null,
    code: "left_equals_right",
    found:
      `${equal} of ${compared} measures of ${first?.horseId ?? ""} on ${first?.visitDate ?? ""} are the same left and right ` +
      `(lines ${rows.map(({ line }) => line).join(", ")}); two feet would be so alike in ${smallChance(p)} visits`,
    hint,
  });
}

function habitOf(table: FootTable, observerId: string | null, alike: readonly AlikePair[], measured: number): Issue {
  const [first] = rowsOf(table, alike[0]?.now ?? 0);
  const sum = (count: "compared" | "equal") => alike.reduce((total, each) => total + each[count], 0);
  const horses = new Set(alike.map(({ now }) => table.sets[now]?.horseId)).size;
  return fabricIssue({
    file: first?.file ?? "visits.csv",
    line: first?.line ?? null,
    column: "observer_id",
    code: "left_equals_right",
    found:
      `${observerId === null ? "where no observer is named" : `where ${observerId} is the observer`}, left and right are the same in ` +
      `${alike.length} of ${measured} measured visits to ${horses} horses: ${sum("equal")} of ${sum("compared")} measures`,
    hint,
  });
}
