import { expect, test } from "vitest";
import { ringArea } from "../../src/derive/ringArea.js";

const points = (...pairs: readonly (readonly [number, number])[]) => pairs.map(([x, y]) => ({ x, y }));

test("a right triangle of 3 and 4, both ways round", () => {
  const ring = points([1, 1], [4, 1], [4, 5]);
  expect(ringArea(ring)).toBe(6);
  expect(ringArea([...ring].reverse())).toBe(-6);
});

test("a polygon on a circle holds nearly the circle", () => {
  const size = 200;
  const ring = Array.from({ length: size }, (_, place) => {
    const angle = (2 * Math.PI * place) / size;
    return { x: 10 * Math.cos(angle) + 500, y: 10 * Math.sin(angle) - 300 };
  });
  // Exactly n/2 r^2 sin(2 pi / n).
  expect(ringArea(ring)).toBeCloseTo((size / 2) * 100 * Math.sin((2 * Math.PI) / size), 8);
});
