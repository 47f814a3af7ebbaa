import { expect, test } from "vitest";
import { EstimateError } from "../../src/estimate/EstimateError.js";
import { frogToSoleArea } from "../../src/estimate/frogToSoleArea.js";
import { faultCode } from "./faultCode.js";

const wall = [[-60, 0], [60, 0], [60, 120], [-60, 120]] as const; // prettier-ignore
const frog = [
  [-30, 0],
  [30, 0],
  [0, 80],
] as const;

test("a triangle in a square", () => {
  expect(frogToSoleArea(wall, frog)).toEqual({ ratio: 1 / 6, frogArea: 2400, soleArea: 14_400, note: null });
});

test("points of the frog outside the wall are counted", () => {
  expect(frogToSoleArea(wall, [[-30, -10], [30, -10], [0, 80]]).note).toBe("2 of the 3 points of the frog lie outside the wall."); // prettier-ignore
});

test("open outlines that were closed are named", () => {
  const ring = Array.from({ length: 50 }, (_, i): [number, number] => [
    55 * Math.cos(i / 10 - 1),
    60 + 55 * Math.sin(i / 10 - 1),
  ]);
  expect(frogToSoleArea(ring, frog, { open: "close" }).note).toMatch(/ Wall: The outline was open/);
});

test("another foot's frog, swapped rings and bad rings are refused, saying which", () => {
  expect(faultCode(() => frogToSoleArea(frog, wall))).toBe("out_of_range");
  expect(faultCode(() => frogToSoleArea(wall, frog.map(([x, y]) => [x + 150, y])))).toBe("out_of_range"); // prettier-ignore
  const bow = [[0, 0], [9, 9], [9, 0], [0, 9]] as const; // prettier-ignore
  expect(faultCode(() => frogToSoleArea(bow, frog))).toBe("self_crossing");
  expect(() => frogToSoleArea(wall, bow)).toThrow(/\(frog\)\.$/);
  expect(() => frogToSoleArea(bow, frog)).toThrow(/\(wall\)\.$/);
  expect(() => frogToSoleArea(wall, bow)).toThrow(EstimateError);
});

test("the expected size is that of the wall", () => {
  expect(frogToSoleArea(wall, frog, { expectedSizeMm: [100, 200] }).ratio).toBeCloseTo(1 / 6, 12);
  expect(faultCode(() => frogToSoleArea(wall, frog, { expectedSizeMm: [10, 50] }))).toBe("out_of_range");
});
