import type { GaugeDay } from "../study/GaugeDay.js";
import { grouped } from "../study/grouped.js";
import { dailyRain, type DailyRain } from "./dailyRain.js";

/** How complete the readings of one gauge are. */
export interface GaugeGaps {
  readonly gaugeId: string;
  /** Dates of the first and the last row. */
  readonly first: string;
  readonly last: string;
  /** Calendar days from the first to the last row. */
  readonly days: number;
  /** Days of these without a usable reading of rain. */
  readonly daysMissing: number;
  /** Days missing in a row, at most. */
  readonly longestGapDays: number;
  /** First day of that gap, the earliest of equal ones; null without a gap. */
  readonly longestGapFrom: string | null;
  /** Rows that hold the total of several days. */
  readonly accumulated: number;
  /** Rows with too little rain to measure. */
  readonly trace: number;
  /** Rows marked as missing. */
  readonly markedMissing: number;
  /** Rows with a lowest and a highest temperature. */
  readonly withTemperatures: number;
  /** Rows from which a dew point is known or can be worked out. */
  readonly withDewPoint: number;
}

/**
 * Where the rain readings of each gauge begin, end and have holes, one row for each gauge, by name.
 *
 * Missing: a day counts as missing without a row, without a value, marked as missing, or covered by a total of several days; a trace is a
 * reading. Readings that were refused on reading leave the same hole.
 *
 * Errors: `bad_rain`; `not_a_date`.
 */
export function gaugeGaps(weather: readonly GaugeDay[]): GaugeGaps[] {
  return [...grouped(weather, ({ gaugeId }) => gaugeId)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([gaugeId, rows]) => {
      const record = dailyRain(rows);
      const gap = longestGap(record);
      const count = (is: (row: GaugeDay) => boolean) => rows.filter(is).length;
      const bothTemperatures = (row: GaugeDay) => row.tempMinC !== null && row.tempMaxC !== null;
      return {
        gaugeId,
        first: record[0]!.date,
        last: record.at(-1)!.date,
        days: record.length,
        daysMissing: record.filter((day) => day.rainMicrometres === null).length,
        longestGapDays: gap.days,
        longestGapFrom: gap.from,
        accumulated: count(({ flag }) => flag === "accumulated"),
        trace: count(({ flag }) => flag === "trace"),
        markedMissing: count(({ flag }) => flag === "missing"),
        withTemperatures: count(bothTemperatures),
        withDewPoint: count((row) => row.dewPointC !== null || (row.humidityPct !== null && bothTemperatures(row))),
      };
    });
}

function longestGap(record: readonly DailyRain[]): { readonly days: number; readonly from: string | null } {
  let longest: { readonly days: number; readonly from: string | null } = { days: 0, from: null };
  let days = 0;
  record.forEach(({ rainMicrometres }, place) => {
    days = rainMicrometres === null ? days + 1 : 0;
    if (days > longest.days) longest = { days, from: record[place - days + 1]!.date };
  });
  return longest;
}
