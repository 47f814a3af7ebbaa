import { expect, test } from "vitest";
import { areaFromCircumference } from "../../src/derive/areaFromCircumference.js";

// By hand, C^2 / (4 pi): 330 mm is 33 cm, 33^2 / 12.566 = 86.66.
test.each([
  [330, 86.66],
  [360, 103.13],
  [400, 127.32],
])("a circumference of %i mm is %f square cm", (mm, cm2) => {
  expect(areaFromCircumference(mm)).toBeCloseTo(cm2, 2);
});

test("a circle of 10 cm across holds 25 pi", () => {
  expect(areaFromCircumference(100 * Math.PI)).toBeCloseTo(25 * Math.PI, 10);
});

test("missing stays missing, nonsense is refused", () => {
  expect(areaFromCircumference(null)).toBeNull();
  expect(() => areaFromCircumference(-1)).toThrow("makes no sense");
  expect(() => areaFromCircumference(NaN)).toThrow("makes no sense");
});
