import { placeOf } from "./placeOf.js";
import type { PlantedKind, TextLine } from "./TextLine.js";

type Cells = Record<string, string | number>;

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
