import type { GroupIndex } from "../design/groupIndex.js";
import { groupTotals } from "../numeric/groupTotals.js";
import { slopeMoments } from "../numeric/slopeMoments.js";
import type { RandomStructure } from "./RandomStructure.js";

/**
 * A random intercept and a random slope in one kind of group. The fit sees the slope's column divided by its spread and, when the two
 * are correlated, less its mean; spreads and modes are those of the column as given.
 */
export function slopeStructure(
  columns: readonly Float64Array[],
  slope: Float64Array,
  { index, count }: GroupIndex,
  correlated: boolean,
): RandomStructure {
  const centre = correlated ? slope.reduce((sum, value) => sum + value, 0) / slope.length : 0;
  const unit = Math.sqrt(slope.reduce((sum, value) => sum + (value - centre) ** 2, 0) / slope.length);
  const scaled = slope.map((value) => (value - centre) / unit);
  /** Rows of the matrix that takes intercept and slope of the scaled column to those of the given one, times Lambda. */
  const given = ([a = 0, c = 0, b = 0]: Float64Array) =>
    [
      [a - (centre / unit) * b, -(centre / unit) * c],
      [b / unit, c / unit],
    ] as const;
  return {
    moments: slopeMoments(columns, scaled, index, count),
    size: 3,
    free: correlated ? [0, 1, 2] : [0, 1],
    sds: correlated ? [1] : [0, 1],
    spreads: (theta) => {
      const [[p, q], [r, s]] = given(theta);
      const sds = [Math.hypot(p, q), Math.hypot(r, s)];
      if (!correlated || sds.includes(0)) return { sds, correlation: null };
      const singular = theta[0] === 0 || theta[1] === 0;
      const correlation = (p * r + q * s) / (sds[0]! * sds[1]!);
      return { sds, correlation: singular ? Math.sign(correlation) : correlation };
    },
    thetaOf: ({ sds: [first = 0, second = 0], correlation }) => {
      const covariance = (correlation ?? 0) * first * second;
      const variance = first ** 2 + 2 * centre * covariance + (centre * second) ** 2;
      const a = Math.sqrt(variance);
      const b = a === 0 ? 0 : (unit * (covariance + centre * second ** 2)) / a;
      return Float64Array.of(a, Math.sqrt(Math.max(0, (unit * second) ** 2 - b * b)), b);
    },
    modes: (theta, residuals) => {
      const totals = groupTotals([new Float64Array(slope.length).fill(1), scaled, residuals], index, count);
      const products = groupTotals([scaled, residuals], index, count, scaled);
      const [a, c, b] = theta as unknown as readonly [number, number, number];
      const [[p, q], [r, s]] = given(theta);
      const effects = [0, 1].map(() => ({ modes: new Float64Array(count), sds: new Float64Array(count) }));
      for (let g = 0; g < count; g += 1) {
        const [n, sum, rest] = totals.subarray(3 * g, 3 * g + 3) as unknown as readonly [number, number, number];
        const [squares, product] = products.subarray(2 * g, 2 * g + 2) as unknown as readonly [number, number];
        // M = I + Lambda'Z'Z Lambda; the effects are Lambda u, u with mean M^-1 Lambda'Z'r and variance M^-1.
        const m0 = 1 + a * a * n + 2 * a * b * sum + b * b * squares;
        const m1 = c * (a * sum + b * squares);
        const m2 = 1 + c * c * squares;
        const determinant = m0 * m2 - m1 * m1;
        const [e0, e1] = [a * rest + b * product, c * product];
        const [u0, u1] = [(m2 * e0 - m1 * e1) / determinant, (m0 * e1 - m1 * e0) / determinant];
        [
          [p, q],
          [r, s],
        ].forEach(([x = 0, y = 0], k) => {
          effects[k]!.modes[g] = x * u0 + y * u1;
          effects[k]!.sds[g] = Math.sqrt((x * x * m2 - 2 * x * y * m1 + y * y * m0) / determinant);
        });
      }
      return effects;
    },
  };
}
