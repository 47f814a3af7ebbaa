import { expect, test } from "vitest";
import { ringCrossing } from "../../../src/read/outlines/ringCrossing.js";

const points = (...pairs: readonly (readonly [number, number])[]) => pairs.map(([x, y]) => ({ x, y }));

test("a square is simple, a bow tie crosses itself", () => {
  expect(ringCrossing(points([0, 0], [1, 0], [1, 1], [0, 1]))).toBeNull();
  expect(ringCrossing(points([0, 0], [1, 1], [1, 0], [0, 1]))).toEqual([0, 2]);
});

test("the step that closes the ring counts", () => {
  expect(ringCrossing(points([0, 0], [2, 0], [2, 2], [1, 2], [1, -1]))).toEqual([0, 3]);
});

test("following steps that meet, and a ring that touches itself, do not cross", () => {
  expect(ringCrossing(points([0, 0], [2, 0], [2, 2], [1, 0], [0, 2]))).toBeNull();
  expect(ringCrossing([])).toBeNull();
});
