import { EigenvalueDecomposition, Matrix } from "ml-matrix";

/** Points and weights of Gauss-Hermite quadrature, scaled for integrands that look like a normal density. */
export interface GaussHermite {
  /** Distance of each point from the centre, in spreads, ascending. */
  readonly points: Float64Array;
  /** `spread * sum(weights * f(centre + spread * points))` stands for the integral of `f` over the whole line. */
  readonly weights: Float64Array;
}

/** Orthonormal Hermite functions of the two highest degrees below and at `count`; they neither overflow nor lose digits. */
function hermiteFunctions(count: number, x: number): [previous: number, last: number] {
  let previous = 0;
  let last = Math.PI ** -0.25 * Math.exp((-x * x) / 2);
  for (let degree = 1; degree <= count; degree++) {
    const next = x * Math.sqrt(2 / degree) * last - Math.sqrt((degree - 1) / degree) * previous;
    previous = last;
    last = next;
  }
  return [previous, last];
}

/**
 * Gauss-Hermite rule of `count` points (1 to 200) for adaptive use: exact when `f` is the normal density with that centre and
 * spread times a polynomial of degree below `2 count`.
 *
 * Source: Golub GH & Welsch JH (1969) Math Comp 23:221-230 (points as eigenvalues); Liu Q & Pierce DA (1994) Biometrika
 * 81:624-629 (centre and spread from the integrand).
 */
export function gaussHermite(count: number): GaussHermite {
  const jacobi = Matrix.zeros(count, count);
  for (let i = 1; i < count; i++) {
    jacobi.set(i, i - 1, Math.sqrt(i / 2));
    jacobi.set(i - 1, i, Math.sqrt(i / 2));
  }
  const roots = new EigenvalueDecomposition(jacobi, { assumeSymmetric: true }).realEigenvalues.sort((a, b) => a - b);
  const points = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    // The rule is symmetric; one Newton step takes the root to the last digit.
    const rough = (roots[i]! - roots[count - 1 - i]!) / 2;
    const [below, at] = hermiteFunctions(count, rough);
    const root = rough - at / (Math.sqrt(2 * count) * below);
    const [previous] = hermiteFunctions(count, root);
    points[i] = root * Math.SQRT2;
    weights[i] = Math.SQRT2 / (count * previous * previous);
  }
  return { points, weights };
}
