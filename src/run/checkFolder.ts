import { join } from "node:path";
import { fabricChecked } from "../answer/fabricChecked.js";
import { wrapped } from "../chart/parts/wrapped.js";
import { readStudy } from "../read/readStudy.js";
import { whatToFillIn } from "../read/whatToFillIn.js";
import { toCheckPage } from "../show/toCheckPage.js";
import { toReportJson } from "../show/toReportJson.js";
import { toReportText } from "../show/toReportText.js";
import type { Study } from "../study/Study.js";
import { version } from "../study/version.js";
import { progressLine } from "./progressLine.js";
import { setAsideFiles } from "./setAsideFiles.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

const PAGE = "data-check.html";

/** Options of the command `check`. */
export interface CheckOptions {
  readonly json?: boolean;
  /** Folder for the page and for the rows that are set aside. */
  readonly out?: string;
}

/**
 * The command `check`: reads a study folder and prints what was read, what was set aside and what to do; with `json` for machines. With `out` it also writes a page
 * to read and the rows that were set aside, each file whole or not at all. Returns the exit code.
 *
 * @throws StudyError when the folder cannot be used at all, or a file cannot be written.
 *
 * @private
 */
export async function checkFolder(folder: string, { json, out }: CheckOptions, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  progress.show(`Reading ${folder}`);
  const rows = out === undefined ? null : await setAsideFiles(out);
  try {
    const read = await readStudy(folder, rows === null ? {} : { setAside: rows.sink });
    progress.show("Looking at the fabric of the records");
    const study = fabricChecked(read);
    const names = rows?.finish() ?? [];
    if (out !== undefined) await writeFileWhole(join(out, PAGE), pageOf(study, names));
    progress.clear();
    const width = terminal.stdout.columns ?? 80;
    if (json === true) terminal.stdout.write(`${toReportJson(study.report)}\n`);
    else if (study.report.inputs.some(({ rowsRead }) => rowsRead > 0))
      terminal.stdout.write(`${toReportText(study.report, width)}\n`);
    else terminal.stdout.write(`${folder} holds no rows yet.\n\n${listOf(whatToFillIn(study), width)}\n`);
    if (out !== undefined && json !== true) terminal.stdout.write(`\nWrote to ${out}:\n${listOf([PAGE, ...names], width)}\n`);
    return studyExitCode(study);
  } finally {
    rows?.discard();
    progress.clear();
  }
}

function pageOf(study: Study, setAsideFiles: readonly string[]): string {
  const on = new Date().toISOString().slice(0, 10);
  return toCheckPage({ study: study.name, on, program: `underfoot ${version}`, report: study.report, setAsideFiles });
}

function listOf(items: readonly string[], width: number): string {
  return items
    .map((item) =>
      wrapped(item, Math.max(40, width) - 2)
        .map((line, place) => `${place === 0 ? "- " : "  "}${line}`)
        .join("\n"),
    )
    .join("\n");
}
