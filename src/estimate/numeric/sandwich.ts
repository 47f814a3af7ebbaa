import type { Matrix } from "ml-matrix";

/** `bread` times `filling` times `bread` turned over: a covariance matrix in other coordinates. */
export function sandwich(bread: Matrix, filling: Matrix): Matrix {
  return bread.mmul(filling).mmul(bread.transpose());
}
