import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readStudy } from "../../src/read/readStudy.js";
import type { Study } from "../../src/study/Study.js";
import { StudyError } from "../../src/study/StudyError.js";

/** Contents of the files of a folder for a test, by name. */
export type Files = Readonly<Record<string, string | Uint8Array>>;

export const today = "2025-06-30";

/** Runs something with a folder that holds the files, and takes the folder away again. */
export async function inFolder<Result>(files: Files, run: (folder: string) => Promise<Result>): Promise<Result> {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-"));
  try {
    for (const [name, content] of Object.entries(files)) writeFileSync(join(folder, name), content);
    return await run(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Reads a folder of these files; a study.json that states everything is added unless given. */
export async function studyFrom(files: Files): Promise<Study> {
  return inFolder({ "study.json": '{"name":"Test","gaugeDay":"ends_on_date"}', ...files }, (folder) =>
    readStudy(folder, { today }),
  );
}

/** The error of a study that cannot be read. Anything but a StudyError fails. */
export async function refusalOf(files: Files): Promise<StudyError> {
  try {
    await studyFrom(files);
  } catch (error) {
    if (error instanceof StudyError) return error;
    throw error;
  }
  throw new Error("the study was read");
}

/** Code, line and column of every listed issue but the notices about files that are not there. */
export function faults({ report }: Study): string[] {
  return report.issues
    .filter(({ code }) => code !== "file_absent")
    .map(({ file, line, column, code, severity }) => `${file}:${String(line ?? "-")} ${column ?? "-"} ${code} ${severity}`);
}
