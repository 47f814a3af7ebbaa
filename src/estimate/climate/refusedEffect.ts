import { EstimateError } from "../EstimateError.js";
import type { EstimateErrorCode } from "../EstimateErrorCode.js";
import type { ExposureEffect } from "../ExposureEffect.js";

/** Reasons that lie in the records, not in the call. */
const ofTheRecords: readonly EstimateErrorCode[] = [
  "empty",
  "too_few",
  "no_variation",
  "collinear",
  "separation",
  "not_converged",
];

/** The effect, or, when the records cannot carry it, an effect without an estimate that says why. */
export function refusedEffect(
  base: Pick<ExposureEffect, "name" | "contrast" | "adjustedFor" | "level">,
  make: () => ExposureEffect,
): ExposureEffect {
  try {
    return make();
  } catch (fault) {
    if (!(fault instanceof EstimateError) || !ofTheRecords.includes(fault.code)) throw fault;
    const none = { estimate: null, lower: null, upper: null, seLog: null, p: null, df: null };
    const nobody = { n: null, cases: null, missing: null, clusteredBy: null, clusters: null };
    return { ...base, ...none, ...nobody, refused: fault.code, method: "No estimate", note: fault.message };
  }
}
