import { Matrix } from "ml-matrix";
import { groupIndex } from "../design/groupIndex.js";
import type { DesignMatrix } from "../designMatrix.js";
import type { MixedLogisticFit } from "../fitMixedLogistic.js";
import { jointModes } from "../numeric/jointModes.js";
import { nestCounts } from "../numeric/nestCounts.js";
import { nestedQuadrature } from "../numeric/nestedQuadrature.js";
import { scoreCovariance } from "../numeric/scoreCovariance.js";

/**
 * Covariance of all parameters of a mixed logistic fit (coefficients, then logarithms of the SDs) that holds whatever else the feet of
 * one outermost group share: the sandwich of the scores of the outermost groups.
 */
export function yardRobust(
  rows: readonly object[],
  { columns, used }: DesignMatrix,
  fit: MixedLogisticFit,
  groups: readonly string[],
  cases: Float64Array,
  n: Float64Array,
): { readonly covariance: Matrix; readonly count: number } {
  const outer = groupIndex(rows, used, groups.slice(0, 1));
  const inner = groupIndex(rows, used, groups);
  const terms = columns.length;
  const nodes = fit.convergence.nodes!;
  const points = groups.length === 2 ? { outer: nodes[0]!, inner: nodes[1]! } : { outer: 1, inner: nodes[0]! };
  const sds = groups.length === 2 ? fit.groups.map(({ sd }) => sd) : [0, fit.groups[0]!.sd];
  const theta = Float64Array.from([...fit.coefficients.map(({ estimate }) => estimate), ...sds]);
  const places = [...columns.keys(), ...[0, 1].filter((g) => sds[g]! > 0).map((g) => terms + g)];
  const scores = places.map(() => new Float64Array(outer.count));
  for (let g = 0; g < outer.count; g += 1) {
    const rowsOf = [...outer.index.keys()].filter((i) => outer.index[i] === g);
    const numbers = new Map([...new Set(rowsOf.map((i) => inner.index[i]!))].map((value, place) => [value, place]));
    const data = nestCounts({
      columns: columns.map((column) => Float64Array.from(rowsOf, (i) => column[i]!)),
      cases: Float64Array.from(rowsOf, (i) => cases[i]!),
      n: Float64Array.from(rowsOf, (i) => n[i]!),
      outer: new Int32Array(rowsOf.length),
      inner: Int32Array.from(rowsOf, (i) => numbers.get(inner.index[i]!)!),
    });
    const gradient = new Float64Array(theta.length);
    nestedQuadrature(data, jointModes(data), points)(theta, gradient);
    places.forEach((place, k) => (scores[k]![g] = gradient[place]! * (place >= terms ? theta[place]! : 1)));
  }
  const bread = new Matrix(fit.parameters.covariance.map((row) => [...row]));
  return { covariance: scoreCovariance(bread, scores), count: outer.count };
}
