import type { YardChange } from "../../study/YardChange.js";
import { messages } from "../report/messages.js";
import type { RowRule } from "../table/RowRule.js";
import { duplicateOf } from "./duplicateOf.js";
import { firstLines } from "./firstLines.js";
import { nearestKnown } from "./nearestKnown.js";

/** Rule of changes.csv: the same change of a yard on the same day comes once; a yard that `yards` (null: no list) lacks is a warning. */
export function changeRule(yards: ReadonlySet<string> | null): RowRule<YardChange> {
  const duplicate = firstLines();
  const nearest = nearestKnown(yards ?? []);
  return {
    accepts(row, report) {
      const first = duplicate(JSON.stringify([row.yardId, row.changedOn, row.what]), row);
      if (first !== null) {
        report(duplicateOf("this change", first, row));
        return false;
      }
      if (yards !== null && !yards.has(row.yardId)) report(messages.unknownYard(row.yardId, nearest(row.yardId)), "yard_id");
      return true;
    },
  };
}
