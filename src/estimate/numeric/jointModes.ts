import type { NestedCounts } from "./NestedCounts.js";

/** Where the random effects of each group are most likely, given the parameters, and how sharply. All arrays are reused. */
export interface JointModes {
  /** Odds of a case in each cell when both effects are zero. */
  readonly odds: Float64Array;
  /** Cases of each inner group. */
  readonly totalCases: Float64Array;
  /** Cases times linear predictor without effects, summed over each inner group. */
  readonly casesEta: Float64Array;
  /** Most likely standardised effect of each outer group. */
  readonly u: Float64Array;
  /** Most likely standardised effect of each inner group. */
  readonly v: Float64Array;
  /** Cases minus expected cases of each inner group, there. */
  readonly residual: Float64Array;
  /** Binomial variance of each inner group, there. */
  readonly variance: Float64Array;
  /** Curvature in the effect of each inner group: one plus the variance times the squared SD. */
  readonly innerCurvature: Float64Array;
  /** Curvature in the effect of each outer group, the inner effects moving along. */
  readonly outerCurvature: Float64Array;
  /**
   * Moves the modes to where they belong under `theta`: coefficients, outer SD, inner SD. Returns the logarithm of the joint
   * density there (binomial coefficients and powers of 2 pi left out), or minus infinity when a probability leaves the range
   * in which double precision can tell it from 0 and 1.
   */
  readonly settle: (theta: Float64Array) => number;
}

// Products of odds within this range stay finite; beyond it nothing is told apart any more.
const farthest = 100;

/**
 * Finds the joint modes of the random effects of a nested logistic model by Newton's method, group by group, starting from
 * where they were left. The curvature is an arrow matrix, so a step costs time linear in the number of cells.
 */
export function jointModes(data: NestedCounts): JointModes {
  const { x, cases, n, innerStart, outerStart, copies, terms } = data;
  const odds = new Float64Array(data.cells);
  const totalCases = new Float64Array(data.inner);
  const casesEta = new Float64Array(data.inner);
  const u = new Float64Array(data.outer);
  const v = new Float64Array(data.inner);
  const residual = new Float64Array(data.inner);
  const variance = new Float64Array(data.inner);
  const innerCurvature = new Float64Array(data.inner);
  const outerCurvature = new Float64Array(data.outer);
  const stepV = new Float64Array(data.inner);
  const trialV = new Float64Array(data.inner);
  for (let j = 0; j < data.inner; j++) {
    for (let k = innerStart[j]!; k < innerStart[j + 1]!; k++) totalCases[j]! += cases[k]!;
  }

  function setOdds(theta: Float64Array): boolean {
    for (let j = 0; j < data.inner; j++) {
      let sum = 0;
      for (let k = innerStart[j]!; k < innerStart[j + 1]!; k++) {
        let eta = 0;
        for (let t = 0, at = k * terms; t < terms; t++, at++) eta += x[at]! * theta[t]!;
        if (!(Math.abs(eta) < farthest)) return false;
        odds[k] = Math.exp(eta);
        sum += cases[k]! * eta;
      }
      casesEta[j] = sum;
    }
    return true;
  }

  /** Joint log density of an outer group; leaves `residual` and `variance` as they are at this place. */
  function density(i: number, outerSd: number, innerSd: number, uAt: number, vAt: Float64Array): number {
    let sum = (-uAt * uAt) / 2;
    for (let j = outerStart[i]!; j < outerStart[i + 1]!; j++) {
      const shift = outerSd * uAt + innerSd * vAt[j]!;
      if (!(Math.abs(shift) < farthest)) return -Infinity;
      const factor = Math.exp(shift);
      let expected = 0;
      let spread = 0;
      let product = 1;
      let logs = 0;
      for (let k = innerStart[j]!; k < innerStart[j + 1]!; k++) {
        const size = n[k]!;
        const odd = odds[k]! * factor;
        const base = 1 + odd;
        const clear = 1 / base;
        const expectedHere = size * odd * clear;
        expected += expectedHere;
        spread += expectedHere * clear;
        if (size === 1) product *= base;
        else if (size === 2) product *= base * base;
        else logs += size * Math.log(base);
        if (product > 1e100) {
          logs += Math.log(product);
          product = 1;
        }
      }
      residual[j] = totalCases[j]! - expected;
      variance[j] = spread;
      const own = casesEta[j]! + totalCases[j]! * shift - logs - Math.log(product) - (vAt[j]! * vAt[j]!) / 2;
      sum += copies[j]! * own;
    }
    return sum;
  }

  /** Newton step of an outer group, into `stepV` and the returned step in u; and how far it is from the mode, squared. */
  function newtonStep(i: number, outerSd: number, innerSd: number): { stepU: number; distance: number } {
    let slopeU = -u[i]!;
    let curvature = 1;
    let distance = 0;
    for (let j = outerStart[i]!; j < outerStart[i + 1]!; j++) {
      const own = 1 + innerSd * innerSd * variance[j]!;
      const slope = innerSd * residual[j]! - v[j]!;
      innerCurvature[j] = own;
      stepV[j] = slope / own;
      distance += (copies[j]! * slope * slope) / own;
      curvature += (copies[j]! * outerSd * outerSd * variance[j]!) / own;
      slopeU += copies[j]! * (outerSd * residual[j]! - (outerSd * innerSd * variance[j]! * slope) / own);
    }
    outerCurvature[i] = curvature;
    const stepU = slopeU / curvature;
    for (let j = outerStart[i]!; j < outerStart[i + 1]!; j++) {
      stepV[j]! -= (outerSd * innerSd * variance[j]! * stepU) / innerCurvature[j]!;
    }
    return { stepU, distance: distance + slopeU * stepU };
  }

  function settleGroup(i: number, outerSd: number, innerSd: number): number {
    const first = outerStart[i]!;
    const last = outerStart[i + 1]!;
    let here = density(i, outerSd, innerSd, u[i]!, v);
    if (here === -Infinity) {
      // Parameters jumped: start afresh.
      u[i] = 0;
      v.fill(0, first, last);
      here = density(i, outerSd, innerSd, 0, v);
    }
    for (let round = 0; round < 100; round++) {
      const { stepU, distance } = newtonStep(i, outerSd, innerSd);
      if (distance < 1e-24) break;
      let scale = 1;
      let there = -Infinity;
      for (let halving = 0; halving < 40; halving++, scale /= 2) {
        for (let j = first; j < last; j++) trialV[j] = v[j]! + scale * stepV[j]!;
        there = density(i, outerSd, innerSd, u[i]! + scale * stepU, trialV);
        // So near the mode rounding may hide the gain; the full Newton step is then safe.
        if (there >= here || (distance < 1e-10 && there > -Infinity)) break;
      }
      u[i]! += scale * stepU;
      for (let j = first; j < last; j++) v[j] = trialV[j]!;
      here = there;
      if (distance < 1e-12) {
        newtonStep(i, outerSd, innerSd);
        break;
      }
    }
    return here;
  }

  function settle(theta: Float64Array): number {
    if (!setOdds(theta)) return -Infinity;
    let sum = 0;
    for (let i = 0; i < data.outer; i++) sum += settleGroup(i, theta[terms]!, theta[terms + 1]!);
    return sum;
  }

  return { odds, totalCases, casesEta, u, v, residual, variance, innerCurvature, outerCurvature, settle };
}
