import { expect, test } from "vitest";
import { hoofShape } from "../../src/derive/hoofShape.js";
import { footVisit } from "../footVisit.js";

// Casanova PM et al. 2012, J Equine Vet Sci 32:231, as reported and rounded there: soles of unshod yearlings, length × width, fore
// 12 × 13 cm, hind 12 × 12 cm.
test("published sole sizes: fore 1.08, hind 1.00", () => {
  expect(hoofShape(footVisit({ hoofWidthMm: 130, hoofLengthMm: 120 })).shapeIndex).toBeCloseTo(1.0833, 4);
  expect(hoofShape(footVisit({ hoofWidthMm: 120, hoofLengthMm: 120 })).shapeIndex).toBe(1);
});

test("toe and heel at the common 2:1; the gap is toe minus heel, the wall difference lateral minus medial", () => {
  const shape = hoofShape(
    footVisit({
      ...{ toeLengthMm: 84, heelHeightMm: 42, toeAngleDeg: 50, heelAngleDeg: 44 },
      ...{ medialWallAngleDeg: 78, lateralWallAngleDeg: 71, frogWidthMm: 54, frogLengthMm: 90 },
    }),
  );
  expect(shape).toEqual({
    shapeIndex: null,
    frogIndex: 0.6,
    toeHeelRatio: 2,
    toeHeelGapDeg: 6,
    wallAngleDifferenceDeg: -7,
    flatterWall: "lateral",
  });
});

test("one measure is not enough, and nothing is divided by 0", () => {
  const nothing = hoofShape(footVisit());
  expect(Object.values(nothing)).toEqual([null, null, null, null, null, null]);
  expect(hoofShape(footVisit({ hoofWidthMm: 120, frogLengthMm: 90, toeAngleDeg: 50, medialWallAngleDeg: 80 }))).toEqual(nothing);
  expect(hoofShape(footVisit({ toeLengthMm: 84, heelHeightMm: 0 })).toeHeelRatio).toBeNull();
});

test("the flatter wall is the one with the smaller angle to the ground", () => {
  const flatter = (medialWallAngleDeg: number | null, lateralWallAngleDeg: number | null) =>
    hoofShape(footVisit({ medialWallAngleDeg, lateralWallAngleDeg })).flatterWall;
  expect([flatter(70, 78), flatter(78, 70), flatter(75, 75), flatter(75, null)]).toEqual(["medial", "lateral", null, null]);
});
