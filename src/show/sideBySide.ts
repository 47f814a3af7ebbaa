import type { Showable } from "./partsOf.js";
import type { ItemsInARow } from "./ItemsInARow.js";

/**
 * Answers, charts or tables to be shown beside one another, such as one question asked of two yards:
 * `await show(sideBySide(thrushNow(one), thrushNow(other)))`. Words and tables stand in columns, below them the charts in one row.
 */
export function sideBySide(...items: readonly Showable[]): ItemsInARow {
  return { kind: "side_by_side", items };
}
