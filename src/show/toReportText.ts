import { wrapped } from "../chart/parts/wrapped.js";
import { counted } from "../answer/words/counted.js";
import type { DataReport } from "../study/DataReport.js";
import { faultGroups, type FaultGroup } from "./faultGroups.js";
import { hintsOf } from "./hintsOf.js";
import { tableText } from "./text/tableText.js";
import { verdictText } from "./verdictText.js";

const costs = {
  set_aside: ["row set aside", "rows set aside"],
  cell_blanked: ["cell left empty", "cells left empty"],
  warning: ["warning, nothing lost", "warnings, nothing lost"],
} as const;

/**
 * The report of reading a study for a terminal, at most `width` characters wide (narrower than 60 counts as 60): the files with their rows,
 * where the records of each level went, the faults with what they cost, the worst first and then the most frequent, each with its first
 * example, the lines of others and what to do, and a verdict in one line at the end.
 */
export function toReportText(report: DataReport, width = 80): string {
  const columns = Math.max(60, width);
  return [
    tableText(filesTable(report), columns),
    tableText(flowTable(report), columns),
    ...faultGroups(report).map((group) => faultText(group, columns)),
    verdictText(report),
  ].join("\n\n");
}

const rowCounts = [
  { name: "read", title: "Read" },
  { name: "accepted", title: "Used" },
  { name: "setAside", title: "Set aside" },
];

function filesTable({ inputs }: DataReport) {
  const tables = inputs.filter(({ kind }) => kind !== "study");
  const rows = tables.map(({ file, rowsRead, accepted, setAside }) => ({ file, read: rowsRead, accepted, setAside }));
  return { caption: "Rows of each file", columns: [{ name: "file", title: "File" }, ...rowCounts], rows };
}

function flowTable({ flow }: DataReport) {
  const rows = [
    { level: "Feet at visits", ...flow.footVisits },
    { level: "Visits", ...flow.visits },
    { level: "Horses", ...flow.horses },
    { level: "Yards", ...flow.yards },
  ];
  return { caption: "What the visits hold", columns: [{ name: "level", title: "Level" }, ...rowCounts], rows };
}

function faultText({ file, code, column, severity, count, examples }: FaultGroup, width: number): string {
  const [one, many] = costs[severity];
  const where = [file, ...(column === null ? [] : [column])].join(", ");
  const head = `${counted(count, one, many)}: ${code.replaceAll("_", " ")} (${where})`;
  const [example] = examples;
  const more = moreLines(examples, count);
  const body = example === undefined ? [] : [example.message, ...more, `To do: ${hintsOf(examples)}`];
  const indented = body.flatMap((text) => wrapped(text, width - 2).map((line) => `  ${line}`));
  return [...wrapped(head, width), ...indented].join("\n");
}

const LINES_SHOWN = 8;

/** Where else it stands. */
function moreLines(examples: FaultGroup["examples"], count: number): string[] {
  const [first, ...others] = examples.map(({ line }) => line);
  const lines = [...new Set(others)].filter((line) => line !== null && line !== first).slice(0, LINES_SHOWN);
  if (lines.length === 0) return [];
  const left = count - examples.filter(({ line }) => line === first || lines.includes(line)).length;
  return [`Also in ${lines.length === 1 ? "line" : "lines"} ${lines.join(", ")}${left > 0 ? `, and ${left} more` : ""}.`];
}
