import type { NestedCounts } from "../../../src/estimate/numeric/NestedCounts.js";
import { nestCounts } from "../../../src/estimate/numeric/nestCounts.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";

/**
 * Horses of a few yards with a wet and a hind term and up to `most` feet a cell; log odds spread widely. With `most` 2 every cell has
 * two feet and wet is the yard's, so that many horses are alike.
 */
export function nestedFeet(yards: number, most: number, seed: string): NestedCounts {
  const random = seededRandom(seed);
  const rows = Array.from({ length: yards }, (_, outer) => {
    const yardWet = random.normal();
    return Array.from({ length: most === 2 ? 12 : random.integer(2, 6) }, (_, horse) => {
      const effect = random.normal(0, 1.5);
      return [0, 1].map((hind) => {
        const [n, wet] = most === 2 ? [2, yardWet] : [random.integer(1, most), random.normal()];
        const cases = Array.from({ length: n }, () => random.bernoulli(1 / (1 + Math.exp(0.5 - wet - effect)))).filter(
          Boolean,
        ).length;
        return { outer, inner: 20 * outer + horse, hind, wet, n, cases };
      });
    });
  }).flat(2);
  const numbers = [...new Set(rows.map(({ inner }) => inner))];
  return nestCounts({
    columns: [rows.map(() => 1), rows.map(({ wet }) => wet), rows.map(({ hind }) => hind)].map((column) =>
      Float64Array.from(column),
    ),
    cases: Float64Array.from(rows, ({ cases }) => cases),
    n: Float64Array.from(rows, ({ n }) => n),
    outer: Int32Array.from(rows, ({ outer }) => outer),
    inner: Int32Array.from(rows, ({ inner }) => numbers.indexOf(inner)),
  });
}

/** Log-likelihood of one inner group's cells at a shift of the log odds, binomial coefficients left out. */
export function groupLogLik(data: NestedCounts, theta: Float64Array, group: number, shift: number): number {
  let sum = 0;
  for (let k = data.innerStart[group]!; k < data.innerStart[group + 1]!; k++) {
    let eta = shift;
    for (let t = 0; t < data.terms; t++) eta += data.x[k * data.terms + t]! * theta[t]!;
    sum += data.cases[k]! * eta - data.n[k]! * Math.log1p(Math.exp(eta));
  }
  return sum;
}
