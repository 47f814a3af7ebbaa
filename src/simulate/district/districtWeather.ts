import { dateOfDay } from "../../study/dateOfDay.js";
import { dayNumber } from "../../study/dayNumber.js";
import type { RandomSource } from "../../estimate/numeric/RandomSource.js";
import { districtCalendar } from "./districtCalendar.js";
import { rounded } from "./rounded.js";
import { seasonWave } from "./seasonWave.js";

/** One simulated day at one gauge, all of it known. */
export interface DistrictDay {
  readonly gaugeId: string;
  readonly date: string;
  readonly rainMm: number;
  /** Too little to measure. */
  readonly trace: boolean;
  readonly tempMinC: number;
  readonly tempMaxC: number;
  readonly humidityPct: number;
  readonly dewPointC: number;
}

/**
 * Daily weather of the two gauges of the invented district, by gauge and day: a wet temperate winter, a drier summer with dewy nights, and wet
 * and dry spells of some weeks. The hill gauge follows the valley gauge and has more rain. Readings end on their date.
 *
 * Method: wet and dry days follow each other as a Markov chain whose chances move with the season and with a slow autoregressive
 * wave; amounts are exponential. A dewy night is one on which the dew point is not below the lowest temperature. Humidity follows
 * from dew point and mean temperature by the Magnus formula (coefficients 17.625 and 243.04, from memory).
 */
export function districtWeather(random: RandomSource): DistrictDay[] {
  const first = dayNumber(districtCalendar.weatherFrom)!;
  const last = dayNumber(districtCalendar.lastDay)!;
  const [valley, hill]: [DistrictDay[], DistrictDay[]] = [[], []];
  let [spell, warmth, wet] = [0, 0, false];
  for (let day = first; day <= last; day++) {
    const season = seasonWave(day);
    spell = 0.96 * spell + random.normal(0, 0.28);
    warmth = 0.75 * warmth + random.normal(0, 1.5);
    const chance = (wet ? 0.62 : 0.32) + 0.11 * season + 0.14 * spell;
    wet = random.bernoulli(Math.min(0.95, Math.max(0.05, rounded(chance, 6))));
    const amount = wet ? 0.2 + exponential(random) * (5.6 + 0.9 * season) : 0;
    const day0 = { date: dateOfDay(day), ...air(random, day, season, wet, warmth) };
    valley.push({ gaugeId: "Ossen Weir", ...day0, ...reading(random, amount) });
    const hillWet = random.bernoulli(0.9) ? wet : !wet;
    const hillAmount = hillWet ? (wet ? amount * Math.max(0.5, 1.3 + random.normal(0, 0.3)) : 0.2 + exponential(random) * 2) : 0;
    hill.push({ gaugeId: "Brack Top", ...cooler(day0), ...reading(random, hillAmount) });
  }
  return [...valley, ...hill];
}

function exponential(random: RandomSource): number {
  return -Math.log(random.uniform());
}

function reading(random: RandomSource, amount: number): Pick<DistrictDay, "rainMm" | "trace"> {
  const rainMm = rounded(amount, 1);
  return { rainMm, trace: rainMm === 0 && random.bernoulli(0.06) };
}

type Air = Pick<DistrictDay, "tempMinC" | "tempMaxC" | "humidityPct" | "dewPointC">;

function air(random: RandomSource, day: number, season: number, wet: boolean, warmth: number): Air {
  const mean = 9.8 - 6 * seasonWave(day - 14) + warmth;
  const half = Math.max(1.2, 3.2 - 1.2 * season + (wet ? 0 : 1.6) + random.normal(0, 0.7));
  const tempMinC = rounded(mean - half, 1);
  const tempMaxC = rounded(mean + half, 1);
  // Dry clear nights from late summer into autumn are the dewy ones.
  const lateSummer = Math.max(0, -seasonWave(day - 45));
  const dewy = !wet && random.bernoulli(rounded(0.15 + 0.55 * lateSummer, 6));
  const depth = dewy ? -random.uniform() * 0.9 : wet ? 0.05 + random.uniform() * 0.8 : 0.3 + random.uniform() * 2.2;
  return withHumidity(tempMinC, tempMaxC, rounded(tempMinC - depth, 1));
}

function cooler({ date, tempMinC, tempMaxC, dewPointC }: Air & { readonly date: string }): Air & { readonly date: string } {
  const shifted = (temperature: number) => rounded(temperature - 1.4, 1);
  return { date, ...withHumidity(shifted(tempMinC), shifted(tempMaxC), shifted(dewPointC)) };
}

function withHumidity(tempMinC: number, tempMaxC: number, dewPointC: number): Air {
  const pressure = (temperature: number) => (17.625 * temperature) / (243.04 + temperature);
  const share = Math.exp(pressure(dewPointC) - pressure((tempMinC + tempMaxC) / 2));
  return { tempMinC, tempMaxC, humidityPct: Math.min(100, rounded(100 * share)), dewPointC };
}
