import { expect, test } from "vitest";
import { generalProcrustes } from "../../src/estimate/generalProcrustes.js";
import type { Point } from "../../src/estimate/Point.js";
import { shapePrincipalComponents } from "../../src/estimate/shapePrincipalComponents.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { inventedShapes, shapeReference } from "./shapeReference.js";

const { aligned } = generalProcrustes(inventedShapes());
const apart = (one: readonly number[], other: readonly number[]) =>
  Math.max(...one.map((value, k) => Math.abs(value - other[k]!)));

test("60 feet by prcomp (R)", () => {
  const { components, mean } = shapePrincipalComponents(aligned);
  expectNear(components.slice(0, 8).map(({ variance }) => variance), shapeReference("components variance"), 1e-9); // prettier-ignore
  for (const j of [1, 2, 3]) {
    const { direction, scores } = components[j - 1]!;
    expect(apart(direction.flatMap(({ x, y }) => [x, y]), shapeReference(`component ${j}`))).toBeLessThan(1e-9); // prettier-ignore
    expect(apart(scores, shapeReference(`scores ${j}`))).toBeLessThan(1e-10);
  }
  expect(apart(mean.flatMap(({ x, y }) => [x, y]), shapeReference("general mean"))).toBeLessThan(1e-12); // prettier-ignore
});

test("proportions add up to 1, and all components together give each shape back", () => {
  const { components, mean, totalVariance } = shapePrincipalComponents(aligned);
  expect(components.reduce((sum, { proportion }) => sum + proportion, 0)).toBeCloseTo(1, 12);
  expect(components.reduce((sum, { variance }) => sum + variance, 0)).toBeCloseTo(totalVariance, 12);
  for (const i of [0, 33]) {
    const back = mean.map(({ x, y }, k): Point => ({
      x: components.reduce((sum, { direction, scores }) => sum + scores[i]! * direction[k]!.x, x),
      y: components.reduce((sum, { direction, scores }) => sum + scores[i]! * direction[k]!.y, y),
    }));
    back.forEach((point, k) => {
      expect(Math.hypot(point.x - aligned[i]![k]!.x, point.y - aligned[i]![k]!.y)).toBeLessThan(1e-8);
    });
  }
});

test("one way of varying is one component", () => {
  const shapes = [-2, -1, 0, 1, 2].map((stretch) => [{ x: -1, y: 0 }, { x: 1, y: 0 }, { x: 0, y: 2 + stretch / 10 }]); // prettier-ignore
  const { components } = shapePrincipalComponents(shapes);
  expect(components).toHaveLength(1);
  expectNear([components[0]!.variance, components[0]!.direction[2]!.y], [0.025, 1], 1e-12);
});

test("equal shapes, too few and unlike ones are refused", () => {
  expect(faultCode(() => shapePrincipalComponents([aligned[0]!]))).toBe("too_few");
  expect(faultCode(() => shapePrincipalComponents([aligned[0]!, aligned[0]!]))).toBe("no_variation");
  expect(faultCode(() => shapePrincipalComponents([aligned[0]!, aligned[1]!.slice(2)]))).toBe("length_mismatch");
});
