import { expect, test } from "vitest";
import { rollingRain } from "../../../src/derive/rollingRain.js";
import { seededRandom } from "../../../src/estimate/numeric/seededRandom.js";
import { districtWeather } from "../../../src/simulate/district/districtWeather.js";
import { wetnessBefore } from "../../../src/simulate/district/wetnessBefore.js";
import { gaugeDay } from "../../study.js";

const weather = districtWeather(seededRandom("weather of a test"));

test("what a foot stood in is the rain that an analysis finds", () => {
  const wetness = wetnessBefore(weather);
  for (const gaugeId of ["Ossen Weir", "Brack Top"]) {
    const days = weather.filter((day) => day.gaugeId === gaugeId).map(({ date, rainMm }) => gaugeDay({ gaugeId, date, rainMm }));
    for (const { date, rainMm } of rollingRain(days, 14).slice(13)) expect(wetness(gaugeId, date).rainMm14d).toBe(rainMm);
  }
  expect(() => wetness("Ossen Weir", weather[12]!.date)).toThrow("No fortnight");
});

test("a dewy night counts once the air has cooled to its dew point", () => {
  const days = Array.from({ length: 14 }, (_, place) => ({ ...weather[place]!, tempMinC: 5, dewPointC: place < 3 ? 5 : 4.9 }));
  expect(wetnessBefore(days)(days[0]!.gaugeId, days[13]!.date).dewNights14d).toBe(3);
});
