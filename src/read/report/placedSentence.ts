import type { Place } from "./Place.js";

/** The one pattern of every message: file, line, column, then what was found. */
export function placedSentence(place: Pick<Place, "file" | "line" | "column">, found: string): string {
  const line = place.line === null ? "" : `, line ${place.line}`;
  const column = place.column === null ? "" : `, column ${place.column}`;
  return `${place.file}${line}${column}: ${found}.`;
}
