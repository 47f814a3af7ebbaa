import fc from "fast-check";
import { expect, test } from "vitest";
import { dewPoint } from "../../src/derive/dewPoint.js";

// Saturation pressure of water, kPa: IAPWS-IF97 by the Python package iapws 1.5.5, iapws97._PSat_T. Air that holds the vapour of saturation at the dew point must
// give it back. The Magnus formula differs from the steam tables by less than 0.06 degrees here.
test.each([
  [20, 10, 1.2281838693, 2.3392147668],
  [30, 20, 2.3392147668, 4.2466883405],
  [25, 5, 0.8725748611, 3.169746855],
  [15, 0.01, 0.61165700001, 1.7057448744],
])("air of %d degrees with a dew point of %d by the steam tables", (temperature, dew, held, saturated) => {
  expect(dewPoint(temperature, (100 * held) / saturated)).toBeCloseTo(dew, 1);
});

// FAO-56 equation 11, e(24.5) = 3.074649 and e(15) = 1.705346 kPa by the Python package pyet 1.5.0, calc_e0; six decimals were kept.
test("the vapour pressures of FAO-56", () => {
  expect(dewPoint(24.5, (100 * 1.705346) / 3.074649)).toBeCloseTo(15, 4);
});

test("saturated air is at its dew point; drier air has a lower one; more vapour a higher one", () => {
  const degrees = fc.double({ min: -40, max: 50, noNaN: true });
  fc.assert(
    fc.property(degrees, fc.double({ min: 1, max: 99.9, noNaN: true }), (temperature, humidity) => {
      expect(dewPoint(temperature, 100)).toBeCloseTo(temperature, 9);
      const found = dewPoint(temperature, humidity)!;
      expect(found).toBeLessThan(temperature);
      expect(dewPoint(temperature, Math.min(100, humidity + 0.1))).toBeGreaterThan(found);
      expect(dewPoint(temperature + 1, humidity)).toBeGreaterThan(found);
    }),
  );
});

test("missing stays missing, and there is no dew point without vapour", () => {
  expect([dewPoint(null, 50), dewPoint(10, null), dewPoint(10, 0)]).toEqual([null, null, null]);
});

test("values that no air has are refused", () => {
  for (const humidity of [-1, 100.1, Number.NaN]) expect(() => dewPoint(10, humidity)).toThrow("humidity");
  for (const temperature of [-91, 61, Number.NaN]) expect(() => dewPoint(temperature, 50)).toThrow("temperature");
});
