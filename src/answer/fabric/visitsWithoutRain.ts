import { fabricIssue } from "./fabricIssue.js";
import { rainBeforeVisits } from "../../derive/rainBeforeVisits.js";
import type { MissingRainCode, RainBeforeVisit } from "../../derive/RainBeforeVisit.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/** From this share of visits on. Common practice, no source. */
const SHARE = 0.1;
const FEWEST_VISITS = 10;
const gaps: readonly MissingRainCode[] = ["outside_readings", "accumulated", "days_missing"];
const words: Partial<Record<MissingRainCode, string>> = {
  outside_readings: "lie before the first reading or after the last",
  accumulated: "have a total of several days among the days before",
  days_missing: "have days without a reading before them",
};

/**
 * Gauges whose gaps leave a tenth or more of the visits of their yards without the rain of the longest window of the settings; those visits are
 * lost to any question about rain.
 *
 * Missing: yards without a gauge, and gauges without any reading, are told on reading.
 *
 * Source: own; thresholds common practice, no source.
 */
export function visitsWithoutRain(study: Study): Issue[] {
  const windowDays = Math.max(...study.settings.rainWindowsDays);
  const column = `rainMm${windowDays}d` as const;
  const why = (row: RainBeforeVisit): MissingRainCode | null => row.missing[column]?.code ?? null;
  const files = new Map(study.weather.map(({ gaugeId, file }) => [gaugeId, file]));
  return [...grouped(rainBeforeVisits(study), ({ gaugeId }) => gaugeId)].flatMap(([gaugeId, visits]) => {
    const file = files.get(gaugeId ?? "");
    const lost = visits.filter((row) => gaps.includes(why(row) ?? "no_stay"));
    if (file === undefined || visits.length < FEWEST_VISITS || lost.length < SHARE * visits.length) return [];
    const reasons = [...grouped(lost, why)].map(([code, of]) => `${of.length} ${code === null ? "" : (words[code] ?? "")}`);
    return [
      fabricIssue({
        file,
        line: null,
        column: "rain_mm",
        code: "visits_without_rain",
        found:
          `${lost.length} of ${visits.length} visits to horses at yards of gauge ${gaugeId ?? ""} (${Math.round((100 * lost.length) / visits.length)} %) ` +
          `have no rain total of ${windowDays} days: ${reasons.join("; ")}`,
        hint: "Ask for the missing readings, or use a gauge nearby; a gap is never filled with 0.",
      }),
    ];
  });
}
