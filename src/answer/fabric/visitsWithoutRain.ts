import { rainBeforeVisits } from "../../derive/rainBeforeVisits.js";
import type { MissingRainCode, RainBeforeVisit } from "../../derive/RainBeforeVisit.js";
import { stayAt } from "../../derive/stayAt.js";
import { grouped } from "../../study/grouped.js";
import type { FootVisit } from "../../study/FootVisit.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";
import { fabricIssue } from "./fabricIssue.js";

/** From this share of visits on. Common practice, no source. */
const SHARE = 0.1;
const FEWEST_VISITS = 10;
const gaps: readonly (MissingRainCode | null)[] = ["outside_readings", "accumulated", "days_missing"];
const words: Partial<Record<MissingRainCode, string>> = {
  outside_readings: "lie before the first reading or after the last",
  accumulated: "have a total of several days among the days before",
  days_missing: "have days without a reading before them",
};

/**
 * Gauges whose gaps leave a tenth or more of the visits of their yards without the rain of the longest window of the settings; those visits are
 * lost to any question about rain. `gaugeGaps` tells how complete each gauge is.
 *
 * Missing: yards without a gauge, and gauges without any reading, are told on reading.
 *
 * Source: own; thresholds common practice, no source.
 */
export function visitsWithoutRain(study: Study): Issue[] {
  const windowDays = Math.max(...study.settings.rainWindowsDays);
  const column = `rainMm${windowDays}d` as const;
  const files = new Map(study.weather.map(({ gaugeId, file }) => [gaugeId, file]));
  if (files.size === 0) return [];
  const gaugeDays = visitsByGaugeDay(study);
  // One visit stands for all on a day at yards of a gauge.
  const standIns = gaugeDays.flatMap(([first]) => first ?? []);
  const visitsOn = new Map(gaugeDays.map((visits) => [keyOf(visits[0]), visits.length]));
  const rain = rainBeforeVisits({ ...study, visits: standIns });
  return [...grouped(rain, ({ gaugeId }) => gaugeId)].flatMap(([gaugeId, rows]) => {
    const file = files.get(gaugeId ?? "");
    const why = (row: RainBeforeVisit) => row.missing[column]?.code ?? null;
    const visitsOf = (some: readonly RainBeforeVisit[]) => some.reduce((sum, row) => sum + (visitsOn.get(keyOf(row)) ?? 0), 0);
    const lost = rows.filter((row) => why(row) !== null && gaps.includes(why(row)));
    const [visits, without] = [visitsOf(rows), visitsOf(lost)];
    if (file === undefined || visits < FEWEST_VISITS || without < SHARE * visits) return [];
    const reasons = [...grouped(lost, why)].map(([code, of]) => `${visitsOf(of)} ${code === null ? "" : (words[code] ?? "")}`);
    return [
      fabricIssue({
        file,
        line: null,
        column: "rain_mm",
        code: "visits_without_rain",
        found:
          `${without} of ${visits} visits to horses at yards of gauge ${gaugeId ?? ""} (${Math.round((100 * without) / visits)} %) ` +
          `have no rain total of ${windowDays} days: ${reasons.join("; ")}`,
        hint: "Ask for the missing readings, or use a gauge nearby; a gap is never filled with 0.",
      }),
    ];
  });
}

/** The visits to horses, one row of each, by gauge of the yard and day. */
function visitsByGaugeDay({ visits, horses, yards }: Study): FootVisit[][] {
  const stays = grouped(horses, ({ horseId }) => horseId);
  const gauges = new Map(yards.map(({ yardId, gaugeId }) => [yardId, gaugeId]));
  const rows = [...grouped(visits, ({ horseId }) => horseId).values()].flatMap((ofHorse) =>
    [...grouped(ofHorse, ({ visitDate }) => visitDate).values()].flatMap(([first]) => first ?? []),
  );
  const gaugeOf = ({ horseId, visitDate }: FootVisit) =>
    gauges.get(stayAt(stays.get(horseId) ?? [], horseId, visitDate)?.yardId ?? "") ?? null;
  return [...grouped(rows, gaugeOf)].flatMap(([gaugeId, ofGauge]) =>
    gaugeId === null ? [] : [...grouped(ofGauge, ({ visitDate }) => visitDate).values()],
  );
}

function keyOf(visit: { readonly horseId: string; readonly visitDate: string } | undefined): string {
  return `${visit?.horseId ?? ""}\n${visit?.visitDate ?? ""}`;
}
