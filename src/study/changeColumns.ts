import type { Column } from "./Column.js";

/** Columns of `changes.csv`: dated changes a yard made. */
// prettier-ignore
/** @private */
export const changeColumns = [
  { name: "yard_id", title: "Yard", meaning: "Yard that made the change.", type: "id", unit: null, level: "yard", required: true, missing: "row belongs to no yard" },
  { name: "changed_on", title: "Changed on", meaning: "First day of the new way.", type: "date", unit: null, level: "yard", required: true, missing: "the change cannot be placed in time" },
  { name: "what", title: "What changed", meaning: "The change, in the keeper's words.", type: "text", unit: null, level: "yard", required: false, missing: "not said" },
] as const satisfies readonly Column[];
