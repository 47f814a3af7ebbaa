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
 */
export async function checkFolder(folder: string, options: { readonly json?: boolean }, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  progress.show(`Reading ${folder}`);
  try {
    const study = await readStudy(folder);
    progress.clear();
    if (options.json === true) {
      terminal.stdout.write(`${toReportJson(study.report)}\n`);
    } else {
      terminal.stdout.write(`${toReportText(study.report, terminal.stdout.columns ?? 80)}\n`);
      const todo = whatToFillIn(study);
      if (todo.length > 0) terminal.stdout.write(`\n${todo.join("\n")}\n`);
    }
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
}
