import { expect, test } from "vitest";
import { generalProcrustes } from "../../src/estimate/generalProcrustes.js";
import type { Point } from "../../src/estimate/Point.js";
import { procrustes } from "../../src/estimate/procrustes.js";
import { movedBy } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { expectNear } from "./reference.js";
import { inventedShapes, shapeReference } from "./shapeReference.js";

const shapes = inventedShapes();
const flat = (points: readonly Point[]) => points.flatMap(({ x, y }) => [x, y]);
const apart = (one: readonly number[], other: readonly number[]) =>
  Math.max(...one.map((value, k) => Math.abs(value - other[k]!)));

test("60 feet, by the iteration written out with complex numbers (R)", () => {
  const found = generalProcrustes(shapes);
  expect(apart(flat(found.mean), shapeReference("general mean"))).toBeLessThan(1e-12);
  expect(apart(flat(found.aligned[16]!), shapeReference("general aligned 17"))).toBeLessThan(1e-12);
  expectNear([found.ss], shapeReference("general ss"), 1e-10);
  expect([found.shapes, found.landmarks]).toEqual([60, 16]);
});

test("two shapes come as near as their partial Procrustes distance", () => {
  const [a, b] = shapes;
  const { aligned, ss, centroidSizes } = generalProcrustes([a!, b!]);
  const fit = procrustes(a!, b!);
  const squares = flat(aligned[0]!).reduce((sum, value, k) => sum + (value - flat(aligned[1]!)[k]!) ** 2, 0);
  expectNear([Math.sqrt(squares), Math.sqrt(2 * ss)], [fit.partialDistance, fit.partialDistance], 1e-9);
  expectNear(centroidSizes, fit.centroidSizes, 1e-12);
});

test("how the shapes lie and their order make no difference to the sum of squares", () => {
  const found = generalProcrustes(shapes);
  const moved = shapes.map((shape, i) => movedBy(shape, { scale: 0.1 + i, angle: i, dx: 5 * i, dy: -i }));
  expectNear([generalProcrustes(moved).ss, generalProcrustes([...shapes].reverse()).ss], [found.ss, found.ss], 1e-9);
});

test("copies of one shape have that shape as mean", () => {
  const copies = [0.3, 1, 2].map((angle) => movedBy(shapes[0]!, { scale: angle, angle, dx: 7, dy: 8 }));
  const { mean, ss } = generalProcrustes(copies);
  expect(ss).toBeLessThan(1e-24);
  expect(procrustes(shapes[0]!, mean).disparity).toBeLessThan(1e-24);
});

test("sets that do not belong together are refused", () => {
  expect(faultCode(() => generalProcrustes([shapes[0]!]))).toBe("too_few");
  expect(faultCode(() => generalProcrustes([shapes[0]!, shapes[1]!.slice(1)]))).toBe("length_mismatch");
});
