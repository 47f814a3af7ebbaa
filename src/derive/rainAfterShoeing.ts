import { dateOfDay } from "../study/dateOfDay.js";
import { grouped } from "../study/grouped.js";
import type { Study } from "../study/Study.js";
import { lastAdmissibleDay } from "./lastAdmissibleDay.js";
import { requiredDay } from "./requiredDay.js";
import { rollingRain } from "./rollingRain.js";
import type { ShoeLife } from "./shoeLives.js";

/** A shoe and the rain of the weeks after it was nailed on. */
export interface ShoeInRain extends ShoeLife {
  /** Rain of the days after shoeing at the gauge of the yard, mm; null when a day has no usable reading or there is no gauge. */
  readonly rainMm: number | null;
}

/**
 * Rain of the first weeks of each shoe, whether it lasted so long or not, in the order of the lives given.
 *
 * Method: total over `days` days (28 unless given) after the day of shoeing at the gauge of the yard where the horse stood then. The
 * window is the same for every shoe, so a shoe that was lost early is not given less rain for it.
 *
 * Missing: null without a yard, a gauge or a complete window.
 *
 * Errors: those of `rollingRain`.
 *
 * Source: common practice, no source.
 */
export function rainAfterShoeing(
  lives: readonly ShoeLife[],
  study: Pick<Study, "weather" | "yards" | "settings">,
  days = 28,
): ShoeInRain[] {
  const totals = new Map(
    [...grouped(study.weather, ({ gaugeId }) => gaugeId)].map(([gaugeId, rows]) => [
      gaugeId,
      new Map(rollingRain(rows, days).map(({ date, rainMm }) => [date, rainMm])),
    ]),
  );
  const gauges = new Map(study.yards.map(({ yardId, gaugeId }) => [yardId, gaugeId]));
  return lives.map((life) => {
    const gaugeId = life.yardId === null ? null : (gauges.get(life.yardId) ?? null);
    const last = lastAdmissibleDay(dateOfDay(requiredDay(life.from) + days), study.settings.gaugeDay);
    return { ...life, rainMm: gaugeId === null ? null : (totals.get(gaugeId)?.get(last) ?? null) };
  });
}
