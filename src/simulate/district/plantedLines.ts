import type { PlantedKind, TextLine } from "./TextLine.js";

type Cells = Record<string, string | number>;

/** The first line from a share of the file on that fits. */
export function placeOf(lines: readonly TextLine[], fits: (cells: Cells) => boolean, share: number): number {
  const from = Math.floor(lines.length * share);
  const place = lines.findIndex(({ cells, fault }, index) => index >= from && fault === undefined && fits(cells));
  if (place < 0) throw new RangeError(`No line fits from ${share} of the file on`);
  return place;
}

/** Changes a cell of the first line from a share of the file on that fits, and says so on the line. */
export function changeCell(
  lines: TextLine[],
  fits: (cells: Cells) => boolean,
  share: number,
  column: string,
  changed: (value: string | number | undefined) => string | number,
  fault: Omit<PlantedKind, "column">,
): void {
  const line = lines[placeOf(lines, fits, share)]!;
  line.cells[column] = changed(line.cells[column]);
  line.fault = { ...fault, column };
}

/** Puts a changed copy below the first line from a share of the file on that fits. */
export function insertCopy(
  lines: TextLine[],
  fits: (cells: Cells) => boolean,
  share: number,
  changed: (cells: Cells) => Cells,
  fault: PlantedKind,
  ragged: Pick<TextLine, "tail" | "cutAfter"> = {},
): void {
  const place = placeOf(lines, fits, share);
  lines.splice(place + 1, 0, { cells: changed({ ...lines[place]!.cells }), ...ragged, fault });
}
