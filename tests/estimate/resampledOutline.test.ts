import fc from "fast-check";
import { expect, test } from "vitest";
import { outlineMoments } from "../../src/estimate/outlineMoments.js";
import type { Point } from "../../src/estimate/Point.js";
import { resampledOutline } from "../../src/estimate/resampledOutline.js";
import { arbitraryOutline, startingAt } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";

const square = [[0, 0], [4, 0], [4, 4], [0, 4]] as const; // prettier-ignore
const near = (points: readonly Point[], wanted: readonly Point[], digits: number) => {
  expect(points).toHaveLength(wanted.length);
  points.forEach(({ x, y }, i) => {
    expect(x).toBeCloseTo(wanted[i]!.x, digits);
    expect(y).toBeCloseTo(wanted[i]!.y, digits);
  });
};

test("eight points of a square, from a corner and from the place nearest a landmark", () => {
  const eight = [[0, 0], [2, 0], [4, 0], [4, 2], [4, 4], [2, 4], [0, 4], [0, 2]].map(([x, y]) => ({ x: x!, y: y! })); // prettier-ignore
  near(resampledOutline(square, 8), eight, 12);
  near(resampledOutline(square, 8, { start: [5, 2] }), startingAt(eight, 3), 12);
});

test("direction and start of the tracing make no difference once a landmark is given", () => {
  fc.assert(
    fc.property(arbitraryOutline, fc.nat(100), (points, start) => {
      const landmark = { start: [0, 100] as const };
      const plain = resampledOutline(points, 40, landmark);
      near(resampledOutline(startingAt(points, start), 40, landmark), plain, 8);
      near(resampledOutline([...points].reverse(), 40, landmark), plain, 8);
    }),
  );
});

test("many points keep area and perimeter, and are as many as asked for", () => {
  fc.assert(
    fc.property(arbitraryOutline, (points) => {
      const [m, found] = [outlineMoments(points), resampledOutline(points, 2000)];
      const again = outlineMoments(found);
      expect(found).toHaveLength(2000);
      // Each corner is cut by less than half a step.
      expect(again.area / m.area).toBeCloseTo(1, 3);
      expect(again.perimeter / m.perimeter).toBeCloseTo(1, 3);
      expect(again.orientation).toBe("anticlockwise");
    }),
    { numRuns: 20 },
  );
});

test("bad numbers of points and outlines are refused", () => {
  expect(faultCode(() => resampledOutline(square, 2))).toBe("out_of_range");
  expect(faultCode(() => resampledOutline(square, 7.5))).toBe("not_a_count");
  expect(faultCode(() => resampledOutline([[0, 0]], 10))).toBe("too_few");
});
