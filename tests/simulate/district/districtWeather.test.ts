import { expect, test } from "vitest";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import { districtWeather } from "../../../src/simulate/district/districtWeather.js";

const years = [1, 2, 3, 4, 5, 6, 7, 8].flatMap((seed) => districtWeather(seededRandom(seed)));
const of = (months: readonly string[]) => years.filter(({ date }) => months.includes(date.slice(5, 7)));
const mean = (days: typeof years, value: (day: (typeof years)[number]) => number) =>
  days.reduce((sum, day) => sum + value(day), 0) / days.length;

// Common practice, no source: a wet temperate lowland.
test("wet winters, drier summers with dewy nights, temperatures and humidity that can be", () => {
  const [winter, summer] = [of(["12", "01", "02"]), of(["07", "08", "09"])];
  expect(mean(winter, ({ rainMm }) => rainMm)).toBeGreaterThan(1.5 * mean(summer, ({ rainMm }) => rainMm));
  const dewy = ({ dewPointC, tempMinC }: (typeof years)[number]) => (dewPointC >= tempMinC ? 1 : 0);
  expect(mean(summer, dewy)).toBeGreaterThan(3 * mean(winter, dewy));
  expect(mean(summer, ({ tempMaxC }) => tempMaxC)).toBeGreaterThan(15);
  const yearly = mean(years, ({ rainMm }) => rainMm) * 365.25;
  expect(yearly).toBeGreaterThan(700);
  expect(yearly).toBeLessThan(1400);
  for (const { tempMinC, tempMaxC, humidityPct, dewPointC, rainMm, trace } of years) {
    expect(tempMinC < tempMaxC && dewPointC <= tempMaxC && humidityPct >= 20 && humidityPct <= 100).toBe(true);
    expect(rainMm >= 0 && rainMm < 120 && !(trace && rainMm > 0)).toBe(true);
  }
});

// Worked from the definition of relative humidity, saturation vapour pressures at dew point and at air temperature, with the
// coefficients of the Magnus formula (from memory): at the same temperature the air is saturated.
test("humidity follows from dew point and mean temperature", () => {
  const pressure = (celsius: number) => 6.112 * Math.exp((17.62 * celsius) / (243.12 + celsius));
  for (const { tempMinC, tempMaxC, dewPointC, humidityPct } of years.slice(0, 500)) {
    const expected = (100 * pressure(dewPointC)) / pressure((tempMinC + tempMaxC) / 2);
    // Another published pair of coefficients (17.62, 243.12) differs by less than a tenth of a per cent; the rest is rounding.
    expect(Math.abs(Math.min(100, expected) - humidityPct)).toBeLessThan(0.7);
  }
});
