import fc from "fast-check";
import { expect, test } from "vitest";
import { extraterrestrialRadiation } from "../../src/derive/extraterrestrialRadiation.js";
import { weatherReferences } from "./weatherReferences.js";

// FAO-56 example 8: 3 September (day 246) at 20 degrees south, 32.2 MJ per square metre and day; example 15: Lyon, 45.72 north, July, 40.6. As quoted by the test suites of the
// Python packages pyet and PyETo; the paper prints one decimal.
test("the examples of FAO-56", () => {
  expect(extraterrestrialRadiation(-20, 246)).toBeCloseTo(32.2, 1);
  expect(Math.abs(extraterrestrialRadiation(45.72, 196) - 40.6)).toBeLessThan(0.05);
});

// McMahon TA et al. 2013, Hydrology and Earth System Sciences 17, supplement S19: Alice Springs, 20 July 1980, 23.6182, as quoted by pyet.
test("Alice Springs on 20 July", () => {
  expect(extraterrestrialRadiation(-23.7951, 202)).toBeCloseTo(23.6182, 4);
});

// Python package pyet 1.5.0, extraterrestrial_r at 53.2 degrees north; six decimals were kept.
test.each([
  [10, 6.502994],
  [105, 30.331694],
  [196, 39.893683],
  [304, 11.013033],
])("53.2 degrees north, day %i", (day, expected) => {
  expect(extraterrestrialRadiation(53.2, day)).toBeCloseTo(expected, 5);
});

// tests/reference/weather/references.R adds up the sun's height over 20,000 moments of the day; that many give six digits.
test.each([...weatherReferences("radiation")])("the sum over the day, %s", (key, expected) => {
  const [latitude = Number.NaN, day = Number.NaN] = key.split(" ").map(Number);
  expect(extraterrestrialRadiation(latitude, day)).toBeCloseTo(expected, 4);
});

test("where the sun does not set, does not rise, and at the pole", () => {
  expect(extraterrestrialRadiation(70, 172)).toBeCloseTo(42.69499, 4); // sunset hour angle π: FAO-56 equations 21 to 25 by hand
  expect(extraterrestrialRadiation(70, 355)).toBe(0);
  expect(extraterrestrialRadiation(90, 355)).toBe(0);
  expect(extraterrestrialRadiation(-90, 355)).toBeGreaterThan(40);
});

test("never below 0, greatest where it is summer, the same in both halves but for the distance of the sun", () => {
  fc.assert(
    fc.property(fc.double({ min: -90, max: 90, noNaN: true }), fc.integer({ min: 1, max: 366 }), (latitude, day) => {
      const found = extraterrestrialRadiation(latitude, day);
      expect(found).toBeGreaterThanOrEqual(0);
      // A day of sun at the declination of midsummer, at the nearest sun: 24 * 60 * 0.082 * 1.033 * sin(23.45°) = 48.5.
      expect(found).toBeLessThan(48.6);
      const flipped = extraterrestrialRadiation(-latitude, day);
      const season = Math.sin((2 * Math.PI * day) / 365 - 1.39);
      if (Math.abs(latitude) > 1 && Math.abs(season) > 0.05)
        expect(found >= flipped).toBe(latitude * season > 0 || found === flipped);
    }),
  );
});

test("places and days that are not there are refused", () => {
  for (const latitude of [-91, 90.5, Number.NaN]) expect(() => extraterrestrialRadiation(latitude, 1)).toThrow("latitude");
  for (const day of [0, 367, 1.5, Number.NaN]) expect(() => extraterrestrialRadiation(0, day)).toThrow("day");
});
