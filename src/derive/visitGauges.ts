import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { byVisit } from "./byVisit.js";
import { lastAdmissibleDay } from "./lastAdmissibleDay.js";
import type { MissingRain } from "./RainBeforeVisit.js";
import { stayAt } from "./stayAt.js";

/** The gauge that stands for one visit to one horse. */
export interface VisitGauge {
  readonly horseId: string;
  readonly visitDate: string;
  /** Yard of the horse on that day; null when it is not known. */
  readonly yardId: string | null;
  /** Gauge that stands for the yard; null when there is none. */
  readonly gaugeId: string | null;
  /** Distance from the yard to it, km; null when it is not recorded. */
  readonly gaugeKm: number | null;
  /** Date of the last reading that holds no rain from after the day of the visit began. */
  readonly lastRainDay: string;
  /** Why no gauge with readings stands for the visit; null when one does. */
  readonly missing: MissingRain | null;
}

/**
 * The gauge of every visit: one row for each horse and visit day, by day and horse.
 *
 * Method: the gauge of the yard where the horse stood that day (`stayAt`), up to the last admissible reading (`lastAdmissibleDay`).
 *
 * Missing: `no_stay`, `no_yard`, `no_gauge` or `no_readings`, whichever comes first.
 *
 * Errors: `not_a_date`.
 */
export function visitGauges(study: Pick<Study, "visits" | "horses" | "yards" | "weather" | "settings">): VisitGauge[] {
  const stays = grouped(study.horses, (stay) => stay.horseId);
  const yards = new Map(study.yards.map((yard) => [yard.yardId, yard]));
  const gauges = new Set(study.weather.map(({ gaugeId }) => gaugeId));
  const visits = grouped(study.visits, ({ horseId, visitDate }) => `${horseId}\n${visitDate}`);
  return [...visits.values()]
    .map(([visit]): VisitGauge => {
      const { horseId, visitDate } = visit!;
      const stay = stayAt(stays.get(horseId) ?? [], horseId, visitDate);
      const yardId = stay?.yardId ?? null;
      const yard = yardId === null ? undefined : yards.get(yardId);
      const { gaugeId = null, gaugeKm = null } = yard ?? {};
      const lastRainDay = lastAdmissibleDay(visitDate, study.settings.gaugeDay);
      const row = { horseId, visitDate, yardId, gaugeId, gaugeKm, lastRainDay };
      const lacking = (code: MissingRain["code"], text: string) => ({ ...row, missing: { code, text } });
      if (stay === null) return lacking("no_stay", `no stay of the horse covers ${visitDate}`);
      if (yardId === null) return lacking("no_yard", "the yard of the horse is not known");
      if (yard === undefined) return lacking("no_yard", `yard ${yardId} is not described`);
      if (gaugeId === null) return lacking("no_gauge", `yard ${yardId} has no gauge`);
      if (!gauges.has(gaugeId)) return lacking("no_readings", `gauge ${gaugeId} has no readings`);
      return { ...row, missing: null };
    })
    .sort(byVisit);
}
