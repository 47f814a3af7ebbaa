import { describe, expect, test } from "vitest";
import { jointModes } from "../../../src/estimate/numeric/jointModes.js";
import { nestedLaplace } from "../../../src/estimate/numeric/nestedLaplace.js";
import { nestedQuadrature } from "../../../src/estimate/numeric/nestedQuadrature.js";
import { groupLogLik, nestedFeet } from "./nestedFeet.js";

const places = [
  ["middling SDs", [-0.4, 0.8, 0.3, 0.7, 1.1]],
  ["wide SDs", [0.2, -0.5, 1, 2, 3]],
  ["outer SD 0", [-0.4, 0.8, 0.3, 0, 1.1]],
  ["inner SD 0", [-0.4, 0.8, 0.3, 0.9, 0]],
] as const;

describe.each([
  ["up to 3 feet a cell", 3],
  ["many horses alike", 2],
  ["up to 40 feet a cell", 40],
] as const)("%s", (name, most) => {
  const data = nestedFeet(5, most, name);

  test.each(places)("%s: the gradient against differences of the value, the modes' movement included", (_, place) => {
    const logLikelihood = nestedLaplace(data, jointModes(data));
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

  test("SDs of 0: the binomial likelihood itself", () => {
    const theta = Float64Array.of(-0.4, 0.8, 0.3, 0, 0);
    const value = nestedLaplace(data, jointModes(data))(theta, new Float64Array(5));
    const plain = Array.from(data.copies, (copies, j) => copies * groupLogLik(data, theta, j, 0)).reduce(
      (sum, part) => sum + part,
      0,
    );
    expect(value).toBeCloseTo(plain + data.constant, 9);
  });

  test("one inner group in each outer, inner SD 0: the same as quadrature of one point", () => {
    const flat = { ...data, outer: data.inner, outerStart: Int32Array.from({ length: data.inner + 1 }, (_, i) => i) };
    const theta = Float64Array.of(-0.4, 0.8, 0.3, 1.2, 0);
    const gradient = new Float64Array(5);
    const one = nestedQuadrature(flat, jointModes(flat), { outer: 1, inner: 1 });
    expect(nestedLaplace(flat, jointModes(flat))(theta, gradient)).toBeCloseTo(one(theta, gradient), 9);
  });
});

test("where the modes start from does not show", () => {
  const data = nestedFeet(5, 3, "starts");
  const theta = Float64Array.of(-0.4, 0.8, 0.3, 0.7, 1.1);
  const fresh = nestedLaplace(data, jointModes(data))(theta, new Float64Array(5));
  const logLikelihood = nestedLaplace(data, jointModes(data));
  for (const far of [
    [3, -2, 1, 4, 5],
    [500, 0, 0, 1, 1],
    [-3, 2, 1, 9, 0.1],
  ])
    logLikelihood(Float64Array.from(far), new Float64Array(5));
  expect(logLikelihood(theta, new Float64Array(5))).toBeCloseTo(fresh, 11);
});
