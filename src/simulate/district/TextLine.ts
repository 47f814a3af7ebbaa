/** One line of a file in the making. */
export interface TextLine {
  /** Cells by header. */
  readonly cells: Record<string, string | number>;
  /** The line breaks off after this many cells. */
  readonly cutAfter?: number;
  /** Written after the last cell as it is, without quotes. */
  readonly tail?: string;
  /** The fault planted in this line. */
  fault?: PlantedKind;
}

/** What is wrong with a planted line and what reading it should cost. */
export interface PlantedKind {
  /** Kind of the fault, snake case. */
  readonly kind: string;
  /** Code under which reading reports it. */
  readonly code: string;
  readonly column: string | null;
  /** `set_aside` the row, `cell_blanked` the cell, `warning` nothing. */
  readonly expected: "set_aside" | "cell_blanked" | "warning";
  /** One sentence: what was done to the line. */
  readonly about: string;
}
