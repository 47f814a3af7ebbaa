import { expect, test } from "vitest";
import { mirrored } from "../../src/estimate/mirrored.js";
import { outlineMoments } from "../../src/estimate/outlineMoments.js";
import { faultCode } from "./faultCode.js";

test("x changes its sign, order and y stay", () => {
  expect(mirrored([[1, 2], { x: -3, y: 4 }, [0, 5]])).toEqual([
    { x: -1, y: 2 },
    { x: 3, y: 4 },
    { x: 0, y: 5 },
  ]);
});

test("twice is as before, once turns the direction", () => {
  const points = [{ x: 0, y: 0 }, { x: 5, y: 1 }, { x: 2, y: 4 }]; // prettier-ignore
  expect(mirrored(mirrored(points))).toEqual(points);
  expect(outlineMoments(points).orientation).toBe("anticlockwise");
  expect(outlineMoments(mirrored(points)).orientation).toBe("clockwise");
});

test("what is no number is refused", () => {
  expect(faultCode(() => mirrored([[Infinity, 0]]))).toBe("not_a_number");
});
