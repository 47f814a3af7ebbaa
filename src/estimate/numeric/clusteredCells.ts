import type { ClusteredBinomial } from "./ClusteredBinomial.js";
import { nestCounts } from "./nestCounts.js";

/** Rows as they come, one number a row. */
interface ClusteredRows {
  readonly columns: readonly Float64Array[];
  readonly cases: Float64Array;
  readonly n: Float64Array;
  /** Null when every foot weighs 1. */
  readonly weights: Float64Array | null;
  readonly groups: { readonly index: Int32Array; readonly count: number };
}

/** Adds up the rows of a cluster with equal terms and weight, and keeps one of clusters that are alike. */
export function clusteredCells({ columns, cases, n, weights, groups }: ClusteredRows): ClusteredBinomial {
  const all = weights === null ? columns : [...columns, weights];
  const { x, innerStart, copies, ...nest } = nestCounts({
    columns: all,
    cases,
    n,
    outer: new Int32Array(cases.length),
    inner: groups.index,
  });
  const cellsOf = all.map((_, t) => Float64Array.from({ length: nest.cells }, (_, k) => x[k * all.length + t]!));
  const index = new Int32Array(nest.cells);
  const sizes = new Float64Array(nest.inner);
  for (let c = 0; c < nest.inner; c += 1) {
    for (let k = innerStart[c]!; k < innerStart[c + 1]!; k += 1) {
      index[k] = c;
      sizes[c]! += nest.n[k]!;
    }
  }
  return {
    columns: cellsOf.slice(0, columns.length),
    cases: nest.cases,
    n: nest.n,
    weights: weights === null ? new Float64Array(nest.cells).fill(1) : cellsOf[columns.length]!,
    groups: { index, count: nest.inner },
    sizes,
    copies,
  };
}
