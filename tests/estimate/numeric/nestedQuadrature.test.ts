import { describe, expect, test } from "vitest";
import { jointModes } from "../../../src/estimate/numeric/jointModes.js";
import type { NestedCounts } from "../../../src/estimate/numeric/NestedCounts.js";
import { nestedQuadrature } from "../../../src/estimate/numeric/nestedQuadrature.js";
import { groupLogLik, nestedFeet } from "./nestedFeet.js";

/** The same integral by the trapezoid rule on a fixed grid, group by group, copies written out. */
function onGrid(data: NestedCounts, theta: Float64Array): number {
  const step = 0.1;
  const grid = Array.from({ length: 201 }, (_, i) => (i - 100) * step);
  const density = (z: number) => (step * Math.exp((-z * z) / 2)) / Math.sqrt(2 * Math.PI);
  const [outerSd, innerSd] = [theta[data.terms]!, theta[data.terms + 1]!];
  let total = data.constant;
  for (let i = 0; i < data.outer; i++) {
    const integral = grid.reduce((sum, u) => {
      let product = density(u);
      for (let j = data.outerStart[i]!; j < data.outerStart[i + 1]!; j++) {
        const inner = grid.reduce(
          (part, v) => part + density(v) * Math.exp(groupLogLik(data, theta, j, outerSd * u + innerSd * v)),
          0,
        );
        product *= inner ** data.copies[j]!;
      }
      return sum + product;
    }, 0);
    total += Math.log(integral);
  }
  return total;
}

const places = [
  ["middling SDs", [-0.4, 0.8, 0.3, 0.7, 1.1]],
  ["a wide inner SD", [0.2, -0.5, 1, 0.4, 2.5]],
  ["outer SD 0", [-0.4, 0.8, 0.3, 0, 1.1]],
  ["inner SD 0", [-0.4, 0.8, 0.3, 0.9, 0]],
  ["a negative SD means its size", [-0.4, 0.8, 0.3, -0.7, 1.1]],
] as const;

describe.each([
  ["up to 3 feet a cell", 3],
  ["many horses alike", 2],
  ["up to 40 feet a cell", 40],
] as const)("%s", (name, most) => {
  const data = nestedFeet(4, most, name);

  test("horses alike are there when wanted", () => {
    expect(data.copies.some((count) => count > 2)).toBe(most === 2);
  });

  test.each(places)("%s: the integral itself, by the trapezoid rule", (_, place) => {
    const theta = Float64Array.from(place);
    const value = nestedQuadrature(data, jointModes(data), { outer: 41, inner: 81 })(theta, new Float64Array(5));
    // A wide SD over few feet is the hardest case for the rule: its error is below 1e-9 there and rounding elsewhere.
    expect(value).toBeCloseTo(onGrid(data, theta), 8);
  });

  test.each(places)("%s: the gradient against differences of the value", (_, place) => {
    const logLikelihood = nestedQuadrature(data, jointModes(data), { outer: 41, inner: 81 });
    const theta = Float64Array.from(place);
    const [gradient, unused] = [new Float64Array(5), new Float64Array(5)];
    logLikelihood(theta, gradient);
    gradient.forEach((slope, at) => {
      const [up, down] = [theta.slice(), theta.slice()];
      up[at]! += 1e-4;
      down[at]! -= 1e-4;
      const difference = (logLikelihood(up, unused) - logLikelihood(down, unused)) / 2e-4;
      // Central differences: error of the order of 1e-8 times third derivatives of up to some hundreds.
      expect(Math.abs(slope - difference)).toBeLessThan(2e-5);
    });
  });
});

test("very wide SDs and points so far out that they have no weight", () => {
  const data = nestedFeet(4, 3, "wide");
  const theta = Float64Array.of(-0.4, 0.8, 0.3, 5, 6);
  const gradient = new Float64Array(5);
  const value = nestedQuadrature(data, jointModes(data), { outer: 120, inner: 180 })(theta, gradient);
  // Such integrands have corners for a rule that thinks of normal densities: some 1e-6 is left even by this many points.
  expect(Math.abs(value - onGrid(data, theta))).toBeLessThan(1e-6);
  expect(gradient.every(Number.isFinite)).toBe(true);
});

test("log odds beyond double precision: minus infinity, not NaN", () => {
  const data = nestedFeet(2, 3, "far");
  const logLikelihood = nestedQuadrature(data, jointModes(data), { outer: 5, inner: 5 });
  expect(logLikelihood(Float64Array.of(500, 0, 0, 1, 1), new Float64Array(5))).toBe(-Infinity);
});
