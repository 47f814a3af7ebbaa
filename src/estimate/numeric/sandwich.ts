import type { Matrix } from "ml-matrix";

/** `bread` times `filling` times `bread` turned over: a covariance matrix taken to other coordinates, or a sandwich covariance. */
export function sandwich(bread: Matrix, filling: Matrix): Matrix {
  return bread.mmul(filling).mmul(bread.transpose());
}
