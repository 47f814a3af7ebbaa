import { numberColumn } from "../design/numberColumn.js";
import { requireColumns } from "../design/requireColumns.js";
import { requireIndependent } from "../design/requireIndependent.js";
import { requireRows } from "../design/requireRows.js";
import { usableRows } from "../design/usableRows.js";
import { groupIndex, type GroupIndex } from "../design/groupIndex.js";
import type { Dropped } from "../Dropped.js";
import { EstimateError } from "../EstimateError.js";

/** Rows ready for a discriminant: classes as indices, terms centred and divided by their spread within classes. */
export interface DiscriminantRows {
  readonly classes: readonly string[];
  readonly truth: Int32Array;
  /** One row each, one number a term. */
  readonly values: readonly Float64Array[];
  /** What was taken off each term, and divided by. */
  readonly centre: Float64Array;
  readonly spread: Float64Array;
  readonly used: Int32Array;
  readonly dropped: readonly Dropped[];
  /** Groups that are held out together; null when every row is its own. */
  readonly folds: GroupIndex | null;
}

/**
 * Reads classes and terms from rows.
 *
 * Errors: `unknown_column`; `empty`; `not_a_number`; `out_of_range` for a row that is no record, a label that names nothing or no terms; `no_variation` for
 * fewer than two classes, or a term that does not vary within them; `too_few`; `collinear`, naming the columns.
 */
export function discriminantRows(
  rows: readonly object[],
  label: string,
  terms: readonly string[],
  foldBy: string | undefined,
): DiscriminantRows {
  requireRows(rows);
  if (terms.length === 0) throw new EstimateError("out_of_range", "No terms were named.", "Name at least one column of numbers.");
  const columns = [label, ...terms, ...[foldBy ?? []].flat()];
  if (rows.length > 0) requireColumns(rows, columns);
  const { used, dropped } = usableRows(rows, columns);
  const { classes, truth } = classesOf(groupIndex(rows, used, [label]), label);
  const raw = terms.map((name) => ({ name, values: numberColumn(rows, used, name) }));
  requireIndependent(raw, used.length, true);
  const counts = new Int32Array(classes.length);
  truth.forEach((c) => (counts[c]! += 1));
  const df = used.length - classes.length;
  if (df < terms.length) {
    throw new EstimateError(
      "too_few",
      `There are ${used.length} usable rows for ${classes.length} classes and ${terms.length} terms.`,
      "Use fewer terms or more rows.",
    );
  }
  const centre = Float64Array.from(raw, ({ values }) => mean(values));
  const spread = new Float64Array(terms.length);
  const within = raw.map(({ name, values }, j) => {
    const sums = new Float64Array(classes.length);
    values.forEach((value, i) => (sums[truth[i]!]! += value - centre[j]!));
    const left = values.map((value, i) => value - centre[j]! - sums[truth[i]!]! / counts[truth[i]!]!);
    const sd = Math.sqrt(left.reduce((sum, value) => sum + value * value, 0) / df);
    const reach = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    if (!(sd > 1e-12 * reach)) {
      throw new EstimateError(
        "no_variation",
        `Column "${name}" has one value within each class of "${label}".`,
        "Leave the term out: it repeats the label.",
      );
    }
    spread[j] = sd;
    return { name, values: left };
  });
  requireIndependent(within, used.length, false);
  return {
    classes,
    truth,
    values: Array.from(used, (_, i) => Float64Array.from(raw, ({ values }, j) => (values[i]! - centre[j]!) / spread[j]!)),
    centre,
    spread,
    used,
    dropped,
    folds: foldBy === undefined ? null : groupIndex(rows, used, [foldBy]),
  };
}

/** Classes by name, numbers by size, so that the order of the rows does not matter. */
function classesOf({ index, labels }: GroupIndex, label: string): { classes: readonly string[]; truth: Int32Array } {
  const found = labels.map(([value], place) => ({ value: value!, place }));
  found.sort((a, b) =>
    typeof a.value === "number" && typeof b.value === "number" ? a.value - b.value : String(a.value) < String(b.value) ? -1 : 1,
  );
  const classes = found.map(({ value }) => String(value));
  if (classes.length < 2) {
    throw new EstimateError(
      "no_variation",
      `Every row used has "${classes.join("")}" in column "${label}".`,
      "Telling apart needs at least two classes.",
    );
  }
  const rank = new Int32Array(found.length);
  found.forEach(({ place }, c) => (rank[place] = c));
  return { classes, truth: index.map((place) => rank[place]!) };
}

function mean(values: Float64Array): number {
  return values[0]! + values.reduce((sum, value) => sum + (value - values[0]!), 0) / values.length;
}
