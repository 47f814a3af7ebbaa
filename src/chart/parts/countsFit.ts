const pxPerLetter = 7;
const gapPx = 6;

/** Whether the counts of the rows can be written side by side, each in a place of so many px. */
export function countsFit(rows: readonly { readonly n: number }[], placePx: number): boolean {
  return rows.every(({ n }) => {
    const digits = String(n).length;
    const commas = Math.floor((digits - 1) / 3);
    return (digits + commas) * pxPerLetter + gapPx <= placePx;
  });
}
