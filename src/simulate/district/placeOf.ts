import type { TextLine } from "./TextLine.js";

type Cells = Record<string, string | number>;

/** The first line from a share of the file on that fits. */
export function placeOf(lines: readonly TextLine[], fits: (cells: Cells) => boolean, share: number): number {
  const from = Math.floor(lines.length * share);
  const place = lines.findIndex(({ cells, fault }, index) => index >= from && fault === undefined && fits(cells));
  if (place < 0) throw new RangeError(`No line fits from ${share} of the file on`);
  return place;
}
