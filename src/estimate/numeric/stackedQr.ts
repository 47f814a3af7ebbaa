import { Matrix } from "ml-matrix";

const BLOCK_ROWS = 512;

/**
 * The triangle R of the QR decomposition of a tall matrix given by its columns, p x p; the signs of its rows are arbitrary. Each
 * row is first multiplied by its entry of `rowScale`. With the response as last column, R holds Q'y above the corner and, up to
 * sign, the root of the residual sum of squares in it. Rows are folded into the triangle block by block with Householder
 * reflections, so memory stays small and the accuracy is that of a QR of the whole.
 *
 * Written out because the library's QR takes five times as long on tall matrices.
 *
 * Source: Golub GH, Van Loan CF, Matrix Computations: Householder reflections; appending rows to a QR factorisation.
 */
export function stackedQr(columns: readonly Float64Array[], rowScale?: Float64Array): Matrix {
  const p = columns.length;
  const n = columns[0]?.length ?? 0;
  const triangle = columns.map(() => new Float64Array(p));
  const block = columns.map(() => new Float64Array(BLOCK_ROWS));
  for (let start = 0; start < n; start += BLOCK_ROWS) {
    const size = Math.min(BLOCK_ROWS, n - start);
    for (let j = 0; j < p; j += 1) {
      const [from, to] = [columns[j]!, block[j]!];
      for (let i = 0; i < size; i += 1)
        to[i] = rowScale === undefined ? from[start + i]! : from[start + i]! * rowScale[start + i]!;
    }
    for (let k = 0; k < p; k += 1) reflect(triangle[k]!, block, size, k);
  }
  return new Matrix(triangle);
}

/** Turns column k of the block into zeros with one reflection against row k of the triangle, and the columns right of it along. */
function reflect(row: Float64Array, block: readonly Float64Array[], size: number, k: number): void {
  const pivot = block[k]!;
  let below = 0;
  for (let i = 0; i < size; i += 1) below += pivot[i]! * pivot[i]!;
  if (below === 0) return;
  const length = Math.sqrt(row[k]! * row[k]! + below);
  const first = row[k]! + (row[k]! < 0 ? -length : length);
  const twice = 2 / (first * first + below);
  for (let j = k + 1; j < row.length; j += 1) {
    const column = block[j]!;
    let inner = first * row[j]!;
    for (let i = 0; i < size; i += 1) inner += pivot[i]! * column[i]!;
    const multiple = inner * twice;
    row[j]! -= multiple * first;
    for (let i = 0; i < size; i += 1) column[i]! -= multiple * pivot[i]!;
  }
  row[k] = row[k]! < 0 ? length : -length;
}
