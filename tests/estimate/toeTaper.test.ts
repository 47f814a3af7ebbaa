import fc from "fast-check";
import { expect, test } from "vitest";
import type { FootLandmarks } from "../../src/estimate/FootLandmarks.js";
import type { Point } from "../../src/estimate/Point.js";
import { toeTaper } from "../../src/estimate/toeTaper.js";
import { arbitraryMove, movedBy, startingAt } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { footOutline, planWidth, type FootPlan } from "./footOutline.js";
import { expectNear } from "./reference.js";

const arbitraryPlan: fc.Arbitrary<FootPlan> = fc.record({
  length: fc.double({ min: 100, max: 150, noNaN: true }),
  halfWidth: fc.double({ min: 45, max: 75, noNaN: true }),
  roundness: fc.double({ min: 1.4, max: 2.6, noNaN: true }),
  widest: fc.double({ min: 0.4, max: 0.8, noNaN: true }),
  heel: fc.double({ min: 0.6, max: 0.95, noNaN: true }),
  lateralExcess: fc.double({ min: -0.1, max: 0.1, noNaN: true }),
});
const arrow: Point[] = [{ x: 0, y: 8 }, { x: -3, y: 4 }, { x: -3, y: 0 }, { x: 3, y: 0 }, { x: 3, y: 4 }]; // prettier-ignore
const arrowMarks = { toe: [0, 8], heelMedial: [-3, 0], heelLateral: [3, 0] } as const;

test("a pointed house: 3 wide a quarter from the tip, 6 wide in all", () => {
  const { fromToe, widestFromToe, note, ...found } = toeTaper(arrow, arrowMarks);
  expect(found).toEqual({ taper: 0.5, widthNearToe: 3, greatestWidth: 6, length: 8, shapeIndex: 0.75 });
  expect([fromToe, widestFromToe, note]).toEqual([0.25, 0.5, null]);
  expect(toeTaper(arrow, arrowMarks, { fromToe: 0.125 }).taper).toBe(0.25);
  expect(toeTaper(arrow, arrowMarks, { fromToe: 0.75 }).taper).toBe(1);
});

test("a half ellipse has the taper √7/4", () => {
  const points = Array.from({ length: 2001 }, (_, i): [number, number] => [
    -50 * Math.cos((Math.PI * i) / 2000),
    120 * Math.sin((Math.PI * i) / 2000),
  ]);
  const { taper } = toeTaper(points, { toe: [0, 120], heelMedial: [-50, 0], heelLateral: [50, 0] }, { open: "close" });
  // The polygon's chords lie inside the curve by up to (π/2000)²/8.
  expectNear([taper], [Math.sqrt(7) / 4], 1e-6);
});

test("the taper a foot was drawn with comes back, however it lies and wherever the outline starts", () => {
  fc.assert(
    fc.property(arbitraryPlan, arbitraryMove, fc.nat(300), fc.boolean(), (plan, move, start, backwards) => {
      const { points, landmarks } = footOutline(plan);
      const outline = movedBy(startingAt(points, start), move);
      const [toe, heelMedial, heelLateral] = movedBy(
        [landmarks.toe, landmarks.heelMedial, landmarks.heelLateral].map((mark) => {
          const [x, y] = mark as readonly [number, number];
          return { x, y };
        }),
        move,
      );
      const marks: FootLandmarks = { toe: toe!, heelMedial: heelMedial!, heelLateral: heelLateral! };
      const found = toeTaper(backwards ? outline.reverse() : outline, marks);
      // The place a quarter from the toe and the widest place are corners of the drawing, so nothing is lost to chords.
      expectNear([found.taper, found.length], [planWidth(plan, 0.25), plan.length * move.scale], 1e-9);
      expectNear([found.greatestWidth], [plan.halfWidth * (2 + plan.lateralExcess) * move.scale], 1e-9);
      expect(found.widestFromToe).toBeCloseTo(plan.widest, 8);
    }),
  );
});

test("rounder toes taper less", () => {
  const taperOf = (roundness: number) => {
    const { points, landmarks } = footOutline({
      length: 130,
      halfWidth: 65,
      roundness,
      widest: 0.6,
      heel: 0.8,
      lateralExcess: 0,
    });
    return toeTaper(points, landmarks).taper;
  };
  // Common practice, no source: fore feet are rounder, hind feet narrower towards the toe.
  expect(taperOf(2.2)).toBeGreaterThan(taperOf(1.7) + 0.05);
});

test("landmarks of another foot, or that make no axis, are refused", () => {
  expect(faultCode(() => toeTaper(arrow, { ...arrowMarks, toe: [0, 9.5] }))).toBe("out_of_range");
  expect(faultCode(() => toeTaper(arrow, { ...arrowMarks, heelLateral: [-3, 0] }))).toBe("out_of_range");
  expect(faultCode(() => toeTaper(arrow, { ...arrowMarks, toe: [0, 0] }))).toBe("out_of_range");
  expect(faultCode(() => toeTaper(arrow, { ...arrowMarks, toe: [NaN, 8] }))).toBe("not_a_number");
  expect(faultCode(() => toeTaper(arrow, arrowMarks, { fromToe: 0 }))).toBe("out_of_range");
  expect(faultCode(() => toeTaper([], arrowMarks))).toBe("too_few");
});
