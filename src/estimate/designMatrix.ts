import { columnsOfTerm } from "./design/columnsOfTerm.js";
import { requireColumns } from "./design/requireColumns.js";
import { requireTerms } from "./design/requireTerms.js";
import { requireRows } from "./design/requireRows.js";
import { requireIndependent } from "./design/requireIndependent.js";
import { termColumns } from "./design/termColumns.js";
import { usableRows } from "./design/usableRows.js";
import type { Dropped } from "./Dropped.js";
import type { Term } from "./Term.js";

/** Which further columns a fit reads, and whether it has an intercept. */
export interface DesignOptions {
  /** The outcome's column. */
  readonly outcome?: string;
  /** Other columns a row must have: clusters, offsets. */
  readonly also?: readonly string[];
  /** Columns of weights or numbers examined: a row with 0 is left out, a negative number is an error. */
  readonly positive?: readonly string[];
  /** Put a column of ones first; yes when left out. */
  readonly intercept?: boolean;
}

/** The numbers of a regression, and which rows they come from. */
export interface DesignMatrix {
  /** Names of the coefficients: `intercept` first, then the terms in the order given. */
  readonly names: readonly string[];
  /** One column a coefficient, of `n` numbers. */
  readonly columns: readonly Float64Array[];
  /** For each coefficient the index of its term; -1 for the intercept. */
  readonly termOf: readonly number[];
  readonly intercept: boolean;
  /** Rows used. */
  readonly n: number;
  /** Where each used row stands among the rows given. */
  readonly used: Int32Array;
  /** Rows left out, by reason; with `n` they add up to the rows given. */
  readonly dropped: readonly Dropped[];
}

/**
 * The design matrix of a regression of the rows on the terms.
 *
 * A row with null or undefined in any column that is read is left out and counted under the first such column: outcome, terms,
 * then the rest. The rows are not changed.
 *
 * Errors (`EstimateError`): `unknown_column`, with the nearest name; `empty` when no row is left or no list of rows or terms is given; `not_a_number` for NaN, infinite
 * numbers, and text in a term without a reference; `not_a_date`; `out_of_range` for a negative weight, an undeclared level, a
 * malformed term, a row that is no record, or numbers too large or too small to be squared; `no_variation` for a category with one value; `too_few` for more coefficients than rows; `collinear`, naming
 * the columns, when one is constant or follows from others.
 */
export function designMatrix(
  rows: readonly object[],
  terms: readonly Term[],
  { outcome, also = [], positive = [], intercept = true }: DesignOptions = {},
): DesignMatrix {
  requireRows(rows);
  requireTerms(terms);
  const wanted = [...(outcome === undefined ? [] : [outcome]), ...terms.flatMap(columnsOfTerm), ...also, ...positive];
  const read = [...new Set(wanted)];
  if (rows.length > 0) requireColumns(rows, read);
  const { used, dropped } = usableRows(rows, read, positive);
  const parts = terms.map((term) => termColumns(rows, used, term));
  requireIndependent(parts.flat(), used.length, intercept);
  const ones = intercept ? [{ name: "intercept", values: new Float64Array(used.length).fill(1) }] : [];
  const columns = [...ones, ...parts.flat()];
  return {
    names: columns.map(({ name }) => name),
    columns: columns.map(({ values }) => values),
    termOf: [...ones.map(() => -1), ...parts.flatMap((part, index) => part.map(() => index))],
    intercept,
    n: used.length,
    used,
    dropped,
  };
}
