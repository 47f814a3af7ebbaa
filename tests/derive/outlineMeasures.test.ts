import { expect, test } from "vitest";
import { outlineMeasures } from "../../src/derive/outlineMeasures.js";
import { tracedOutlines } from "../../src/derive/tracedOutlines.js";
import { tracing } from "./tracing.js";

const of = (options: Parameters<typeof tracing>[0]) => outlineMeasures(tracedOutlines({ outlines: tracing(options) })[0]!);

test("an oval, whose measures are known, wherever it lies", () => {
  const measures = of({ points: 400, frogPoints: 400, at: [50, 70], turnedDeg: 33 })!;
  // Half axes 60 and 65; heels at -60 degrees; area pi a b; circumference by Ramanujan's second approximation (1914).
  const h = ((60 - 65) / (60 + 65)) ** 2;
  const around = Math.PI * 125 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
  expect(measures.hoofWidthMm).toBeCloseTo(120, 6);
  expect(measures.hoofLengthMm).toBeCloseTo(65 * (1 + Math.sqrt(3) / 2), 9);
  expect(measures.shapeIndex).toBeCloseTo(120 / (65 * (1 + Math.sqrt(3) / 2)), 8);
  expect([measures.frogWidthMm, measures.frogLengthMm]).toEqual([expect.closeTo(40, 6), expect.closeTo(70, 6)]);
  expect(measures.frogIndex).toBeCloseTo(4 / 7, 8);
  // The polygon of 400 points lies within the oval, by about 2 pi^2 / 3 / 400^2 of it.
  expect(measures.areaCm2 / ((Math.PI * 60 * 65) / 100)).toBeCloseTo(1, 4);
  expect(measures.circumferenceMm / around).toBeCloseTo(1, 4);
});

test("without a frog its measures are missing; an outline that is not usable has none", () => {
  expect(of({ frogPoints: 0 })).toMatchObject({ frogWidthMm: null, frogLengthMm: null, frogIndex: null });
  expect(of({ points: 10 })).toBeNull();
});
