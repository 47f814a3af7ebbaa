import { EstimateError } from "../EstimateError.js";
import type { Term } from "../Term.js";
import { categoryColumns } from "./categoryColumns.js";
import type { DesignColumn } from "./DesignColumn.js";
import { numberColumn } from "./numberColumn.js";
import { scaledColumn } from "./scaledColumn.js";
import { seasonColumns } from "./seasonColumns.js";

/**
 * The columns of the design matrix that one term stands for, with their names; see `Term`.
 *
 * Errors: those of the kinds of term; `out_of_range` for a product of fewer than two terms or more than two harmonics.
 */
export function termColumns(rows: readonly object[], used: Int32Array, term: Term): readonly DesignColumn[] {
  if (typeof term === "string") return [{ name: term, values: numberColumn(rows, used, term) }];
  if ("product" in term) return products(term.product.map((factor) => termColumns(rows, used, factor)));
  if ("season" in term) {
    const harmonics: number = term.harmonics ?? 1;
    if (harmonics === 1 || harmonics === 2) return seasonColumns(rows, used, term.season, harmonics);
    throw new EstimateError("out_of_range", `A season with ${harmonics} harmonics was asked for.`, "Ask for 1 or 2.");
  }
  if ("reference" in term) return categoryColumns(rows, used, term.column, term.reference, term.levels);
  return [scaledColumn(term.column, numberColumn(rows, used, term.column), term)];
}

function products(factors: readonly (readonly DesignColumn[])[]): readonly DesignColumn[] {
  if (factors.length < 2) {
    throw new EstimateError("out_of_range", "A product of fewer than two terms was asked for.", "Give at least two terms.");
  }
  return factors.reduce((left, right) =>
    right.flatMap((b) =>
      left.map((a) => ({ name: `${a.name} × ${b.name}`, values: a.values.map((value, i) => value * b.values[i]!) })),
    ),
  );
}
