import type { Answer, NotEnoughData } from "../../src/answer/Answer.js";
import type { Table } from "../../src/chart/Table.js";
import { rainAndThrushChart } from "../../src/chart/rainAndThrushChart.js";
import type { DataReport } from "../../src/study/DataReport.js";
import { frozen, months, rainOptions } from "../chart/charts.js";

/** A horse whose name tries everything. */
export const nastyName = `<script>alert("x")</script><img src=x onerror='y'> & "Co" 'n' </td></style><!-- ]]>`;

export const chart = rainAndThrushChart(months, rainOptions);

export const table: Table = frozen({
  caption: "Caption of the table",
  columns: [
    { name: "horse", title: "Horse" },
    { name: "widthMm", title: "Width (mm)", digits: 1 },
    { name: "share", title: "Share", percent: true },
    { name: "vet", title: "Vet told" },
  ],
  rows: [
    { horse: "Captain", widthMm: 127.5, share: 0.25, vet: true },
    { horse: "Bess", widthMm: null, share: 0.004, vet: null },
  ],
  greyed: [{ row: 1, reason: "fewer than 3 visits" }],
});

export const answer: Answer = frozen({
  kind: "answer",
  id: "thrush",
  question: "When do the frogs go off?",
  sentence: "Most in December.",
  tables: [table],
  charts: [chart],
  cautions: ["A foot not seen is not a sound foot.", "Rain comes with season, stabling and work."],
  method: { unit: "a horse in a month", n: 93, missing: 4, text: "Share with a Wilson interval.", links: ["wilsonInterval"] },
});

export const notEnough: NotEnoughData = frozen({
  kind: "not_enough_data",
  id: "bedding",
  question: "Did the change of bedding make a difference?",
  reason: "Only one yard changed its bedding.",
});

const flow = { read: 12, accepted: 10, setAside: 2 };

export const report: DataReport = frozen({
  inputs: [
    {
      file: "visits.csv",
      kind: "visits",
      bytes: 900,
      sha256: "0123456789abcdef".repeat(4),
      rowsRead: 12,
      accepted: 10,
      setAside: 2,
    },
  ],
  flow: { footVisits: flow, visits: flow, horses: flow, yards: flow },
  counts: [{ file: "visits.csv", code: "date_not_real", column: "visit_date", severity: "set_aside", count: 2 }],
  issues: [],
});

/** A table of so many horses. */
export function longTable(rows: number): Table {
  return {
    caption: "Horses",
    columns: [
      { name: "horse", title: "Horse" },
      { name: "yard", title: "Yard" },
      { name: "daysOver", title: "Days over" },
    ],
    rows: Array.from({ length: rows }, (_, index) => ({ horse: `Horse ${index + 1}`, yard: "Brook Farm", daysOver: index })),
  };
}
