import { EigenvalueDecomposition, Matrix } from "ml-matrix";

export interface CurvatureInverse {
  /** Inverse of minus the matrix, row after row; where the matrix is not negative definite, of its nearest repair. */
  readonly inverse: Float64Array;
  /** Smallest eigenvalue of minus the matrix, over the largest; not positive when the matrix is not negative definite. */
  readonly definiteness: number;
}

/**
 * Inverts minus a symmetric matrix of second derivatives. Eigenvalues that are negative are turned round and those near zero
 * lifted, so that the result always serves as a step matrix; `definiteness` tells whether it serves as a covariance.
 */
export function curvatureInverse(hessian: Float64Array): CurvatureInverse {
  const size = Math.sqrt(hessian.length);
  if (size === 0) return { inverse: new Float64Array(0), definiteness: Infinity };
  if (!hessian.every(Number.isFinite)) {
    return { inverse: Float64Array.from(hessian, (_, at) => (at % (size + 1) === 0 ? 1e-2 : 0)), definiteness: NaN };
  }
  const curvature = Matrix.from1DArray(size, size, hessian).mul(-1);
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(curvature, { assumeSymmetric: true });
  const largest = realEigenvalues.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const repaired = realEigenvalues.map((value) => 1 / Math.max(Math.abs(value), 1e-8 * largest, Number.MIN_VALUE));
  const inverse = eigenvectorMatrix.mmul(Matrix.diag(repaired)).mmul(eigenvectorMatrix.transpose());
  return { inverse: Float64Array.from(inverse.to1DArray()), definiteness: Math.min(...realEigenvalues) / largest };
}
