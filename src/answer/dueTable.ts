import type { Table } from "../chart/Table.js";
import { asOfDate } from "../derive/asOfDate.js";
import { dueDates } from "../derive/dueDates.js";
import type { Study } from "../study/Study.js";
import { dueStateInWords } from "./words/dueStateInWords.js";

/** Every horse that is there on the day of the review with its date, for a spreadsheet: dates as `YYYY-MM-DD`, days to the date, below 0 past it. */
export function dueTable(study: Study): Table {
  return {
    caption: `Due dates as of ${asOfDate(study) ?? "no day"}`,
    columns: [
      { name: "horse", title: "Horse" },
      { name: "yard", title: "Yard" },
      { name: "state", title: "State" },
      { name: "dueOn", title: "Due on" },
      { name: "daysLeft", title: "Days to the date" },
      { name: "lastRoutine", title: "Last routine visit" },
      { name: "lastSeen", title: "Last seen" },
      { name: "plannedDays", title: "Days agreed" },
    ],
    rows: dueDates(study).map(({ horseId, yardId, state, ...row }) => ({
      horse: horseId,
      yard: yardId,
      state: dueStateInWords(state),
      ...row,
    })),
  };
}
