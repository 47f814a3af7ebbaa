import type { JointModes } from "./jointModes.js";
import type { LogLikelihood } from "./LogLikelihood.js";
import type { NestedCounts } from "./NestedCounts.js";

/**
 * Log-likelihood of a nested logistic model with both random effects integrated out by the joint Laplace approximation, with
 * its exact gradient in coefficients, outer SD, inner SD (the modes' own movement included). Full normalisation: binomial
 * coefficients are in, powers of 2 pi cancel.
 *
 * Source: Tierney L & Kadane JB (1986) JASA 81:82-86; for mixed models Breslow NE & Clayton DG (1993) JASA 88:9-25, eq. 5
 * before its further steps.
 */
export function nestedLaplace(data: NestedCounts, modes: JointModes): LogLikelihood {
  const { x, n, cases, innerStart, outerStart, copies, terms } = data;
  const { odds, u, v, residual, variance, innerCurvature, outerCurvature } = modes;
  const skew = new Float64Array(data.inner);
  const pull = new Float64Array(data.inner);

  return (theta, gradient) => {
    const density = modes.settle(theta);
    if (density === -Infinity) return density;
    const outerSd = theta[terms]!;
    const innerSd = theta[terms + 1]!;
    gradient.fill(0);
    let logCurvature = 0;
    let gradientOuter = 0;
    let gradientInner = 0;

    for (let i = 0; i < data.outer; i++) {
      const first = outerStart[i]!;
      const last = outerStart[i + 1]!;
      const schur = outerCurvature[i]!;
      logCurvature += Math.log(schur);
      // Half the log curvature moves with the variances: `pull` per unit of variance, `skew` variance per unit of effect.
      let slopeU = 0;
      let reducedU = 0;
      for (let j = first; j < last; j++) {
        const own = innerCurvature[j]!;
        const factor = Math.exp(outerSd * u[i]! + innerSd * v[j]!);
        let third = 0;
        for (let k = innerStart[j]!; k < innerStart[j + 1]!; k++) {
          const odd = odds[k]! * factor;
          const clear = 1 / (1 + odd);
          third += n[k]! * odd * clear * clear * (2 * clear - 1);
        }
        skew[j] = third;
        pull[j] = (innerSd * innerSd + (outerSd * outerSd) / (own * schur)) / own / 2;
        logCurvature += copies[j]! * Math.log(own);
        const slope = -pull[j]! * third;
        slopeU += copies[j]! * slope * outerSd;
        reducedU += (copies[j]! * outerSd * innerSd * innerSd * variance[j]! * slope) / own;
      }
      const answerU = (slopeU - reducedU) / schur;

      for (let j = first; j < last; j++) {
        const own = innerCurvature[j]!;
        const w = variance[j]!;
        const answerV = (-pull[j]! * skew[j]! * innerSd - outerSd * innerSd * w * answerU) / own;
        const move = outerSd * answerU + innerSd * answerV;
        // Direct, through the curvature at fixed effects, and through the modes.
        const through = residual[j]! - pull[j]! * skew[j]! - w * move;
        const count = copies[j]!;
        gradientOuter += count * (u[i]! * through + answerU * residual[j]! - (outerSd * w) / (own * schur));
        gradientInner += count * (v[j]! * through + answerV * residual[j]!);
        gradientInner -= (count * innerSd * w * (1 - (outerSd * outerSd * w) / (own * schur))) / own;
        const factor = Math.exp(outerSd * u[i]! + innerSd * v[j]!);
        for (let k = innerStart[j]!; k < innerStart[j + 1]!; k++) {
          const odd = odds[k]! * factor;
          const clear = 1 / (1 + odd);
          const expected = n[k]! * odd * clear;
          const spread = expected * clear;
          const weight = count * (cases[k]! - expected - spread * ((2 * clear - 1) * pull[j]! + move));
          for (let t = 0, at = k * terms; t < terms; t++, at++) gradient[t]! += weight * x[at]!;
        }
      }
    }
    gradient[terms] = gradientOuter;
    gradient[terms + 1] = gradientInner;
    return density - logCurvature / 2 + data.constant;
  };
}
