import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { dateOfDay } from "../../study/dateOfDay.js";
import { rounded } from "../district/rounded.js";
import { seasonWave } from "../district/seasonWave.js";
import type { SeasonWeatherDay } from "./SeasonWeatherDay.js";

/**
 * Daily rain of gauges that share their spells, wet in winter and dry in summer, by gauge and day.
 *
 * Method: wet and dry days as a Markov chain whose chances move with the season, with a slow autoregressive wave of the whole district and one
 * of the gauge's own; amounts are exponential, larger in winter.
 */
export function seasonWeather(
  random: RandomSource,
  { gauges, firstDay, lastDay }: { readonly gauges: number; readonly firstDay: number; readonly lastDay: number },
): SeasonWeatherDay[] {
  const district = random.stream("district");
  let spell = 0;
  const spells = Array.from({ length: lastDay - firstDay + 1 }, () => (spell = 0.93 * spell + district.normal(0, 0.3)));
  return Array.from({ length: gauges }, (_, place) => {
    const own = random.stream(`gauge ${place + 1}`);
    let [local, wet] = [0, false];
    return spells.map((shared, offset): SeasonWeatherDay => {
      const season = seasonWave(firstDay + offset);
      local = 0.9 * local + own.normal(0, 0.2);
      const chance = (wet ? 0.55 : 0.3) + 0.15 * season + 0.13 * (shared + local);
      wet = own.bernoulli(Math.min(0.95, Math.max(0.03, rounded(chance, 6))));
      const amount = wet ? 0.2 - Math.log(own.uniform()) * (5.5 + 1.5 * season) : 0;
      return { gaugeId: `gauge ${place + 1}`, date: dateOfDay(firstDay + offset), rainMm: rounded(amount, 1) };
    });
  }).flat();
}
