import { curvatureInverse } from "../numeric/curvatureInverse.js";
import type { ProfiledLinear } from "../numeric/profiledLinear.js";
import { secondDifferences } from "../numeric/secondDifferences.js";
import type { RandomStructure, RelativeSpreads } from "./RandomStructure.js";

/** Standard errors on scales that have no end; null for what lies on its bound. */
export interface SpreadErrors {
  /** Of the logarithm of each SD. */
  readonly logSds: readonly (number | null)[];
  /** Of log((1 + r) / (1 - r)), r the correlation. */
  readonly correlation: number | null;
  readonly logResidualSd: number | null;
}

/**
 * Standard errors of SDs and correlation from the curvature of the log-likelihood in the logarithms of all SDs and the logit of the
 * correlation, coefficients at their best. `df` is what the residual sum of squares was divided by.
 *
 * Source: Pinheiro JC & Bates DM (2000) Mixed-Effects Models in S and S-PLUS, section 2.4.3 (natural parameters).
 */
export function spreadErrors(
  { solve }: ProfiledLinear,
  structure: RandomStructure,
  theta: Float64Array,
  residualSd: number,
  df: number,
): SpreadErrors {
  const { sds, correlation } = structure.spreads(theta);
  const none = { logSds: sds.map(() => null), correlation: null, logResidualSd: null };
  if (correlation !== null && Math.abs(correlation) === 1) return none;
  const above = sds.flatMap((sd, k) => (sd > 0 ? [k] : []));
  const start = [
    ...above.map((k) => Math.log(sds[k]! * residualSd)),
    ...(correlation === null ? [] : [Math.log((1 + correlation) / (1 - correlation))]),
  ];
  const logLikelihood = (x: Float64Array) => {
    const sigma = Math.exp(x.at(-1)!);
    const relative: RelativeSpreads = {
      sds: sds.map((sd, k) => (sd > 0 ? Math.exp(x[above.indexOf(k)]!) / sigma : 0)),
      correlation: correlation === null ? null : Math.tanh(x[above.length]! / 2),
    };
    const solved = solve(structure.thetaOf(relative));
    if (solved === null) return NaN;
    const share = solved.residualVariance / (sigma * sigma);
    return solved.logLik + (df / 2) * (Math.log(share) + 1 - share);
  };
  const hessian = secondDifferences(logLikelihood, Float64Array.from([...start, Math.log(residualSd)]), 2e-3);
  const { inverse, definiteness } = curvatureInverse(hessian);
  if (!(definiteness > 1e-10)) return none;
  const size = start.length + 1;
  const error = (place: number) => Math.sqrt(inverse[place * (size + 1)]!);
  return {
    logSds: sds.map((sd, k) => (sd > 0 ? error(above.indexOf(k)) : null)),
    correlation: correlation === null ? null : error(above.length),
    logResidualSd: error(size - 1),
  };
}
