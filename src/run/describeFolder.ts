import { join } from "node:path";
import { readStudy } from "../read/readStudy.js";
import { toDataPackage } from "../show/toDataPackage.js";
import { progressLine } from "./progressLine.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

/**
 * The command `describe`: reads a study folder and writes `datapackage.json` into it, which describes its files for other programs (Data Package standard, version 2.0).
 * An older descriptor is written over. Returns the exit code.
 *
 * @throws StudyError when the folder cannot be used or written.
 *
 * @private
 */
export async function describeFolder(folder: string, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  progress.show(`Reading ${folder}`);
  try {
    const study = await readStudy(folder);
    const path = join(folder, "datapackage.json");
    await writeFileWhole(path, `${JSON.stringify(toDataPackage(study), null, 2)}\n`);
    progress.clear();
    const files = study.report.inputs.length;
    terminal.stdout.write(`Wrote ${path}: ${files} ${files === 1 ? "file" : "files"}, each with its size and SHA-256.\n`);
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
}
