import { Matrix } from "ml-matrix";
import { crossProduct } from "./crossProduct.js";
import { linearPredictor } from "./linearPredictor.js";

/**
 * Sandwich covariance B S S' B' of scores S, one array a coefficient and one number a cluster, B being the inverse information.
 * Taken as the square of B S, so that its diagonal cannot turn negative.
 */
export function scoreCovariance(bread: Matrix, scores: readonly Float64Array[]): Matrix {
  const size = bread.rows;
  const influences = scores.map((_, j) => linearPredictor(scores, bread.getRow(j)));
  return Matrix.from1DArray(size, size, crossProduct(influences));
}
