import type { Table } from "../../chart/Table.js";
import type { TrimInterval } from "../../derive/TrimInterval.js";
import { clusteredProportion } from "../../estimate/clusteredProportion.js";
import { grouped } from "../../study/grouped.js";

/**
 * How often an interval ran late by whether the one before it, of the same horse, did; limits with horses as clusters. No table when no
 * interval follows another. An interval that was lost or has no plan breaks the row of a horse.
 *
 * @private
 */
export function lateAgainTable(intervals: readonly TrimInterval[], level: number): Table[] {
  const pairs = [...grouped(intervals, ({ horseId }) => horseId).values()].flatMap((rows) =>
    rows.slice(1).flatMap((now, place) => {
      const before = rows[place];
      if (before === undefined || before.daysLate === null || now.daysLate === null) return [];
      return [{ horseId: now.horseId, before: before.status === "late", late: now.status === "late" }];
    }),
  );
  if (pairs.length === 0) return [];
  const rows = [true, false].map((before) => {
    const of = pairs.filter((pair) => pair.before === before);
    const words = before ? "the one before was late" : "the one before was not late";
    if (of.length === 0) return { before: words, late: 0, n: 0, estimate: null, lower: null, upper: null };
    const clusters = [...grouped(of, ({ horseId }) => horseId).values()].map((own) => ({
      cases: own.filter(({ late }) => late).length,
      n: own.length,
    }));
    const { cases, n, estimate, logitT } = clusteredProportion(clusters, { level });
    return { before: words, late: cases, n, estimate, ...logitT };
  });
  return [
    {
      caption: "Is it the same ones? Intervals that ran late, by the interval before",
      columns: [
        { name: "before", title: "Interval" },
        { name: "late", title: "Late" },
        { name: "n", title: "Of" },
        { name: "estimate", title: "Share", percent: true },
        { name: "lower", title: "From", percent: true },
        { name: "upper", title: "To", percent: true },
      ],
      rows,
    },
  ];
}
