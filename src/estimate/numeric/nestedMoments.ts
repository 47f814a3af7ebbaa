import { addOuter } from "./addOuter.js";
import { crossProduct } from "./crossProduct.js";
import { groupTotals } from "./groupTotals.js";
import type { MomentsAt } from "./MarginalMoments.js";

/** Rows in inner groups, these in outer groups. */
export interface NestedIndex {
  /** Inner group of each row. */
  readonly inner: Int32Array;
  readonly innerCount: number;
  /** Outer group of each inner group. */
  readonly outerOf: Int32Array;
  readonly outerCount: number;
}

/**
 * Moments under two nested random intercepts, theta being the outer and the inner SD over the residual SD. The inverse of
 * V = I + theta_inner^2 ZZ' + theta_outer^2 YY' is taken by the Woodbury identity group by group, inner ones first, from sums over
 * inner groups alone: the work of a call does not depend on the number of rows.
 */
export function nestedMoments(
  columns: readonly Float64Array[],
  { inner, innerCount, outerOf, outerCount }: NestedIndex,
): MomentsAt {
  const size = columns.length;
  const whole = crossProduct(columns);
  const t = groupTotals(columns, inner, innerCount);
  const n = new Float64Array(innerCount);
  inner.forEach((group) => (n[group]! += 1));
  return ([outerSd = 0, innerSd = 0]) => {
    const cross = whole.slice();
    const [byOuter, byInner] = [new Float64Array(size * size), new Float64Array(size * size)];
    // Of each outer group, with the inner effects taken out: 1'1, 1'[X y], and their derivatives by the inner SD.
    const [N, NBy] = [new Float64Array(outerCount), new Float64Array(outerCount)];
    const [T, TBy] = [new Float64Array(outerCount * size), new Float64Array(outerCount * size)];
    let [logDeterminant, logByOuter, logByInner] = [0, 0, 0];
    for (let j = 0; j < innerCount; j += 1) {
      const m = 1 + innerSd * innerSd * n[j]!;
      const here = j * size;
      addOuter(cross, size, (-innerSd * innerSd) / m, t, here, t, here);
      addOuter(byInner, size, (-2 * innerSd) / (m * m), t, here, t, here);
      logDeterminant += Math.log(m);
      logByInner += (2 * innerSd * n[j]!) / m;
      const shrink = (-2 * innerSd * n[j]!) / (m * m);
      const outer = outerOf[j]!;
      N[outer]! += n[j]! / m;
      NBy[outer]! += n[j]! * shrink;
      for (let k = 0; k < size; k += 1) {
        T[outer * size + k]! += t[here + k]! / m;
        TBy[outer * size + k]! += t[here + k]! * shrink;
      }
    }
    for (let g = 0; g < outerCount; g += 1) {
      const square = outerSd * outerSd;
      const m = 1 + square * N[g]!;
      const here = g * size;
      addOuter(cross, size, -square / m, T, here, T, here);
      addOuter(byOuter, size, (-2 * outerSd) / (m * m), T, here, T, here);
      addOuter(byInner, size, (-2 * square) / m, T, here, TBy, here);
      addOuter(byInner, size, (square * square * NBy[g]!) / (m * m), T, here, T, here);
      logDeterminant += Math.log(m);
      logByOuter += (2 * outerSd * N[g]!) / m;
      logByInner += (square * NBy[g]!) / m;
    }
    return { cross, logDeterminant, crossBy: [byOuter, byInner], logDeterminantBy: Float64Array.of(logByOuter, logByInner) };
  };
}
