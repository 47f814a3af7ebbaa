import { EstimateError } from "../EstimateError.js";
import { addRow } from "./addRow.js";
import type { ClassSums } from "./ClassSums.js";
import { discriminantRule } from "./discriminantRule.js";
import type { DiscriminantRows } from "./discriminantRows.js";

/**
 * Posterior probabilities of each row from a rule made without it, or without its whole fold. Priors stay those of all rows. `sums` are
 * those of all rows, and are again when this returns.
 *
 * Errors: `too_few` when a class has no row, or too few are left, without a fold; `collinear` when the terms repeat each other then.
 */
export function heldOutPosteriors(
  { classes, truth, values, folds, used }: DiscriminantRows,
  sums: ClassSums,
  priors: readonly number[],
): readonly Float64Array[] {
  const members: number[][] = Array.from({ length: folds?.count ?? values.length }, () => []);
  values.forEach((_, i) => members[folds?.index[i] ?? i]!.push(i));
  const posteriors = new Array<Float64Array>(values.length);
  members.forEach((fold, f) => {
    const name = folds === null ? `row ${used[f]! + 1}` : `"${String(folds.labels[f]![0])}"`;
    for (const i of fold) addRow(sums, truth[i]!, values[i]!, -1);
    const gone = sums.counts.findIndex((count) => count < 1);
    if (gone !== -1) {
      throw new EstimateError(
        "too_few",
        `Without ${name} no row of class "${classes[gone]!}" is left to learn from.`,
        "Every class needs rows in two folds or more.",
      );
    }
    const left = values.length - fold.length - classes.length;
    if (left < values[0]!.length) {
      throw new EstimateError("too_few", `Without ${name} too few rows are left for the terms.`, "Use fewer terms or more rows.");
    }
    const rule = discriminantRule(sums, priors);
    if (rule === null) {
      throw new EstimateError(
        "collinear",
        `Without ${name} the terms repeat each other or do not vary within classes.`,
        "Leave out the term that varies in that fold alone.",
      );
    }
    for (const i of fold) posteriors[i] = rule.posterior(values[i]!);
    for (const i of fold) addRow(sums, truth[i]!, values[i]!, 1);
  });
  return posteriors;
}
