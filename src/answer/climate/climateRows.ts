import { dailyRain } from "../../derive/dailyRain.js";
import type { ExposureBeforeVisit } from "../../derive/ExposureBeforeVisit.js";
import { exposureBeforeVisits } from "../../derive/exposureBeforeVisits.js";
import { footShoeing } from "../../derive/footShoeing.js";
import { stayAt } from "../../derive/stayAt.js";
import { thrushCases } from "../../derive/thrushCases.js";
import { dayNumber } from "../../study/dayNumber.js";
import { grouped } from "../../study/grouped.js";
import type { Study } from "../../study/Study.js";
import type { ClimateRow } from "./ClimateRow.js";
import { certain } from "./certain.js";

/** Windows and decays that are tried beside the declared exposure. */
export const triedWindowsDays = [7, 14, 28, 42] as const;
export const triedDecays = [0.85, 0.9, 0.95] as const;
const lags = 42;

/** One row for each foot at each visit, specimens left out, with every exposure and everything that can be held equal. */
export function climateRows(study: Study): ClimateRow[] {
  const [, window] = /(\d+)d$/.exec(study.settings.primaryExposure) ?? [];
  const [, percent] = /^apiMm(.+)pct$/.exec(study.settings.primaryExposure) ?? [];
  const exposures = exposureBeforeVisits(study, {
    windowsDays: [...triedWindowsDays, ...(window === undefined ? [] : [Number(window)])],
    decays: [...triedDecays, ...(percent === undefined ? [] : [Number(percent) / 100])],
  });
  const rain = rainByGauge(study);
  const exposureAt = new Map(exposures.map((row) => [keyOf(row), { ...row, rainMmByDay: daysBefore(rain, row) }]));
  const stays = grouped(study.horses, ({ horseId }) => horseId);
  const yards = new Map(study.yards.map((yard) => [yard.yardId, yard]));
  const looks = grouped(study.visits, (row) => `${keyOf(row)}\n${row.foot}`);
  const before = visitsBefore(study);
  return thrushCases(study)
    .filter(({ missing }) => missing !== "specimen")
    .map((row) => {
      const key = keyOf(row);
      const exposure = exposureAt.get(key);
      const look = looks.get(`${key}\n${row.foot}`) ?? [];
      const stay = stayAt(stays.get(row.horseId) ?? [], row.horseId, row.visitDate);
      const yard = row.yardId === null ? undefined : yards.get(row.yardId);
      const shoe = look.find(({ shoeState }) => shoeState !== null) ?? look[0];
      const found: ClimateRow = {
        ...row,
        case: row.thrush,
        shodFoot: shoe === undefined ? null : footShoeing(shoe, stay),
        intervalDays: before.get(key) ?? null,
        hornColour: look.find(({ hornColour }) => hornColour !== null)?.hornColour ?? null,
        ground: yard?.ground ?? null,
        bedding: yard?.bedding ?? null,
        turnoutHours: yard?.turnoutHours ?? null,
        gaugeId: exposure?.gaugeId ?? null,
        linkage: exposure?.linkage ?? "no_gauge",
        rainMmByDay: exposure?.rainMmByDay ?? null,
      };
      // Assigned on a copy of the wide row: spread into one literal, both would be copied column by column at half the speed.
      return exposure === undefined ? found : Object.assign({ ...exposure }, found);
    });
}

function keyOf({ horseId, visitDate }: { readonly horseId: string; readonly visitDate: string }): string {
  return `${horseId}\n${visitDate}`;
}

function visitsBefore(study: Study): Map<string, number> {
  const gaps = new Map<string, number>();
  for (const [horseId, rows] of grouped(study.visits, (row) => row.horseId)) {
    const dates = [...new Set(rows.map(({ visitDate }) => visitDate))].sort();
    dates.slice(1).forEach((visitDate, place) => {
      gaps.set(keyOf({ horseId, visitDate }), certain(dayNumber(visitDate)) - certain(dayNumber(certain(dates[place]))));
    });
  }
  return gaps;
}

function rainByGauge(study: Study): Map<string, Map<number, number | null>> {
  return new Map(
    [...grouped(study.weather, ({ gaugeId }) => gaugeId)].map(([gaugeId, days]) => [
      gaugeId,
      new Map(
        dailyRain(days).map(({ date, rainMicrometres }) => [
          certain(dayNumber(date)),
          rainMicrometres === null ? null : rainMicrometres / 1000,
        ]),
      ),
    ]),
  );
}

function daysBefore(
  rain: ReadonlyMap<string, ReadonlyMap<number, number | null>>,
  { gaugeId, lastRainDay }: Pick<ExposureBeforeVisit, "gaugeId" | "lastRainDay">,
): (number | null)[] | null {
  const own = gaugeId === null ? undefined : rain.get(gaugeId);
  if (own === undefined) return null;
  const last = certain(dayNumber(lastRainDay));
  return Array.from({ length: lags }, (_, lag) => own.get(last - lag) ?? null);
}
