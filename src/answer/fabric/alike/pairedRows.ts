import type { FootSet } from "../../../derive/fabric/FootSet.js";
import type { RowPairs } from "./RowPairs.js";

/** Two sets of one horse, the rows of each foot side by side. */
export interface PairedRows extends RowPairs {
  readonly before: FootSet;
  readonly now: FootSet;
}

/** The rows of the feet that both sets have. */
export function pairedRows(before: FootSet, now: FootSet): PairedRows {
  const pairs = (["LF", "RF", "LH", "RH"] as const).flatMap((foot) => {
    const [a, b] = [before.rows[foot], now.rows[foot]];
    return a === undefined || b === undefined ? [] : [[a, b] as const];
  });
  return { observerId: now.observerId, pairs, before, now };
}
