import { counted } from "../answer/words/counted.js";
import type { Table } from "../chart/Table.js";
import { placedSentence } from "../read/report/placedSentence.js";
import type { DataReport, FileLayout } from "../study/DataReport.js";
import { grouped } from "../study/grouped.js";
import type { Issue } from "../study/Issue.js";
import { escapeHtml } from "./escapeHtml.js";
import { faultGroups, type FaultGroup } from "./faultGroups.js";
import { hintsOf } from "./hintsOf.js";
import { pageFrame } from "./html/pageFrame.js";
import { scrollHtml } from "./html/scrollHtml.js";
import { tableHtml } from "./html/tableHtml.js";
import { reportTables } from "./reportTables.js";
import { verdictText } from "./verdictText.js";

/** What a page about the reading of a study says beside its report. */
export interface CheckPage {
  /** Name of the study. */
  readonly study: string;
  /** Day the page is made, `YYYY-MM-DD`. */
  readonly on: string;
  readonly program: string;
  readonly report: DataReport;
  /** Names of the files beside the page that hold the rows set aside. */
  readonly setAsideFiles: readonly string[];
}

const EXAMPLES = 10;
const LINES = 8;
const notice = "It describes records. It is not a diagnosis and not advice to trim, shoe, medicate or change an interval.";
const rowsHere = [
  "The rows stand beside this page, in the order of their lines. The .txt file holds them byte for byte. The .csv file is for a spreadsheet: before the cells it says line and reasons, and which cells begin like a formula; those have one apostrophe more before them.",
  "Mend rows in their own file, or in a copy: the next check writes over these.",
] as const;

const costs = {
  set_aside: ["row set aside", "rows set aside"],
  cell_blanked: ["cell left empty", "cells left empty"],
  warning: ["warning; nothing was lost", "warnings; nothing was lost"],
} as const;

/**
 * What was read of a study, what was not, and what to do, as a page that needs nothing else: where the records went at each level, the faults by problem and column,
 * the worst first and then the most frequent, each with up to ten examples and their lines, and how each file was read. It quotes the faulty cells, so it is for the keeper of the
 * records. The same input gives the same text.
 */
export function toCheckPage({ study, on, program, report, setAsideFiles }: CheckPage): string {
  const title = `${study}: what was read`;
  const [files, flow] = reportTables(report);
  const groups = faultGroups(report);
  return pageFrame(title, [
    `<header><h1>${escapeHtml(title)}</h1>`,
    `<p class="sentence">${escapeHtml(verdictText(report))}</p>`,
    `<p class="about">Made on ${escapeHtml(on)}. This page quotes the records: it is for whoever keeps them.</p></header>`,
    `<main>`,
    section("where", "Where the records went", [flow, files].flatMap(tableOf)),
    section("mend", "What to look at, the worst first", groups.length === 0 ? [`<p>Nothing.</p>`] : groups.map(groupHtml)),
    ...(setAsideFiles.length === 0 ? [] : [section("rows", "The rows that were set aside", rowsHtml(setAsideFiles))]),
    ...layouts(report),
    `</main>`,
    `<footer><p>Made with ${escapeHtml(program)}. ${notice}</p></footer>`,
  ]);
}

function section(id: string, title: string, inner: readonly string[]): string {
  return `<section id="${id}" aria-labelledby="${id}-title"><h2 id="${id}-title">${escapeHtml(title)}</h2>\n${inner.join("\n")}</section>`;
}

function tableOf(table: Table | undefined): string[] {
  return table === undefined ? [] : [scrollHtml(tableHtml(table, 500), table.caption)];
}

function groupHtml({ file, code, column, severity, count, examples }: FaultGroup): string {
  const where = column === null ? file : `${file}, column ${column}`;
  const words = code.replaceAll("_", " ");
  const [one, many] = costs[severity];
  const found = (issue: Issue) => issue.message.slice(placedSentence(issue, "").length - 1);
  const alike = [...grouped(examples, (issue) => JSON.stringify([issue.value, found(issue)])).values()];
  const rows = alike.slice(0, EXAMPLES).flatMap((issues) => {
    const [first] = issues;
    return first === undefined ? [] : [{ value: first.value, found: sentence(found(first)), lines: linesOf(issues) }];
  });
  const shown = alike.slice(0, EXAMPLES).reduce((sum, issues) => sum + issues.length, 0);
  const table: Table = {
    caption: count > shown ? `Examples: ${shown} of ${count}` : "Where",
    columns: [
      { name: "value", title: "Text in the cell or row" },
      { name: "found", title: "What is wrong" },
      { name: "lines", title: "Lines" },
    ],
    rows,
  };
  const wholeFile = rows.length === 1 && rows[0]?.lines === null;
  return [
    `<h3>${escapeHtml(`${words.charAt(0).toUpperCase()}${words.slice(1)}: ${where}`)}</h3>`,
    `<p class="about">${escapeHtml(`${counted(count, one, many)}.`)}</p>`,
    ...(wholeFile ? [`<p>${escapeHtml(rows[0]?.found ?? "")}</p>`] : rows.length === 0 ? [] : tableOf(table)),
    ...(examples[0] === undefined ? [] : [`<p><strong>To do:</strong> ${escapeHtml(hintsOf(examples))}</p>`]),
  ].join("\n");
}

function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

function linesOf(issues: readonly Issue[]): string | null {
  const lines = [...new Set(issues.map(({ line }) => line))].filter((line) => line !== null);
  if (lines.length === 0) return null;
  const left = lines.length - LINES;
  return `${lines.slice(0, LINES).join(", ")}${left > 0 ? ` and ${left} more` : ""}`;
}

function rowsHtml(names: readonly string[]): string[] {
  return [
    `<p>${rowsHere[0]}</p>`,
    `<ul>${names.map((name) => `<li>${escapeHtml(name)}</li>`).join("")}</ul>`,
    `<p>${rowsHere[1]}</p>`,
  ];
}

function layouts({ inputs }: DataReport): string[] {
  const tables = inputs.flatMap(({ file, layout }) => (layout === undefined ? [] : [layoutTable(file, layout)]));
  return tables.length === 0 ? [] : [section("how", "How the files were read, by study.json", tables.flatMap(tableOf))];
}

function layoutTable(file: string, { delimiter, encoding, recordsARow, columns }: FileLayout): Table {
  const rows = recordsARow === 1 ? "" : `; one row is ${recordsARow} records`;
  return {
    caption: `${file}: parted by ${delimiter}, ${encoding}${rows}`,
    columns: [
      { name: "column", title: "Column" },
      { name: "headers", title: "Read from" },
      { name: "as", title: "As" },
    ],
    rows: columns.map(({ column, headers, as }) => ({
      column: column ?? "kept beside the record",
      headers: headers.join(", "),
      as: as ?? "as it stands",
    })),
  };
}
