import type { GroupIndex } from "../design/groupIndex.js";
import { nestedMoments } from "../numeric/nestedMoments.js";
import type { EffectModes, RandomStructure } from "./RandomStructure.js";

/** One or two nested random intercepts, the outer first; theta holds the outer SD (0 when there is none) and the inner one. */
export function interceptStructure(columns: readonly Float64Array[], indices: readonly GroupIndex[]): RandomStructure {
  const inner = indices.at(-1)!;
  const outer = indices.length === 2 ? indices[0]! : { index: new Int32Array(inner.index.length), count: 1 };
  const outerOf = new Int32Array(inner.count);
  inner.index.forEach((group, row) => (outerOf[group] = outer.index[row]!));
  const free = indices.length === 2 ? [0, 1] : [1];
  return {
    moments: nestedMoments(columns, { inner: inner.index, innerCount: inner.count, outerOf, outerCount: outer.count }),
    size: 2,
    free,
    sds: free,
    spreads: (theta) => ({ sds: free.map((place) => theta[place]!), correlation: null }),
    thetaOf: ({ sds }) => Float64Array.of(sds.length === 2 ? sds[0]! : 0, sds.at(-1)!),
    modes: (theta, residuals) => nestedModes(theta, residuals, inner, outerOf, outer.count).slice(2 - indices.length),
  };
}

/** Modes of outer and inner intercepts. */
function nestedModes(
  [outerSd = 0, innerSd = 0]: Float64Array,
  residuals: Float64Array,
  inner: GroupIndex,
  outerOf: Int32Array,
  outerCount: number,
): readonly [EffectModes, EffectModes] {
  const [n, sums] = [new Float64Array(inner.count), new Float64Array(inner.count)];
  inner.index.forEach((group, row) => {
    n[group]! += 1;
    sums[group]! += residuals[row]!;
  });
  const [outerN, outerSums] = [new Float64Array(outerCount), new Float64Array(outerCount)];
  outerOf.forEach((outer, j) => {
    const m = 1 + innerSd * innerSd * n[j]!;
    outerN[outer]! += n[j]! / m;
    outerSums[outer]! += sums[j]! / m;
  });
  const square = outerSd * outerSd;
  const outerModes = outerSums.map((sum, g) => (square * sum) / (1 + square * outerN[g]!));
  const outerSds = outerN.map((weight) => outerSd / Math.sqrt(1 + square * weight));
  const pull = n.map((size) => (innerSd * innerSd) / (1 + innerSd * innerSd * size));
  return [
    { modes: outerModes, sds: outerSds },
    {
      modes: sums.map((sum, j) => pull[j]! * (sum - n[j]! * outerModes[outerOf[j]!]!)),
      sds: pull.map((share, j) => Math.sqrt(share + (share * n[j]! * outerSds[outerOf[j]!]!) ** 2)),
    },
  ];
}
