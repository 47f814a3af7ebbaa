import type { ClassificationTable } from "./ClassificationTable.js";
import { binomialOutcome } from "./design/binomialOutcome.js";
import { groupIndex } from "./design/groupIndex.js";
import { numberColumn } from "./design/numberColumn.js";
import { requireRows } from "./design/requireRows.js";
import { requireTerms } from "./design/requireTerms.js";
import { requireColumns } from "./design/requireColumns.js";
import { usableRows } from "./design/usableRows.js";
import type { Dropped } from "./Dropped.js";
import { EstimateError } from "./EstimateError.js";
import { fitLogistic, type LogisticFit } from "./fitLogistic.js";
import { requireLevel } from "./numeric/requireLevel.js";
import { requireWithin } from "./numeric/requireWithin.js";
import { tabulated } from "./shape/tabulated.js";

/** What to tell apart by what. */
export interface CrossValidatedLogisticOptions {
  readonly rows: readonly object[];
  /** Column of booleans or 0 and 1. */
  readonly outcome: string;
  /** Columns of numbers. */
  readonly terms: readonly string[];
  /** Column whose values are held out together, such as the horse; each row by itself when left out. */
  readonly foldBy?: string;
  /** A probability of this or more counts as yes; 0.5 when left out. */
  readonly cutoff?: number;
  /** Confidence level of the error rates; 0.95 when left out. */
  readonly level?: number;
}

/** A logistic rule tried on rows held out. */
export interface CrossValidatedLogistic {
  /** Fit of all rows. Its errors take rows as independent. */
  readonly fit: LogisticFit;
  /** Tried on the rows the rule was made from: too good. */
  readonly resubstitution: ClassificationTable;
  /** Tried on rows held out. */
  readonly crossValidated: ClassificationTable;
  /** Mean squared difference between outcome and held-out probability: 0 is best, 0.25 is a coin. */
  readonly brier: number;
  readonly rows: readonly {
    /** Where it stands among the rows given, from 0. */
    readonly row: number;
    readonly outcome: boolean;
    readonly probability: number;
    /** By the rule made without this row, or without its fold. */
    readonly heldOut: number;
  }[];
  readonly n: number;
  readonly folds: number;
  readonly dropped: readonly Dropped[];
  readonly method: string;
}

/**
 * Logistic regression as a rule that tells two classes apart, and how often it is wrong on rows it has not seen.
 *
 * Method: the regression is made anew without each fold (a row, or all rows of one `foldBy` value) and gives the probabilities of that
 * fold. With feet of one horse in both parts an error rate comes out too low, so hold out by horse. It needs no normal classes, as
 * `linearDiscriminant` does, but has no answer when classes can be told without error. Error rates have Wilson limits, or
 * limits that allow for horses when held out by horse. Classes are called `no` and `yes`.
 *
 * Missing: rows with a null in a column that is read are left out and counted in `dropped`.
 *
 * Errors (`EstimateError`): those of `fitLogistic`, with the fold when one is held out; `too_few` for a single fold; `out_of_range` for
 * a cutoff or level outside 0 to 1.
 *
 * Source: Stone M (1974) J R Stat Soc B 36:111-147 for cross-validation; Brier GW (1950) Mon Weather Rev 78:1-3.
 */
export function crossValidatedLogistic(options: CrossValidatedLogisticOptions): CrossValidatedLogistic {
  const { rows, outcome, terms, foldBy, cutoff = 0.5 } = options;
  const level = requireLevel(options.level ?? 0.95);
  requireRows(rows);
  requireTerms(terms);
  requireWithin("cutoff", cutoff, 0, 1);
  const columns = [outcome, ...terms, ...[foldBy ?? []].flat()];
  if (rows.length > 0) requireColumns(rows, columns);
  const { used, dropped } = usableRows(rows, columns);
  const truth = Int32Array.from(binomialOutcome(rows, used, outcome).cases);
  const groups = foldBy === undefined ? null : groupIndex(rows, used, [foldBy]);
  const folds = groups?.count ?? used.length;
  if (folds < 2) {
    throw new EstimateError(
      "too_few",
      `All rows have one value in column "${foldBy!}".`,
      "Hold out by a column with more values.",
    );
  }
  const values = terms.map((term) => numberColumn(rows, used, term));
  const fitted = (places: readonly number[]) =>
    fitLogistic({ rows: places.map((i) => rows[used[i]!]!), outcome, terms, interval: "wald", level });
  const probability = ({ coefficients }: LogisticFit, i: number): number => {
    const linear = coefficients.reduce((sum, { estimate }, j) => sum + estimate * (j === 0 ? 1 : values[j - 1]![i]!), 0);
    return 1 / (1 + Math.exp(-linear));
  };
  const places = Array.from(used.keys());
  const foldOf = (i: number) => groups?.index[i] ?? i;
  const fit = fitted(places);
  const own = Float64Array.from(places, (i) => probability(fit, i));
  const heldOut = new Float64Array(used.length);
  for (let fold = 0; fold < folds; fold += 1) {
    const name = groups === null ? `row ${used[fold]! + 1}` : `"${String(groups.labels[fold]![0])}"`;
    const rule = without(name, () => fitted(places.filter((i) => foldOf(i) !== fold)));
    for (const i of places) if (foldOf(i) === fold) heldOut[i] = probability(rule, i);
  }
  const tried = (probabilities: Float64Array, method: string) =>
    tabulated(
      ["no", "yes"],
      truth,
      Int32Array.from(probabilities, (value) => (value >= cutoff ? 1 : 0)),
      { groups, level, method },
    );
  const held = foldBy === undefined ? "each row by a rule made without it" : `each ${foldBy} by a rule made without it`;
  return {
    fit,
    resubstitution: tried(own, "Tried on the rows the rule was made from, which flatters it"),
    crossValidated: tried(heldOut, `Held out: ${held}, ${folds} in all`),
    brier: heldOut.reduce((sum, value, i) => sum + (value - truth[i]!) ** 2, 0) / used.length,
    rows: places.map((i) => ({ row: used[i]!, outcome: truth[i] === 1, probability: own[i]!, heldOut: heldOut[i]! })),
    n: used.length,
    folds,
    dropped,
    method: `Logistic rule for ${outcome} by ${terms.join(", ")}, yes from a probability of ${cutoff}`,
  };
}

function without(name: string, fit: () => LogisticFit): LogisticFit {
  try {
    return fit();
  } catch (fault) {
    if (!(fault instanceof EstimateError)) throw fault;
    throw new EstimateError(fault.code, `Without ${name}: ${fault.message}`, fault.hint);
  }
}
