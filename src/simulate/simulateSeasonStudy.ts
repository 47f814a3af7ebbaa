import { EstimateError } from "../estimate/EstimateError.js";
import { seededRandom } from "../estimate/numeric/seededRandom.js";
import type { RandomSource } from "../estimate/numeric/RandomSource.js";
import { dateOfDay } from "../study/dateOfDay.js";
import { dayNumber } from "../study/dayNumber.js";
import { seasonWave } from "./district/seasonWave.js";
import { rainSeries } from "./season/rainSeries.js";
import { seasonWeather } from "./season/seasonWeather.js";
import type { SeasonWeatherDay } from "./season/SeasonWeatherDay.js";
import type { SeasonDesign } from "./SeasonDesign.js";

/** One foot at one visit of a simulated district. */
export interface SeasonFoot {
  readonly yardId: string;
  readonly horseId: string;
  readonly foot: "LF" | "RF" | "LH" | "RH";
  readonly hind: boolean;
  readonly visitDate: string;
  /** `YYYY-MM`. */
  readonly month: string;
  /** 1 January to 12 December. */
  readonly monthOfYear: number;
  readonly gaugeId: string;
  /** Rain of the 14 days up to the visit, mm. */
  readonly rainMm14d: number;
  /** Rain of the day of the visit, the day before, and so on: 42 days, mm. */
  readonly rainMmByDay: readonly number[];
  /** Null for a foot that nobody looked at. */
  readonly thrush: boolean | null;
  /** Dark horn of the foot: the same at every visit, and nothing to do with rain. */
  readonly darkHorn: boolean;
}

/** A simulated district. */
export interface SeasonStudy {
  /** By yard, visit, horse and foot. */
  readonly rows: readonly SeasonFoot[];
  /** The weather it stood under, by gauge and day. */
  readonly weather: readonly SeasonWeatherDay[];
}

const feet = ["LF", "RF", "LH", "RH"] as const;
const lags = 42;

/**
 * Feet of a district whose truth is known, and in which season stands in the way: log odds = intercept + rain x rain of 14 days + season x yearly
 * wave + hind (in hind feet) + yard effect + horse effect + what a visit, or the whole district, shares; the effects normal with the
 * design's SDs, the feet independent given these. The same design and seed give the same rows on any machine. The weather, the calendar of
 * the visits, the horses and the frogs are streams of their own: a change of the truth leaves the others as they are.
 *
 * Errors: `out_of_range` for yards, horses, gaps, gauges or a share that make no sense; `not_a_date`; `too_few` when the weather given does not hold the 42
 * days before a visit.
 *
 * Source: own; no value stands for a real herd.
 */
export function simulateSeasonStudy(design: SeasonDesign, seed: string | number): SeasonStudy {
  const { yards, horsesPerYard, gauges = 4, unseenShare = 0, truth } = design;
  const [from, to] = requireSense(design, gauges, unseenShare);
  const random = seededRandom(seed);
  const weather: readonly SeasonWeatherDay[] =
    design.weather?.map(({ gaugeId, date, rainMm }) => ({ gaugeId, date, rainMm: rainMm ?? NaN })) ??
    seasonWeather(random.stream("weather"), { gauges, firstDay: from - lags + 1, lastDay: to });
  const series = rainSeries(weather);
  const names = [...series.keys()];
  const [calendar, herd, frogs] = [random.stream("calendar"), random.stream("herd"), random.stream("frogs")];
  const shared = random.stream("district");
  const months = Array.from({ length: Math.floor((to - from) / 28) + 1 }, () => shared.normal(0, truth.districtSd ?? 0));
  const rows: SeasonFoot[] = [];
  for (let y = 0; y < yards; y++) {
    const gaugeId = names[y % names.length]!;
    const yardId = `yard ${y + 1}`;
    const horses = Math.round((y + 1) * horsesPerYard) - Math.round(y * horsesPerYard);
    const yardEffect = herd.normal(0, truth.yardSd);
    const effects = Array.from({ length: horses }, () => yardEffect + herd.normal(0, truth.horseSd));
    const horns = effects.map(() => feet.map(() => herd.bernoulli(0.6)));
    for (const day of visitDays(calendar, from, to, design.visitGapDays)) {
      const rain = series.get(gaugeId)!(day, lags);
      const rainMm14d = Math.round(10 * rain.slice(0, 14).reduce((sum, value) => sum + value, 0)) / 10;
      const visitEffect = frogs.normal(0, truth.visitSd ?? 0) + months[Math.floor((day - from) / 28)]!;
      const visitDate = dateOfDay(day);
      const [month, monthOfYear] = [visitDate.slice(0, 7), Number(visitDate.slice(5, 7))];
      const wet =
        truth.intercept + (truth.rainPer10Mm14d * rainMm14d) / 10 + truth.seasonAmplitude * seasonWave(day) + visitEffect;
      effects.forEach((effect, h) => {
        const horseId = `${yardId} horse ${h + 1}`;
        feet.forEach((foot, f) => {
          const hind = foot.endsWith("H");
          const logOdds = wet + effect + (hind ? truth.hind : 0);
          const found = frogs.bernoulli(1 / (1 + Math.exp(-logOdds)));
          const unseen = frogs.bernoulli(unseenShare);
          rows.push({
            yardId,
            horseId,
            foot,
            hind,
            visitDate,
            month,
            monthOfYear,
            gaugeId,
            rainMm14d,
            rainMmByDay: rain,
            thrush: unseen ? null : found,
            darkHorn: horns[h]![f]!,
          });
        });
      });
    }
  }
  return { rows, weather };
}

function visitDays(random: RandomSource, from: number, to: number, gap: number): number[] {
  const days: number[] = [];
  const quarter = Math.floor(gap / 4);
  for (let day = from + random.integer(0, gap - 1); day <= to; day += gap + random.integer(-quarter, quarter)) days.push(day);
  return days;
}

function requireSense(
  { yards, horsesPerYard, visitGapDays, from, to }: SeasonDesign,
  gauges: number,
  unseenShare: number,
): readonly [number, number] {
  const days = [from, to].map((date) => {
    const day = dayNumber(date);
    if (day !== null) return day;
    throw new EstimateError("not_a_date", `The day "${date}" is not a date.`, "Write dates as YYYY-MM-DD.");
  }) as [number, number];
  const whole = [yards, visitGapDays, gauges].every((value) => Number.isInteger(value) && value >= 1);
  if (whole && horsesPerYard >= 1 && days[1] - days[0] >= visitGapDays && unseenShare >= 0 && unseenShare < 1) return days;
  throw new EstimateError(
    "out_of_range",
    `A district of ${yards} yards and ${gauges} gauges, ${horsesPerYard} horses a yard, visited every ${visitGapDays} days from ${from} to ${to}, a share of ${unseenShare} not seen, cannot be simulated.`,
    "Give whole numbers of yards, gauges and days, at least one horse a yard, a time of one gap or more, and a share below 1.",
  );
}
