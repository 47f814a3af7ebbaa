import type { Table } from "../chart/Table.js";

/** The sentences under a table: why rows are greyed, and how many rows were cut when only the first `shown` are printed. @private */
export function tableNotes(table: Table, shown: number): string[] {
  const greyed = (table.greyed ?? []).filter(({ row }) => row < shown);
  const reasons = [...new Set(greyed.map(({ reason }) => reason))];
  return [
    ...reasons.map((reason) => `* ${reason}`),
    ...(shown < table.rows.length ? [`The first ${shown} of ${table.rows.length} rows.`] : []),
    ...(table.rows.length === 0 ? ["No rows."] : []),
  ];
}
