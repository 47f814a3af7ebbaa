import type { Matrix } from "ml-matrix";

/** `bread` times `filling` (the identity when left out) times `bread` turned over: a covariance matrix in other coordinates. */
export function sandwich(bread: Matrix, filling?: Matrix): Matrix {
  return (filling === undefined ? bread : bread.mmul(filling)).mmul(bread.transpose());
}
