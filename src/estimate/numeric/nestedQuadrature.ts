import { gaussHermite } from "./gaussHermite.js";
import type { JointModes } from "./jointModes.js";
import type { LogLikelihood } from "./LogLikelihood.js";
import type { NestedCounts } from "./NestedCounts.js";

/** Points for the integral over each outer group's effect, and for each inner group's effect at every one of those. */
export interface QuadraturePoints {
  readonly outer: number;
  readonly inner: number;
}

/** Shifts of the log odds beyond this have no weight worth adding, and products of odds within it stay finite. */
const farthest = 100;

/**
 * Log-likelihood of a nested logistic model with the random effects integrated out by nested adaptive Gauss-Hermite
 * quadrature, with its gradient in coefficients, outer SD, inner SD. Given the outer effect the inner groups are independent,
 * so the integral of an outer group is one integral over a product of one-dimensional ones. Each is centred and scaled on its
 * own integrand. Binomial coefficients are in.
 *
 * The gradient is the exact one of the rule with its points held still, which differs from the moving rule's by no more
 * than the error of the rule.
 *
 * Source: Pinheiro JC & Chao EC (2006) J Comput Graph Stat 15:58-81 (multilevel adaptive quadrature).
 */
export function nestedQuadrature(data: NestedCounts, modes: JointModes, points: QuadraturePoints): LogLikelihood {
  const { x, n, cases, innerStart, outerStart, copies, terms } = data;
  const { odds, totalCases, casesEta, u, v, variance, innerCurvature, outerCurvature } = modes;
  const outerRule = gaussHermite(points.outer);
  const innerRule = gaussHermite(points.inner);
  const middle = gaussHermite(1);
  const widest = widestGroup(data);
  // Expected cases of each cell of the outer group in hand: at each outer point, and at the inner point in hand.
  const expectedAt = new Float64Array(points.outer * widest);
  const expectedNow = new Float64Array(widest);
  const logAt = new Float64Array(points.outer);
  const effectAt = new Float64Array(points.outer);
  const outerSlopeAt = new Float64Array(points.outer);
  const innerSlopeAt = new Float64Array(points.outer);
  const centre = new Float64Array(data.inner);
  // Of the inner integral in hand: curvature at its centre, log integrand there, residual and effect times residual.
  let curvature = 1;
  let logCentre = 0;
  let residual = 0;
  let effectTimesResidual = 0;

  /** Climbs to the mode of the integrand of inner group `j`, from `start`; the slope falls throughout, so a bracket is safe. */
  function climb(j: number, outerShift: number, innerSd: number, start: number): number {
    let at = start;
    let low = -Infinity;
    let high = Infinity;
    for (let round = 0; round < 60; round++) {
      const shift = outerShift + innerSd * at;
      const factor = Math.exp(shift);
      let expected = 0;
      let spread = 0;
      let product = 1;
      let logs = 0;
      for (let k = innerStart[j]!, to = innerStart[j + 1]!; k < to; k++) {
        const size = n[k]!;
        const odd = odds[k]! * factor;
        const base = 1 + odd;
        const clear = 1 / base;
        const here = size * odd * clear;
        expected += here;
        spread += here * clear;
        if (size === 1) product *= base;
        else if (size === 2) product *= base * base;
        else logs += size * Math.log(base);
        if (product > 1e100) {
          logs += Math.log(product);
          product = 1;
        }
      }
      const slope = innerSd * (totalCases[j]! - expected) - at;
      curvature = 1 + innerSd * innerSd * spread;
      logCentre = casesEta[j]! + totalCases[j]! * shift - logs - Math.log(product) - (at * at) / 2;
      const step = slope / curvature;
      if (step * step * curvature < 1e-3) return at + step;
      if (slope > 0) low = at;
      else high = at;
      at = at + step > low && at + step < high ? at + step : (low + high) / 2;
    }
    return at;
  }

  /** Integrates out the effect of inner group `j`; adds the expected cases of its cells into `expectedAt` from `into` on. */
  function integrate(j: number, outerShift: number, innerSd: number, mode: number, into: number): number {
    const rule = innerSd === 0 ? middle : innerRule;
    const from = innerStart[j]!;
    const to = innerStart[j + 1]!;
    const spread = 1 / Math.sqrt(curvature);
    let sum = 0;
    let sumResidual = 0;
    let sumEffect = 0;
    for (let k = from; k < to; k++) expectedAt[into + k] = 0;
    for (let l = 0; l < rule.points.length; l++) {
      const effect = mode + spread * rule.points[l]!;
      const shift = outerShift + innerSd * effect;
      if (!(Math.abs(shift) < farthest)) continue;
      const factor = Math.exp(shift);
      let product = 1;
      let logs = 0;
      let expected = 0;
      for (let k = from; k < to; k++) {
        const size = n[k]!;
        const odd = odds[k]! * factor;
        const base = 1 + odd;
        const here = (size * odd) / base;
        expectedNow[k - from] = here;
        expected += here;
        if (size === 1) product *= base;
        else if (size === 2) product *= base * base;
        else logs += size * Math.log(base);
        if (product > 1e100) {
          logs += Math.log(product);
          product = 1;
        }
      }
      const log = casesEta[j]! + totalCases[j]! * shift - (effect * effect) / 2 - logs - logCentre;
      const weight = (rule.weights[l]! * Math.exp(log)) / product;
      const off = totalCases[j]! - expected;
      sum += weight;
      sumResidual += weight * off;
      sumEffect += weight * effect * off;
      for (let k = from; k < to; k++) expectedAt[into + k]! += weight * expectedNow[k - from]!;
    }
    for (let k = from; k < to; k++) expectedAt[into + k]! /= sum;
    residual = sumResidual / sum;
    effectTimesResidual = sumEffect / sum;
    return logCentre + Math.log((sum * spread) / Math.sqrt(2 * Math.PI));
  }

  return (theta, gradient) => {
    if (modes.settle(theta) === -Infinity) return -Infinity;
    const outerSd = theta[terms]!;
    const innerSd = theta[terms + 1]!;
    const rule = outerSd === 0 ? middle : outerRule;
    const count = rule.points.length;
    gradient.fill(0);
    let total = data.constant;

    for (let i = 0; i < data.outer; i++) {
      const first = outerStart[i]!;
      const last = outerStart[i + 1]!;
      const firstCell = innerStart[first]!;
      const width = innerStart[last]! - firstCell;
      const spread = 1 / Math.sqrt(outerCurvature[i]!);
      let highest = -Infinity;
      let before = -1;

      for (let m = 0; m < count; m++) {
        const effect = u[i]! + spread * rule.points[m]!;
        const inside = Math.abs(outerSd * effect) < farthest;
        const moved = spread * (rule.points[m]! - (before === -1 ? 0 : rule.points[before]!));
        const into = m * width - firstCell;
        let log = inside ? (-effect * effect) / 2 : -Infinity;
        let outerSlope = 0;
        let innerSlope = 0;
        for (let j = first; j < last && inside; j++) {
          const from = before === -1 ? v[j]! : centre[j]!;
          const guess = from - ((outerSd * innerSd * variance[j]!) / innerCurvature[j]!) * moved;
          centre[j] = climb(j, outerSd * effect, innerSd, guess);
          log += copies[j]! * integrate(j, outerSd * effect, innerSd, centre[j]!, into);
          outerSlope += copies[j]! * residual;
          innerSlope += copies[j]! * effectTimesResidual;
        }
        if (inside) before = m;
        effectAt[m] = effect;
        logAt[m] = log;
        outerSlopeAt[m] = outerSlope;
        innerSlopeAt[m] = innerSlope;
        if (log > highest) highest = log;
      }

      let sum = 0;
      for (let m = 0; m < count; m++) sum += logAt[m] = rule.weights[m]! * Math.exp(logAt[m]! - highest);
      total += highest + Math.log((sum * spread) / Math.sqrt(2 * Math.PI));
      for (let m = 0; m < count; m++) {
        const share = logAt[m]! / sum;
        gradient[terms]! += share * effectAt[m]! * outerSlopeAt[m]!;
        gradient[terms + 1]! += share * innerSlopeAt[m]!;
        logAt[m] = share;
      }
      for (let j = first; j < last; j++) {
        for (let cell = innerStart[j]!; cell < innerStart[j + 1]!; cell++) {
          let expected = 0;
          for (let m = 0; m < count; m++) expected += logAt[m]! * expectedAt[m * width + cell - firstCell]!;
          const off = copies[j]! * (cases[cell]! - expected);
          for (let t = 0, at = cell * terms; t < terms; t++, at++) gradient[t]! += off * x[at]!;
        }
      }
    }
    return total;
  };
}

function widestGroup({ outer, outerStart, innerStart }: NestedCounts): number {
  let most = 0;
  for (let i = 0; i < outer; i++) most = Math.max(most, innerStart[outerStart[i + 1]!]! - innerStart[outerStart[i]!]!);
  return most;
}
