import type { Yard } from "../../study/Yard.js";
import { messages } from "../report/messages.js";
import type { RowRule } from "../table/RowRule.js";
import { firstLines } from "./firstLines.js";

/** Rule of yards.csv: one row per yard; a yard that comes again is set aside. */
export function yardRule(): RowRule<Yard> {
  const duplicate = firstLines();
  return {
    accepts(row, report) {
      const first = duplicate(row.yardId, row);
      if (first !== null) report(messages.duplicate("the yard", null, first.line), "yard_id");
      return first === null;
    },
  };
}
