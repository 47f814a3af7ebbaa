import type { NestedCounts } from "../numeric/NestedCounts.js";

interface PooledCells {
  readonly columns: readonly Float64Array[];
  readonly y: Float64Array;
  readonly m: Float64Array;
}

/** The cells as totals of a regression without random effects: column by column, cases and numbers times the copies. */
export function pooledCells(data: NestedCounts): PooledCells {
  const { terms, cells, inner, x, cases, n, innerStart, copies } = data;
  const columns = Array.from({ length: terms }, (_, t) =>
    Float64Array.from({ length: cells }, (_, cell) => x[cell * terms + t]!),
  );
  const y = new Float64Array(cells);
  const m = new Float64Array(cells);
  for (let j = 0; j < inner; j++) {
    for (let cell = innerStart[j]!; cell < innerStart[j + 1]!; cell++) {
      y[cell] = copies[j]! * cases[cell]!;
      m[cell] = copies[j]! * n[cell]!;
    }
  }
  return { columns, y, m };
}
