import { fabricIssue } from "./fabricIssue.js";
import type { FootSet } from "../../derive/fabric/FootSet.js";
import { footSets } from "../../derive/fabric/footSets.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { type AlikeRows, alikeRows } from "./alike/alikeRows.js";
import type { RowPairs } from "./alike/RowPairs.js";
import { smallChance } from "./alike/smallChance.js";

interface Sides extends RowPairs {
  readonly set: FootSet;
}

/** From so many sets of one observer on, and this share of them, it is a habit and is told once. Common practice, no source. */
const HABIT = { sets: 3, share: 0.5 };

/**
 * Left feet whose measures are those of the right feet, more exactly than anybody reads two feet: one side was measured, and the other filled
 * in. Told for each set, or once for an observer who does it in half of the sets.
 *
 * Method: left fore against right fore and left hind against right hind of each set (`alikeRows`).
 *
 * Missing: sets with fewer than six measures on both sides are not judged.
 *
 * Source: own.
 */
export function leftEqualsRight({ visits }: Pick<Study, "visits">, sets: readonly FootSet[] = footSets(visits)): Issue[] {
  const comparisons = sets.map((set): Sides => {
    const { LF, RF, LH, RH } = set.rows;
    const pairs = [
      ...(LF === undefined || RF === undefined ? [] : [[LF, RF] as const]),
      ...(LH === undefined || RH === undefined ? [] : [[LH, RH] as const]),
    ];
    return { set, observerId: set.observerId, pairs };
  });
  const measured = grouped(
    comparisons.filter(({ pairs }) =>
      pairs.some((both) => both.every((row) => row.hoofWidthMm !== null || row.toeLengthMm !== null)),
    ),
    ({ observerId }) => observerId,
  );
  return [...grouped(alikeRows(comparisons), ({ of }) => of.observerId)].flatMap(([observerId, alike]) => {
    const sets = measured.get(observerId)?.length ?? alike.length;
    const habit = alike.length >= HABIT.sets && alike.length >= HABIT.share * sets;
    return habit ? [habitOf(observerId, alike, sets)] : alike.map(single);
  });
}

const hint = "Ask whether both sides were measured; leave the cells of a foot that was not measured empty.";

function single({ of: { set, pairs }, compared, equal, p }: AlikeRows<Sides>): Issue {
  return fabricIssue({
    file: pairs[0]?.[0].file ?? "visits.csv",
    line: pairs[0]?.[0].line ?? null,
    code: "left_equals_right",
    found:
      `${equal} of ${compared} measures of ${set.horseId} on ${set.visitDate} are the same left and right ` +
      `(lines ${pairs
        .flat()
        .map(({ line }) => line)
        .join(", ")}); two feet would be so alike in ${smallChance(p)} visits`,
    hint,
  });
}

function habitOf(observerId: string | null, alike: readonly AlikeRows<Sides>[], sets: number): Issue {
  const [first] = alike;
  const sum = (count: "compared" | "equal") => alike.reduce((total, each) => total + each[count], 0);
  const horses = new Set(alike.map(({ of }) => of.set.horseId)).size;
  return fabricIssue({
    file: first?.of.pairs[0]?.[0].file ?? "visits.csv",
    line: first?.of.pairs[0]?.[0].line ?? null,
    column: "observer_id",
    code: "left_equals_right",
    found:
      `${observerId === null ? "where no observer is named" : `where ${observerId} is the observer`}, left and right are the same in ` +
      `${alike.length} of ${sets} measured visits to ${horses} horses: ${sum("equal")} of ${sum("compared")} measures`,
    hint,
  });
}
