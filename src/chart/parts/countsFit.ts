const pxPerDigit = 7.5;

/** Whether the counts of the rows can be written side by side, each in a place of so many px. */
export function countsFit(rows: readonly { readonly n: number }[], placePx: number): boolean {
  return rows.every((row) => (String(row.n).length + 1) * pxPerDigit <= placePx);
}
