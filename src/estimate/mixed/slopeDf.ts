import type { GroupIndex } from "../design/groupIndex.js";
import type { DesignMatrix } from "../designMatrix.js";
import { EstimateError } from "../EstimateError.js";

/**
 * Degrees of freedom of each coefficient by containment, beside a random intercept and a random slope in one kind of group. What is
 * constant within groups is judged by the intercepts of the groups, what is a straight line in the slope's column within each group
 * by their slopes, the rest by the rows: groups, groups, and rows less two a group, each less the coefficients judged there.
 *
 * Errors: `too_few` when none are left for some.
 *
 * Source: Pinheiro JC & Bates DM (2000) Mixed-Effects Models in S and S-PLUS, section 2.4.2, with a slope for a level of its own.
 */
export function slopeDf({ names, columns, n }: DesignMatrix, groups: GroupIndex, slope: Float64Array): readonly number[] {
  const judges = columns.map((column) => (constant(column, groups) ? 0 : straight(column, groups, slope) ? 1 : 2));
  const sizes = [groups.count, groups.count, n - 2 * groups.count];
  const df = judges.map((judge) => sizes[judge]! - judges.filter((other) => other === judge).length);
  const short = names.filter((_, j) => df[j]! <= 0);
  if (short.length === 0 && sizes[2]! > 0) return df;
  throw new EstimateError(
    "too_few",
    `With ${groups.count} groups and ${n} rows, nothing is left to judge ${short.length === 0 ? "the residual" : short.map((name) => `"${name}"`).join(", ")} by.`,
    "Use more groups or rows, or leave the random slope out.",
  );
}

function constant(column: Float64Array, { index, count }: GroupIndex): boolean {
  const first = firsts(index, count);
  return column.every((value, row) => value === column[first[index[row]!]!]);
}

/** Whether the column is a straight line in `slope` within each group. */
function straight(column: Float64Array, { index, count }: GroupIndex, slope: Float64Array): boolean {
  const first = firsts(index, count);
  const second = new Int32Array(count).fill(-1);
  const largest = column.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return column.every((value, row) => {
    const group = index[row]!;
    const [from, to] = [first[group]!, second[group]!];
    const away = slope[row]! - slope[from]!;
    if (away === 0) return Math.abs(value - column[from]!) <= 1e-9 * largest;
    if (to === -1) {
      second[group] = row;
      return true;
    }
    const rise = (column[to]! - column[from]!) / (slope[to]! - slope[from]!);
    return Math.abs(column[from]! + rise * away - value) <= 1e-9 * largest;
  });
}

/** First row of each group. */
function firsts(index: Int32Array, count: number): Int32Array {
  const rows = new Int32Array(count).fill(-1);
  index.forEach((group, row) => {
    if (rows[group] === -1) rows[group] = row;
  });
  return rows;
}
