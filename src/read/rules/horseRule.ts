import type { Fault } from "../report/Fault.js";
import type { HorseStay } from "../../study/HorseStay.js";
import { messages } from "../report/messages.js";
import type { RowRule } from "../table/RowRule.js";
import { duplicateOf } from "./duplicateOf.js";
import { firstLines } from "./firstLines.js";
import { nearestKnown } from "./nearestKnown.js";

/** What the rows of horses.csv say about each horse, for the files that name horses. */
export interface KnownHorses {
  /** Accepted stays by horse. */
  readonly stays: ReadonlyMap<string, readonly HorseStay[]>;
  /** Horses that were set aside, with the reason to give for their visits. */
  readonly refused: ReadonlyMap<string, Fault>;
  /** Every yard named for a horse, also in rows that were set aside. */
  readonly yards: ReadonlyMap<string, ReadonlySet<string>>;
}

/**
 * Rule of horses.csv. One row per stay: the same horse with the same first day again is a duplicate. Animals that are not equids are set
 * aside. Stays that overlap, and yards that `yards` (null: there is no list) does not hold, are kept with a warning.
 */
export function horseRule(
  yards: ReadonlySet<string> | null,
  today: string,
): RowRule<HorseStay> & { readonly known: KnownHorses } {
  const stays = new Map<string, HorseStay[]>();
  const refused = new Map<string, Fault>();
  const yardsOf = new Map<string, Set<string>>();
  const duplicate = firstLines();
  const nearestYard = nearestKnown(yards ?? []);
  return {
    known: { stays, refused, yards: yardsOf },
    seen({ horseId, yardId }, faults) {
      if (typeof horseId !== "string") return;
      const notEquine = faults.find(({ fault }) => fault.code === "not_equine");
      if (notEquine !== undefined) refused.set(horseId, messages.notEquine(horseId, notEquine.value ?? ""));
      if (yardId !== null) yardsOf.set(horseId, (yardsOf.get(horseId) ?? new Set()).add(yardId));
    },
    accepts(row, report) {
      const first = duplicate(JSON.stringify([row.horseId, row.joinedOn]), row);
      if (first !== null) {
        report(duplicateOf("a stay of this horse from the same day", first, row));
        return false;
      }
      if (row.joinedOn !== null && row.leftOn !== null && row.leftOn < row.joinedOn) {
        report(messages.leftBeforeJoined(row.joinedOn, row.leftOn), "left_on");
        row.leftOn = null;
      }
      if (row.birthYear !== null && row.birthYear > Number(today.slice(0, 4))) {
        report(messages.bornInFuture(row.birthYear), "birth_year");
        row.birthYear = null;
      }
      if (row.yardId !== null && yards !== null && !yards.has(row.yardId)) {
        report(messages.unknownYard(row.yardId, nearestYard(row.yardId)), "yard_id");
      }
      const earlier = stays.get(row.horseId) ?? [];
      const other = earlier.find((stay) => overlap(stay, row));
      if (other !== undefined) report(messages.overlappingStays(other.line));
      stays.set(row.horseId, [...earlier, row]);
      return true;
    },
  };
}

// A horse may leave one yard and join the next on the same day.
function overlap(a: HorseStay, b: HorseStay): boolean {
  const before = (first: HorseStay, second: HorseStay) =>
    first.leftOn !== null && second.joinedOn !== null && first.leftOn <= second.joinedOn;
  return !before(a, b) && !before(b, a);
}
