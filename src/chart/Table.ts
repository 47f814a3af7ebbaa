/** A cell of a table: numbers are printed with the digits of their column, null as a dash. */
export type TableCell = string | number | boolean | null;

/** One column of a table. */
export interface TableColumn {
  /** Field of the row objects. */
  readonly name: string;
  /** Heading, with the unit. */
  readonly title: string;
  /** Digits after the point for numbers; as they come when left out. */
  readonly digits?: number;
  /** Print a proportion as a percentage. */
  readonly percent?: boolean;
  /** A p value: one that would round to 0 is printed as less than the last digit, `<0.0001`. */
  readonly p?: boolean;
  /**
   * Words that may stand under the table: said once where every row has the same (`alike`); also numbered where they are long (`long`).
   */
  readonly below?: "alike" | "long";
}

/** A table to be shown: what is in it, its columns in order, its rows. */
export interface Table {
  readonly caption: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly Readonly<Record<string, TableCell>>[];
  /** Rows to be shown greyed, by index, each with the reason. */
  readonly greyed?: readonly { readonly row: number; readonly reason: string }[];
}
