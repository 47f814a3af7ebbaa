import fc from "fast-check";
import { expect, test } from "vitest";
import { medialLateralAsymmetry } from "../../src/estimate/medialLateralAsymmetry.js";
import { outlineMoments } from "../../src/estimate/outlineMoments.js";
import { arbitraryMove, movedBy, startingAt } from "./arbitraryOutline.js";
import { faultCode } from "./faultCode.js";
import { footOutline, planWidth, type FootPlan } from "./footOutline.js";
import { expectNear } from "./reference.js";

const plan: FootPlan = { length: 130, halfWidth: 60, roundness: 2, widest: 0.6, heel: 0.8, lateralExcess: 0.1 };

test("a slanted four-sided foot by hand", () => {
  // Axis on x = 0; inner side a triangle of 4 x 10, outer side one of 6 x 10.
  const kite = [[0, 10], [-4, 2], [-4, 0], [6, 0], [6, 2]] as const; // prettier-ignore
  const found = medialLateralAsymmetry(
    kite,
    { toe: [0, 10], heelMedial: [-4, 0], heelLateral: [4, 0] },
    { levels: [0.4, 0.9, 0] },
  );
  expect([found.medialArea, found.lateralArea]).toEqual([24, 36]);
  expect(found.areaAsymmetry).toBeCloseTo(0.2, 14);
  // The toe itself has no width and is left out; levels come in order.
  expect(found.curve.map((row) => row.fromToe)).toEqual([0.4, 0.9]);
  expectNear(found.curve.flatMap((row) => [row.medialWidth, row.lateralWidth, row.difference]), [2, 3, 0.2, 4, 6, 0.2], 1e-14); // prettier-ignore
});

test("the excess a foot was drawn with comes back, wherever the outline lies and starts", () => {
  fc.assert(
    fc.property(fc.double({ min: -0.2, max: 0.2, noNaN: true }), arbitraryMove, fc.nat(300), (excess, move, start) => {
      const { points, landmarks } = footOutline({ ...plan, lateralExcess: excess });
      const marks = [landmarks.toe, landmarks.heelMedial, landmarks.heelLateral].map((mark) => {
        const [x, y] = mark as readonly [number, number];
        return { x, y };
      });
      const [toe, heelMedial, heelLateral] = movedBy(marks, move);
      const outline = movedBy(startingAt(points, start), move);
      const found = medialLateralAsymmetry(outline, { toe: toe!, heelMedial: heelMedial!, heelLateral: heelLateral! });
      expect(found.areaAsymmetry).toBeCloseTo(excess / (2 + excess), 9);
      for (const row of found.curve) expect(row.difference).toBeCloseTo(excess / (2 + excess), 9);
      expect(found.curve).toHaveLength(19);
    }),
  );
});

test("half widths follow the plan, areas add up", () => {
  const { points, landmarks } = footOutline(plan, 400);
  const found = medialLateralAsymmetry(points, landmarks);
  for (const { fromToe, medialWidth, lateralWidth } of found.curve) {
    // Chords of 400 steps lie inside the curve by less than a hundred-thousandth.
    expectNear([medialWidth, lateralWidth], [60 * planWidth(plan, fromToe), 66 * planWidth(plan, fromToe)], 2e-5);
  }
  expectNear([found.medialArea + found.lateralArea], [outlineMoments(points).area], 1e-12);
});

test("a mirror keeps the sign, names changed turn it", () => {
  const { points, landmarks } = footOutline(plan);
  const { areaAsymmetry } = medialLateralAsymmetry(points, landmarks);
  const flip = ([x, y]: readonly [number, number]): [number, number] => [-x, y];
  const pair = (mark: unknown) => mark as [number, number];
  const mirror = {
    toe: flip(pair(landmarks.toe)),
    heelMedial: flip(pair(landmarks.heelMedial)),
    heelLateral: flip(pair(landmarks.heelLateral)),
  };
  const turned = points.map(({ x, y }) => ({ x: -x, y }));
  expect(medialLateralAsymmetry(turned, mirror).areaAsymmetry).toBeCloseTo(areaAsymmetry, 12);
  const renamed = { ...landmarks, heelMedial: landmarks.heelLateral, heelLateral: landmarks.heelMedial };
  expect(medialLateralAsymmetry(points, renamed).areaAsymmetry).toBeCloseTo(-areaAsymmetry, 12);
});

test("a border that has crossed the axis has a negative width", () => {
  const points = [[0, 10], [1, 6], [1, 4], [-4, 2], [-4, 0], [4, 0], [4, 6]] as const; // prettier-ignore
  const { curve, medialArea, lateralArea } = medialLateralAsymmetry(
    points,
    { toe: [0, 10], heelMedial: [-4, 0], heelLateral: [4, 0] },
    { levels: [0.5] },
  );
  expect(curve[0]).toMatchObject({ medialWidth: -1, lateralWidth: 4 });
  expect(medialArea + lateralArea).toBeCloseTo(outlineMoments(points).area, 12);
});

test("levels outside the foot and bad landmarks are refused", () => {
  const { points, landmarks } = footOutline(plan);
  expect(faultCode(() => medialLateralAsymmetry(points, landmarks, { levels: [1.1] }))).toBe("out_of_range");
  expect(faultCode(() => medialLateralAsymmetry(points, { ...landmarks, toe: [500, 500] }))).toBe("out_of_range");
});
