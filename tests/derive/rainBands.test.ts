import fc from "fast-check";
import { expect, test } from "vitest";
import { rainBands } from "../../src/derive/rainBands.js";

test("bands are named as they are read", () => {
  expect(rainBands([20, 40]).map((band) => band.name)).toEqual(["under 20", "20-40", "40 or more"]);
  expect(rainBands([20, 40]).map((band) => band.words)).toEqual(["under 20 mm", "20 to 40 mm", "40 mm or more"]);
  expect(rainBands([]).map((band) => band.name)).toEqual(["any"]);
  expect(rainBands([0, 15, 15]).map((band) => band.name)).toEqual(["under 15", "15 or more"]);
});

test("every amount is in exactly one band", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 300 })), fc.double({ min: 0, max: 400, noNaN: true }), (edges, mm) => {
      expect(rainBands(edges).filter((band) => mm >= band.fromMm && mm < band.toMm)).toHaveLength(1);
    }),
  );
});
