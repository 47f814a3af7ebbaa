import type { Table } from "../../chart/Table.js";
import type { TrimInterval } from "../../derive/TrimInterval.js";
import { stayAt } from "../../derive/stayAt.js";
import type { Study } from "../../study/Study.js";
import { daysInWords } from "../words/daysInWords.js";

/** How every interval ended, or why it has no end, with visits in between that were not routine. @private */
export function endsTable(intervals: readonly TrimInterval[], study: Pick<Study, "horses" | "settings">): Table {
  const { toleranceDays, lostAfterDays } = study.settings;
  const count = (test: (row: TrimInterval) => boolean) => intervals.filter(test).length;
  const open = (row: TrimInterval) => row.status === "open" && row.censoredBy === "as_of";
  const over = (row: TrimInterval) => (row.overdueDays ?? 0) > toleranceDays;
  const moved = (row: TrimInterval) => {
    const then = row.to === null ? null : (stayAt(study.horses, row.horseId, row.to)?.yardId ?? null);
    return row.yardId !== null && then !== null && then !== row.yardId;
  };
  const rows: [string, number][] = [
    [`kept, within ${daysInWords(toleranceDays)} of the date`, count(({ status }) => status === "kept")],
    ["late", count(({ status }) => status === "late")],
    ["early", count(({ status }) => status === "early")],
    [`lost to follow-up: more than ${daysInWords(lostAfterDays)}`, count(({ status }) => status === "lost")],
    ["ended, but no interval had been agreed", count(({ status }) => status === "no_plan")],
    ["still open, date not more than the tolerance past or none agreed", count((row) => open(row) && !over(row))],
    ["still open and over", count((row) => open(row) && over(row))],
    ["cut short: the horse left", count((row) => row.status === "open" && row.censoredBy === "left")],
    ["cut short: the horse started anew", count((row) => row.status === "open" && row.censoredBy === "new_start")],
  ];
  const all = { how: "all intervals", intervals: intervals.length };
  const aside: [string, number][] = [
    ["of these, begun at one yard and ended at another", count(moved)],
    ["of these, with a visit in between that was not routine", count(({ unscheduledVisits }) => unscheduledVisits > 0)],
    ["of these, begun or ended by a visit without a reason, taken as routine", count(({ assumedRoutine }) => assumedRoutine > 0)],
  ];
  const row = ([how, number]: [string, number]) => ({ how, intervals: number });
  return {
    caption: "How intervals ended",
    columns: [
      { name: "how", title: "Interval" },
      { name: "intervals", title: "Number" },
    ],
    rows: [...rows.map(row), all, ...aside.map(row)],
  };
}
