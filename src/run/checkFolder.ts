import { wrapped } from "../chart/parts/wrapped.js";
import { readStudy } from "../read/readStudy.js";
import { whatToFillIn } from "../read/whatToFillIn.js";
import { toReportJson } from "../show/toReportJson.js";
import { toReportText } from "../show/toReportText.js";
import { progressLine } from "./progressLine.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";

/**
 * The command `check`: reads a study folder and prints what was read, what was set aside and what to do; with `json` for machines.
 * Returns the exit code.
 *
 * @throws StudyError when the folder cannot be used at all.
 *
 * @private
 */
export async function checkFolder(folder: string, options: { readonly json?: boolean }, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  progress.show(`Reading ${folder}`);
  try {
    const study = await readStudy(folder);
    progress.clear();
    const width = terminal.stdout.columns ?? 80;
    if (options.json === true) terminal.stdout.write(`${toReportJson(study.report)}\n`);
    else if (study.report.inputs.some(({ rowsRead }) => rowsRead > 0))
      terminal.stdout.write(`${toReportText(study.report, width)}\n`);
    else terminal.stdout.write(`${folder} holds no rows yet.\n\n${listOf(whatToFillIn(study), width)}\n`);
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
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
