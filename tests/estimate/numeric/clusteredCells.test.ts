import { describe, expect, test } from "vitest";
import { clusteredCells } from "../../../src/estimate/numeric/clusteredCells.js";

const array = (...values: number[]) => Float64Array.from(values);
const groups = (...index: number[]) => ({ index: Int32Array.from(index), count: Math.max(...index) + 1 });

describe("cells of clusters", () => {
  // Clusters 0 and 2 hold the same feet in another order; cluster 1 has one more of the second kind.
  const rows = {
    columns: [array(1, 1, 1, 1, 1, 1, 1, 1), array(0, 2, 2, 0, 2, 2, 0, 2)],
    cases: array(1, 0, 1, 1, 0, 0, 1, 0),
    n: array(1, 1, 1, 1, 1, 1, 1, 1),
    groups: groups(0, 0, 1, 1, 1, 1, 2, 2),
  };

  test("rows with equal terms are added up, clusters that are alike kept once", () => {
    const { columns, cases, n, weights, groups, sizes, copies } = clusteredCells({ ...rows, weights: null });
    expect(columns).toEqual([array(1, 1, 1, 1), array(0, 2, 0, 2)]);
    expect(cases).toEqual(array(1, 0, 1, 1));
    expect(n).toEqual(array(1, 1, 1, 3));
    expect(weights).toEqual(array(1, 1, 1, 1));
    expect(groups).toEqual({ index: Int32Array.of(0, 0, 1, 1), count: 2 });
    expect(sizes).toEqual(array(2, 4));
    expect(copies).toEqual(array(2, 1));
  });

  test("rows that weigh differently stay apart", () => {
    const weights = array(1, 1, 1, 1, 1, 3, 2, 1);
    const cells = clusteredCells({ ...rows, weights });
    expect(cells.weights).toEqual(array(1, 1, 1, 1, 3, 2, 1));
    expect(cells.n).toEqual(array(1, 1, 1, 2, 1, 1, 1));
    expect(cells.copies).toEqual(array(1, 1, 1));
    expect(cells.columns).toHaveLength(2);
  });
});
