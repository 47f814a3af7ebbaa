import { wrapped } from "../chart/parts/wrapped.js";
import { counted } from "../answer/words/counted.js";
import type { DataReport, IssueCount } from "../study/DataReport.js";
import type { Issue } from "../study/Issue.js";
import { tableText } from "./text/tableText.js";

const severities = ["set_aside", "cell_blanked", "warning"] as const;
const costs = {
  set_aside: ["row set aside", "rows set aside"],
  cell_blanked: ["cell left empty", "cells left empty"],
  warning: ["warning, nothing lost", "warnings, nothing lost"],
} as const;

/**
 * The report of reading a study for a terminal, at most `width` characters wide (narrower than 60 counts as 60): the files with their rows,
 * where the records of each level went, the faults with what they cost, the dearest first and then the most frequent, each with its first
 * example and what to do, and a verdict in one line at the end.
 */
export function toReportText(report: DataReport, width = 80): string {
  const columns = Math.max(60, width);
  const example = ({ file, code, column, severity }: IssueCount) =>
    report.issues.findIndex(
      (each) => each.file === file && each.code === code && each.column === column && each.severity === severity,
    );
  const faults = report.counts
    .map((count) => ({ ...count, at: example(count) }))
    .sort((a, b) => severities.indexOf(a.severity) - severities.indexOf(b.severity) || b.count - a.count || a.at - b.at);
  return [
    tableText(filesTable(report), columns),
    tableText(flowTable(report), columns),
    ...faults.map((fault) => faultText(fault, report.issues[fault.at], columns)),
    verdict(report),
  ].join("\n\n");
}

const rowCounts = [
  { name: "read", title: "Read" },
  { name: "accepted", title: "Used" },
  { name: "setAside", title: "Set aside" },
];

function filesTable({ inputs }: DataReport) {
  const rows = inputs.map(({ file, rowsRead, accepted, setAside }) => ({ file, read: rowsRead, accepted, setAside }));
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

function faultText({ file, code, column, severity, count }: IssueCount, example: Issue | undefined, width: number): string {
  const [one, many] = costs[severity];
  const where = [file, ...(column === null ? [] : [column])].join(", ");
  const head = `${counted(count, one, many)}: ${code.replaceAll("_", " ")} (${where})`;
  const body = example === undefined ? [] : [example.message, `To do: ${example.hint}`];
  const indented = body.flatMap((text) => wrapped(text, width - 2).map((line) => `  ${line}`));
  return [...wrapped(head, width), ...indented].join("\n");
}

function verdict({ inputs, counts }: DataReport): string {
  const total = (of: (input: DataReport["inputs"][number]) => number) => inputs.reduce((sum, input) => sum + of(input), 0);
  const [read, setAside] = [total(({ rowsRead }) => rowsRead), total((input) => input.setAside)];
  const blanked = counts.filter(({ severity }) => severity === "cell_blanked").reduce((sum, { count }) => sum + count, 0);
  if (read === 0) return "There are no rows yet.";
  const rows =
    setAside === 0 ? `All ${counted(read, "row")} used` : `${counted(setAside, "row")} set aside of ${counted(read, "row")}`;
  return blanked === 0 ? `${rows}.` : `${rows}; ${counted(blanked, "cell")} left empty.`;
}
