import { placeOf } from "./placeOf.js";
import type { PlantedKind, TextLine } from "./TextLine.js";

type Cells = Record<string, string | number>;

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
