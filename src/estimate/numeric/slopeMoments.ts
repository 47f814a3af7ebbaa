import { addOuter } from "./addOuter.js";
import { crossProduct } from "./crossProduct.js";
import { groupTotals } from "./groupTotals.js";
import type { MomentsAt } from "./MarginalMoments.js";

/** A 2 x 2 matrix: its entries row by row. */
type Two = readonly [number, number, number, number];

/** Entries of the triangle Lambda = [[theta_0, 0], [theta_2, theta_1]], by which parameter, as unit matrices. */
const UNITS: readonly Two[] = [
  [1, 0, 0, 0],
  [0, 0, 0, 1],
  [0, 0, 1, 0],
];

/**
 * Moments under one kind of group with a random intercept and a random slope, whose covariance over the residual variance is
 * Lambda Lambda', Lambda = [[theta_0, 0], [theta_2, theta_1]]. The inverse of V is taken by the Woodbury identity group by group,
 * from sums over groups alone.
 */
export function slopeMoments(columns: readonly Float64Array[], slope: Float64Array, index: Int32Array, count: number): MomentsAt {
  const size = columns.length;
  const whole = crossProduct(columns);
  const sums = [groupTotals(columns, index, count), groupTotals(columns, index, count, slope)] as const;
  const ones = new Float64Array(slope.length).fill(1);
  const [n, s, ss] = [ones, slope, slope.map((value) => value * value)].map((column) => groupTotals([column], index, count)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return ([a = 0, c = 0, b = 0]) => {
    const lambda: Two = [a, 0, b, c];
    const cross = whole.slice();
    const crossBy = UNITS.map(() => new Float64Array(size * size));
    const logDeterminantBy = new Float64Array(UNITS.length);
    let logDeterminant = 0;
    for (let g = 0; g < count; g += 1) {
      const spread: Two = [n[g]!, s[g]!, s[g]!, ss[g]!];
      const p = times(spread, lambda);
      const m = times(turned(lambda), p);
      const [m0, m1, m2] = [1 + m[0], m[1], 1 + m[3]];
      const determinant = m0 * m2 - m1 * m1;
      const inverse: Two = [m2 / determinant, -m1 / determinant, -m1 / determinant, m0 / determinant];
      const q = times(lambda, inverse);
      add(cross, size, times(q, turned(lambda)), -1, sums, g);
      logDeterminant += Math.log(determinant);
      UNITS.forEach((unit, k) => {
        const turn = times(turned(unit), p);
        const change = times(minus(unit, times(q, turn)), turned(q));
        add(crossBy[k]!, size, change, -2, sums, g);
        const product = times(inverse, turn);
        logDeterminantBy[k]! += 2 * (product[0] + product[3]);
      });
    }
    return { cross, logDeterminant, crossBy, logDeterminantBy };
  };
}

/** Adds `weight` times T' W T, T the sums of group g and W made symmetric. */
function add(
  matrix: Float64Array,
  size: number,
  w: Two,
  weight: number,
  [plain, sloped]: readonly [Float64Array, Float64Array],
  g: number,
): void {
  const here = g * size;
  addOuter(matrix, size, weight * w[0], plain, here, plain, here);
  addOuter(matrix, size, weight * (w[1] + w[2]), plain, here, sloped, here);
  addOuter(matrix, size, weight * w[3], sloped, here, sloped, here);
}

function times(a: Two, b: Two): Two {
  return [a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3], a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3]];
}

function minus(a: Two, b: Two): Two {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2], a[3] - b[3]];
}

function turned(a: Two): Two {
  return [a[0], a[2], a[1], a[3]];
}
