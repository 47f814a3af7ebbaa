import type { Table } from "../../chart/Table.js";
import type { TrimInterval } from "../../derive/TrimInterval.js";
import { grouped } from "../../study/grouped.js";
import { daysInWords } from "../words/daysInWords.js";

/** Horses that ran late more than once, the most often late first, with the days they are over now. @private */
export function repeatTable(intervals: readonly TrimInterval[], toleranceDays: number): Table {
  const horses = [...grouped(intervals, ({ horseId }) => horseId)].map(([horseId, rows]) => {
    const late = rows.filter(({ status }) => status === "late");
    const last = rows.at(-1);
    const over = last?.status === "open" ? (last.overdueDays ?? 0) : 0;
    return {
      horse: horseId,
      yard: last?.yardId ?? null,
      late: late.length,
      ended: rows.filter(({ daysLate }) => daysLate !== null).length,
      most: late.reduce((most, { daysLate }) => Math.max(most, daysLate ?? 0), 0),
      overNow: over > toleranceDays ? over : null,
    };
  });
  return {
    caption: `Horses that ran more than ${daysInWords(toleranceDays)} late more than once`,
    columns: [
      { name: "horse", title: "Horse" },
      { name: "yard", title: "Yard" },
      { name: "late", title: "Times late" },
      { name: "ended", title: "Of intervals" },
      { name: "most", title: "Most days late" },
      { name: "overNow", title: "Days over now" },
    ],
    rows: horses
      .filter(({ late }) => late > 1)
      .sort((a, b) => b.late - a.late || b.most - a.most || (a.horse < b.horse ? -1 : 1)),
  };
}
