import { expect, test } from "vitest";
import { gaussHermite } from "../../../src/estimate/numeric/gaussHermite.js";

/** Points and weights for the mean of a function of a standard normal variable. */
function forNormal(count: number): { readonly z: readonly number[]; readonly w: readonly number[] } {
  const { points, weights } = gaussHermite(count);
  return { z: [...points], w: Array.from(weights, (w, i) => (w * Math.exp(-(points[i]! ** 2) / 2)) / Math.sqrt(2 * Math.PI)) };
}

test("three and four points in closed form", () => {
  const three = forNormal(3);
  [-Math.sqrt(3), 0, Math.sqrt(3)].forEach((z, i) => {
    expect(three.z[i]).toBeCloseTo(z, 14);
    expect(three.w[i]).toBeCloseTo([1 / 6, 2 / 3, 1 / 6][i]!, 14);
  });
  const four = forNormal(4);
  const [near, far] = [Math.sqrt(3 - Math.sqrt(6)), Math.sqrt(3 + Math.sqrt(6))];
  [-far, -near, near, far].forEach((z, i) => {
    expect(four.z[i]).toBeCloseTo(z, 14);
    expect(four.w[i]).toBeCloseTo(1 / (4 * z * z), 14);
  });
});

test("twenty points of R lme4 1.1-31, GHrule(20)", () => {
  const wanted = [
    [0.346964157081356, 0.260793063449555],
    [1.04294534880275, 0.161739333984],
    [1.74524732081413, 0.061506372063977],
    [2.45866361117237, 0.013997837447101],
    [3.18901481655339, 0.00183010313108049],
    [3.94396735065732, 0.00012882627996193],
    [4.73458133404606, 4.40212109023085e-6],
    [5.5787388058932, 6.12749025998294e-8],
    [6.51059015701366, 2.48206236231515e-10],
    [7.61904854167976, 1.25780067243792e-13],
  ] as const;
  const { z, w } = forNormal(20);
  wanted.forEach(([point, weight], i) => {
    // Weights in the tail lose digits with the square of the point: 1e-12 is what is left.
    expect(Math.abs(z[10 + i]! / point - 1)).toBeLessThan(1e-13);
    expect(Math.abs(w[10 + i]! / weight - 1)).toBeLessThan(1e-12);
  });
});

test.each([1, 2, 7, 31, 100, 200])("%i points: moments of the normal distribution, as far as the rule is exact", (count) => {
  const { z, w } = forNormal(count);
  let moment = 1;
  for (let degree = 0; degree < Math.min(2 * count, 12); degree += 2) {
    const sum = z.reduce((total, point, i) => total + w[i]! * point ** degree, 0);
    expect(sum / moment).toBeCloseTo(1, 11);
    moment *= degree + 1;
  }
});

test("points ascend and mirror each other", () => {
  const { points } = gaussHermite(101);
  points.forEach((point, i) => {
    expect(point).toBe(0 - points[100 - i]!);
    if (i > 0) expect(point).toBeGreaterThan(points[i - 1]!);
  });
});
