import type { IntervalKeepingRow } from "../../chart/intervalKeepingChart.js";
import type { Table } from "../../chart/Table.js";
import type { DaysWithinInterval } from "../../derive/daysWithinInterval.js";
import type { TrimInterval } from "../../derive/TrimInterval.js";
import { clusteredProportion } from "../../estimate/clusteredProportion.js";
import { grouped } from "../../study/grouped.js";
import type { Settings } from "../../study/Settings.js";
import { daysInWords } from "../words/daysInWords.js";

/** Early, kept, late and lost by yard in the order of names, with the share of horse-days within the interval; small yards greyed. @private */
export function keepingByYard(
  intervals: readonly TrimInterval[],
  days: readonly DaysWithinInterval[],
  { level, minimumHorses, toleranceDays }: Settings,
): { readonly rows: readonly IntervalKeepingRow[]; readonly table: Table } {
  const judged = intervals.filter(({ daysLate, status }) => daysLate !== null || status === "lost");
  const daysOf = grouped(days, ({ yardId }) => yardId);
  const yards = [...grouped(judged, ({ yardId }) => yardId)].map(([yardId, of]) => {
    const count = (status: TrimInterval["status"]) => of.filter((row) => row.status === status).length;
    const horses = new Set(of.map(({ horseId }) => horseId)).size;
    const base = { yardId: yardId ?? "yard not known", horses, intervals: of.length };
    const counts = { early: count("early"), kept: count("kept"), late: count("late"), lost: count("lost") };
    const tooFew = horses < minimumHorses;
    return { ...base, ...counts, tooFew, ...shareOf(daysOf.get(yardId) ?? [], level, tooFew) };
  });
  yards.sort((a, b) => (a.yardId < b.yardId ? -1 : 1));
  const shown = yards.map(({ tooFew: _, ...row }) => row);
  return {
    rows: yards.map(({ yardId, early, kept, late, tooFew }) => ({ yardId, early, kept, late, tooFew })),
    table: {
      caption: `Intervals by yard, kept within ${daysInWords(toleranceDays)} of the date, and days of horses within the interval`,
      columns: [
        { name: "yardId", title: "Yard" },
        { name: "horses", title: "Horses" },
        { name: "intervals", title: "Intervals" },
        { name: "kept", title: "Kept" },
        { name: "late", title: "Late" },
        { name: "early", title: "Early" },
        { name: "lost", title: "Lost" },
        { name: "within", title: "Days within", percent: true },
        { name: "lower", title: "From", percent: true },
        { name: "upper", title: "To", percent: true },
      ],
      rows: shown,
      greyed: yards.flatMap(({ tooFew }, row) =>
        tooFew ? [{ row, reason: `fewer than ${minimumHorses} horses: no share of its own` }] : [],
      ),
    },
  };
}

function shareOf(days: readonly DaysWithinInterval[], level: number, tooFew: boolean) {
  if (tooFew || days.length === 0) return { within: null, lower: null, upper: null };
  const clusters = [...grouped(days, ({ horseId }) => horseId).values()].map((rows) => ({
    cases: rows.reduce((sum, row) => sum + row.within, 0),
    n: rows.reduce((sum, row) => sum + row.days, 0),
  }));
  const { estimate, logitT } = clusteredProportion(clusters, { level });
  return { within: estimate, ...logitT };
}
