import { Matrix, QrDecomposition } from "ml-matrix";

const BLOCK_ROWS = 256;

/**
 * The triangle R of the QR decomposition of a tall matrix given by its columns, p x p; the signs of its rows are arbitrary. Each
 * row is first multiplied by its entry of `rowScale`. With the response as last column, R holds Q'y above the corner and the root
 * of the residual sum of squares in it. Rows are taken in blocks stacked under the triangle so far, so memory stays small and the
 * accuracy is that of Householder reflections.
 *
 * Source: Golub GH, Van Loan CF, Matrix Computations, on updating a QR factorisation by appended rows.
 */
export function stackedQr(columns: readonly Float64Array[], rowScale?: Float64Array): Matrix {
  const p = columns.length;
  const n = columns[0]?.length ?? 0;
  let triangle = Matrix.zeros(p, p);
  for (let start = 0; start < n; start += BLOCK_ROWS) {
    const end = Math.min(n, start + BLOCK_ROWS);
    const block = Matrix.zeros(p + end - start, p);
    block.setSubMatrix(triangle, 0, 0);
    for (let j = 0; j < p; j += 1) {
      const column = columns[j]!;
      for (let i = start; i < end; i += 1) {
        block.set(p + i - start, j, rowScale === undefined ? column[i]! : column[i]! * rowScale[i]!);
      }
    }
    triangle = new QrDecomposition(block).upperTriangularMatrix;
  }
  return triangle;
}
