/** Where a column's value belongs: the thing that is measured once. @private */
export type Level = "foot-visit" | "visit" | "horse" | "yard" | "gauge-day" | "outline-point";

/** What a cell may hold. `codes` is several codes in one cell, separated by `;`. */
export type ColumnType = "date" | "id" | "code" | "codes" | "number" | "integer" | "boolean" | "text";

/**
 * One column of one file: the single source of the reader's checks, the data dictionary page, the table schema and the
 * empty templates. `soft` and `hard` are inclusive ranges: outside `soft` a value is kept with a warning, outside `hard`
 * it is not believed.
 */
export interface Column {
  /** Header in the CSV file, snake case, unit last. */
  readonly name: string;
  readonly title: string;
  readonly meaning: string;
  readonly type: ColumnType;
  readonly unit: string | null;
  readonly level: Level;
  /** The row cannot be used without it. */
  readonly required: boolean;
  /** What an empty cell means. */
  readonly missing: string;
  /** Allowed codes, for `code` and `codes`. */
  readonly values?: readonly string[];
  readonly soft?: readonly [number, number];
  readonly hard?: readonly [number, number];
  /** Where a range comes from. */
  readonly source?: string;
}
