import type { PlantedKind, TextLine } from "./TextLine.js";

/** One fault that was planted on purpose, and where it ended up. */
export interface PlantedFault extends PlantedKind {
  readonly file: string;
  /** Physical line, counted from 1. */
  readonly line: number;
  /** Text of the faulty cell; null when the whole line is at fault. */
  readonly value: string | null;
}

/** The faults in the lines of one file below its header. */
export function plantedFaults(file: string, lines: readonly TextLine[]): PlantedFault[] {
  return lines.flatMap(({ cells, fault }, place) => {
    if (fault === undefined) return [];
    const { kind, code, column, expected, about } = fault;
    return [
      { file, line: place + 2, column, value: column === null ? null : String(cells[column] ?? ""), kind, code, expected, about },
    ];
  });
}
