import type { JointModes } from "../numeric/jointModes.js";
import type { NestedCounts } from "../numeric/NestedCounts.js";
import type { ConditionalMode } from "./ConditionalMode.js";

type Labels = readonly (readonly (string | number | boolean)[])[];

/**
 * Joint modes of the random effects and the square roots of the diagonal of the inverse of their joint curvature.
 * `settled` has been settled under the SDs given.
 */
export function conditionalModes(
  data: NestedCounts,
  settled: JointModes,
  [outerSd, innerSd]: readonly [number, number],
  labels: { readonly outer: Labels | null; readonly inner: Labels },
): readonly (readonly ConditionalMode[])[] {
  const { u, v, variance, innerCurvature, outerCurvature } = settled;
  const outerOf = new Int32Array(data.inner);
  for (let i = 0; i < data.outer; i++) outerOf.fill(i, data.outerStart[i], data.outerStart[i + 1]);
  const inner = labels.inner.map((group, place) => {
    const j = data.placeOf[place]!;
    // The arrow matrix inverted: own spread, and the outer effect's spread carried over.
    const carried = (outerSd * innerSd * variance[j]!) / innerCurvature[j]!;
    const spread = 1 / innerCurvature[j]! + (carried * carried) / outerCurvature[outerOf[j]!]!;
    return { group, mode: innerSd * v[j]!, sd: innerSd * Math.sqrt(spread) };
  });
  if (labels.outer === null) return [inner];
  const outer = labels.outer.map((group, i) => ({ group, mode: outerSd * u[i]!, sd: outerSd / Math.sqrt(outerCurvature[i]!) }));
  return [outer, inner];
}
