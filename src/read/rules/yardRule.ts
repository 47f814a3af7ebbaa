import type { Yard } from "../../study/Yard.js";
import type { RowRule } from "../table/RowRule.js";
import { duplicateOf } from "./duplicateOf.js";
import { firstLines } from "./firstLines.js";

/** Rule of yards.csv: one row per yard; a yard that comes again is set aside. */
export function yardRule(): RowRule<Yard> {
  const duplicate = firstLines();
  return {
    accepts(row, report) {
      const first = duplicate(row.yardId, row);
      if (first !== null) report(duplicateOf("the yard", first, row), "yard_id");
      return first === null;
    },
  };
}
