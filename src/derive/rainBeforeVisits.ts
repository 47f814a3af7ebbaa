import { dayNumber } from "../study/dayNumber.js";
import { grouped } from "../study/grouped.js";
import type { Settings } from "../study/Settings.js";
import type { GaugeDay } from "../study/GaugeDay.js";
import type { Study } from "../study/Study.js";
import { antecedentPrecipitation } from "./antecedentPrecipitation.js";
import type { MissingRain, RainBeforeVisit, RainColumn } from "./RainBeforeVisit.js";
import { rollingRain } from "./rollingRain.js";
import { visitGauges } from "./visitGauges.js";

/**
 * Rain before every visit: one row for each horse and visit day, by day and horse.
 *
 * Method: the gauge of the yard where the horse stood that day (`visitGauges`); totals over the windows of the settings (`rollingRain`)
 * and the antecedent precipitation index (`antecedentPrecipitation`), both ending on the last reading that holds no rain from after
 * the day of the visit began (`lastAdmissibleDay`). One gauge stands for all fields of a yard, so this is exposure at yard level.
 *
 * Missing: a window with a day that has no usable reading is null, never a part sum; `missing` says why for each column.
 */
export function rainBeforeVisits(study: Study): RainBeforeVisit[] {
  const { settings } = study;
  const gauges = new Map(
    [...grouped(study.weather, (day) => day.gaugeId)].map(([id, days]) => [id, gaugeColumns(days, settings)]),
  );
  return visitGauges(study).map(({ horseId, visitDate, yardId, gaugeId, lastRainDay, missing }) => {
    const row = { horseId, visitDate, yardId, gaugeId, lastRainDay };
    return missing === null ? withRain(row, gauges.get(gaugeId!)!) : withoutRain(row, settings, missing);
  });
}

type VisitKeys = Pick<RainBeforeVisit, "horseId" | "visitDate" | "yardId" | "gaugeId" | "lastRainDay">;

interface GaugeColumns {
  readonly first: string;
  readonly last: string;
  readonly firstDay: number;
  readonly columns: readonly { readonly name: RainColumn; readonly values: readonly (number | MissingRain)[] }[];
}

/** Every rain column of a gauge, day by day, so that a visit is one look-up. */
function gaugeColumns(days: readonly GaugeDay[], settings: Settings): GaugeColumns {
  const windows = [...new Set(settings.rainWindowsDays)].map((windowDays) => ({
    name: rainColumn(windowDays),
    values: rollingRain(days, windowDays).map(({ rainMm, daysMissing, accumulated }): number | MissingRain => {
      if (rainMm !== null) return rainMm;
      if (accumulated) return { code: "accumulated", text: `a total of several days lies in the ${windowDays} days` };
      return { code: "days_missing", text: `${daysMissing} of ${windowDays} days have no reading` };
    }),
  }));
  const { apiDecayPerDay: decayPerDay, apiWarmUpDays } = settings;
  const warmUpDays = Math.max(1, apiWarmUpDays);
  const index = antecedentPrecipitation(days, { decayPerDay, warmUpDays });
  const values = index.map(({ apiMm, unbrokenDays }): number | MissingRain => {
    return apiMm ?? { code: "warm_up", text: `${unbrokenDays} unbroken days of readings, ${warmUpDays} are needed` };
  });
  const [first, last] = [index[0]!.date, index.at(-1)!.date];
  return { first, last, firstDay: dayNumber(first)!, columns: [...windows, { name: "apiMm", values }] };
}

function withRain(row: VisitKeys, gauge: GaugeColumns): RainBeforeVisit {
  const place = dayNumber(row.lastRainDay)! - gauge.firstDay;
  const outside: MissingRain = {
    code: "outside_readings",
    text: `the readings of gauge ${row.gaugeId ?? ""} run from ${gauge.first} to ${gauge.last}`,
  };
  const cells: Partial<Record<RainColumn, number | null>> = {};
  const missing: Partial<Record<RainColumn, MissingRain>> = {};
  for (const { name, values } of gauge.columns) {
    const value = values[place] ?? outside;
    cells[name] = typeof value === "number" ? value : null;
    if (typeof value !== "number") missing[name] = value;
  }
  return { ...row, ...cells, missing } as RainBeforeVisit;
}

function withoutRain(row: VisitKeys, settings: Settings, reason: MissingRain): RainBeforeVisit {
  const names: RainColumn[] = [...settings.rainWindowsDays.map(rainColumn), "apiMm"];
  const cells = Object.fromEntries(names.map((name) => [name, null]));
  const missing = Object.fromEntries(names.map((name) => [name, reason]));
  return { ...row, ...cells, missing } as unknown as RainBeforeVisit;
}

function rainColumn(windowDays: number): `rainMm${number}d` {
  return `rainMm${windowDays}d`;
}
