import type { OutlinePoint } from "../../study/OutlinePoint.js";
import { messages } from "../report/messages.js";
import type { RowRule } from "../table/RowRule.js";
import { duplicateOf } from "./duplicateOf.js";
import { firstLines } from "./firstLines.js";
import { horseFault } from "./horseFault.js";
import type { KnownHorses } from "./horseRule.js";

/** Rule of outlines.csv: the horse must be known when there is a list, the day not after `today`, and a point of a ring comes once in a tracing. */
export function outlineRule(horses: KnownHorses | null, today: string): RowRule<OutlinePoint> {
  const duplicate = firstLines();
  const faultOfHorse = horseFault(horses);
  return {
    accepts(row, report) {
      const unknown = faultOfHorse(row.horseId);
      if (unknown !== null) report(unknown, "horse_id");
      const future = row.visitDate > today;
      if (future) report(messages.inFuture(row.visitDate, today), "visit_date");
      if (unknown !== null || future) return false;
      const { horseId, visitDate, foot, stage, tracing, ring, point } = row;
      const first = duplicate(JSON.stringify([horseId, visitDate, foot, stage, tracing, ring, point]), row);
      if (first !== null) report(duplicateOf("this point of the ring", first, row), "point");
      return first === null;
    },
  };
}
