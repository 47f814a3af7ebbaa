import { Matrix, QrDecomposition } from "ml-matrix";
import { expect, test } from "vitest";
import { stackedQr } from "../../../src/estimate/numeric/stackedQr.js";

const columns = [1, 2, 3, 4].map((k) => Float64Array.from({ length: 1500 }, (_, i) => Math.sin(k * i) + k * 0.01 * i));

test("the triangle of ml-matrix, but for the signs of rows, over several blocks", () => {
  const library = new QrDecomposition(new Matrix(columns).transpose()).upperTriangularMatrix;
  const own = stackedQr(columns);
  for (let j = 0; j < 4; j += 1) {
    const sign = Math.sign(own.get(j, j) * library.get(j, j));
    for (let k = 0; k < 4; k += 1) expect(own.get(j, k) * sign).toBeCloseTo(library.get(j, k), 9);
  }
});

test("rows are scaled first", () => {
  const scale = Float64Array.from({ length: 1500 }, (_, i) => 1 + (i % 3));
  const scaled = stackedQr(columns.map((column) => column.map((value, i) => value * scale[i]!)));
  expect(stackedQr(columns, scale).to2DArray()).toEqual(scaled.to2DArray());
});

test("fewer rows than columns leave zeros", () => {
  const short = columns.map((column) => column.slice(0, 2));
  for (const value of stackedQr(short).getRow(2)) expect(Math.abs(value)).toBeLessThan(1e-15);
});
