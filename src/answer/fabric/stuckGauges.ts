import { dailyRain, type DailyRain } from "../../derive/dailyRain.js";
import { fabricIssue } from "./fabricIssue.js";
import { grouped } from "../../study/grouped.js";
import type { GaugeDay } from "../../study/GaugeDay.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/** Wet day of the climate indices of ETCCDI: 1 mm or more. */
const WET = 1000;
/** Dry that long while another gauge has so many wet days and so much rain. Common practice, no source. */
const DRY = { days: 14, wetElsewhere: 7, micrometresElsewhere: 30_000 };
/** The same rain above the smallest step, so many days running. Common practice, no source. */
const SAME = { days: 4, micrometres: 500 };

/**
 * Gauges that read nothing for two weeks and more while another gauge of the study had a wet week in that time, or that gave the very same
 * rain on four days running: a blocked funnel, a stuck counter, or cells filled in.
 *
 * Missing: days without a reading end a run. A single gauge cannot be told dry from blocked, so only its repeated readings are looked at.
 *
 * Source: own; thresholds common practice, no source.
 */
export function stuckGauges({ weather }: Pick<Study, "weather">): Issue[] {
  const gauges = [...grouped(weather, ({ gaugeId }) => gaugeId)].map(([gaugeId, rows]) => ({
    gaugeId,
    rows: new Map(rows.map((row) => [row.date, row])),
    days: dailyRain(rows),
  }));
  const rainOn = new Map(
    gauges.map(({ gaugeId, days }) => [gaugeId, new Map(days.map(({ date, rainMicrometres }) => [date, rainMicrometres]))]),
  );
  return gauges.flatMap(({ gaugeId, rows, days }) => {
    const others = [...rainOn].filter(([id]) => id !== gaugeId);
    const dry = runs(days, (rain) => rain === 0).flatMap((run) => {
      if (run.length < DRY.days) return [];
      const wettest = others
        .map(([id, rain]) => ({ id, falls: run.map(({ date }) => rain.get(date) ?? 0) }))
        .map(({ id, falls }) => ({ id, wet: falls.filter((fall) => fall >= WET).length, sum: falls.reduce((a, b) => a + b, 0) }))
        .sort((a, b) => b.sum - a.sum)
        .find(({ wet, sum }) => wet >= DRY.wetElsewhere && sum >= DRY.micrometresElsewhere);
      if (wettest === undefined) return [];
      const { id, wet, sum } = wettest;
      return issueOf(
        run,
        rows,
        `gauge ${gaugeId} reads 0 mm on all ${run.length} days from ${span(run)}, while gauge ${id} had ${Math.round(sum / 1000)} mm on ${wet} wet days`,
      );
    });
    const same = runs(
      days,
      (rain, before) => rain !== null && rain >= SAME.micrometres && (before === null || rain === before),
    ).flatMap((run) =>
      run.length < SAME.days
        ? []
        : issueOf(
            run,
            rows,
            `gauge ${gaugeId} reads ${(run[0]?.rainMicrometres ?? 0) / 1000} mm on all ${run.length} days from ${span(run)}`,
          ),
    );
    return [...dry, ...same];
  });
}

/** The longest stretches of days of which each fits, given the rain of the day before it in the stretch. */
function runs(days: readonly DailyRain[], fits: (rain: number | null, before: number | null) => boolean): DailyRain[][] {
  const found: DailyRain[][] = [];
  let run: DailyRain[] = [];
  for (const day of days) {
    const { rainMicrometres } = day;
    if (fits(rainMicrometres, run.at(-1)?.rainMicrometres ?? null)) run.push(day);
    else {
      if (run.length > 0) found.push(run);
      run = fits(rainMicrometres, null) ? [day] : [];
    }
  }
  return run.length > 0 ? [...found, run] : found;
}

function span(run: readonly DailyRain[]): string {
  return `${run[0]?.date ?? ""} to ${run.at(-1)?.date ?? ""}`;
}

function issueOf(run: readonly DailyRain[], rows: ReadonlyMap<string, GaugeDay>, found: string): Issue[] {
  const row = rows.get(run[0]?.date ?? "");
  if (row === undefined) return [];
  return [
    fabricIssue({
      file: row.file,
      line: row.line,
      column: "rain_mm",
      code: "gauge_stuck",
      found,
      hint: "Ask the keeper of the gauge; leave the rain empty on days on which it did not work.",
    }),
  ];
}
