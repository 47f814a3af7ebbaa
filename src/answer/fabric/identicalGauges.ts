import { fabricIssue } from "./fabricIssue.js";
import { grouped } from "../../study/grouped.js";
import type { Issue } from "../../study/Issue.js";
import type { Study } from "../../study/Study.js";

/** Wet day of the climate indices of ETCCDI: 1 mm or more. */
const WET_MM = 1;
/** So many days on which either is wet, and this share of them the same at both. Common practice, no source. */
const FEWEST = 10;
const SHARE = 0.9;

/**
 * Pairs of gauges with the same rain on nine tenths of their wet days: one series under two names, which would be taken for two places.
 *
 * Missing: days count when both have a reading and either is 1 mm or more.
 *
 * Source: own; thresholds common practice, no source.
 */
export function identicalGauges({ weather }: Pick<Study, "weather">): Issue[] {
  const gauges = [...grouped(weather, ({ gaugeId }) => gaugeId)].map(([gaugeId, rows]) => ({
    gaugeId,
    first: rows[0],
    rain: new Map(rows.flatMap(({ date, rainMm }) => (rainMm === null ? [] : [[date, rainMm] as const]))),
  }));
  return gauges.flatMap((a, place) =>
    gauges.slice(place + 1).flatMap((b) => {
      const wet = [...a.rain].flatMap(([date, rain]) => {
        const other = b.rain.get(date);
        return other === undefined || Math.max(rain, other) < WET_MM ? [] : [rain === other];
      });
      const same = wet.filter((equal) => equal).length;
      if (wet.length < FEWEST || same < SHARE * wet.length || b.first === undefined) return [];
      return [
        fabricIssue({
          file: b.first.file,
          line: b.first.line,
          column: "gauge_id",
          code: "gauges_identical",
          found: `gauges ${a.gaugeId} and ${b.gaugeId} have the very same rain on ${same} of ${wet.length} wet days`,
          hint: "If it is one gauge, use one name for it; if the readings were copied over, leave those of the second out.",
        }),
      ];
    }),
  );
}
