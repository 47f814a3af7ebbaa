import { stat } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import { newStudyFiles } from "../read/newStudyFiles.js";
import { studySchema } from "../read/studySchema.js";
import { StudyError } from "../study/StudyError.js";
import { exitCodes } from "./exitCodes.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

/**
 * The command `new`: writes a study folder with `study.json` the JSON Schema it
 * is held to, and CSV files that hold only their headers. A file that is already
 * there is never written over. Returns the exit code.
 *
 * @throws StudyError when one of the files exists or the folder cannot be written.
 *
 * @private
 */
export async function newFolder(folder: string, terminal: Terminal): Promise<number> {
  const schema = { path: "study.schema.json", text: `${JSON.stringify(await studySchema(), null, 1)}\n` };
  const files = [...newStudyFiles(basename(resolve(folder))), schema];
  for (const { path } of files) {
    if (await exists(join(folder, path))) {
      throw new StudyError(
        "already_there",
        `${join(folder, path)} is already there and is left as it is.`,
        "Choose another folder, or move the file away.",
      );
    }
  }
  for (const { path, text } of files) await writeFileWhole(join(folder, path), text);
  terminal.stdout.write(
    `Made ${folder} with ${files.map((file) => file.path).join(", ")}.\nFill in visits.csv, then: underfoot check ${folder}\n`,
  );
  return exitCodes.clean;
}

async function exists(path: string): Promise<boolean> {
  try {
    await stat(path);
    return true;
  } catch {
    return false;
  }
}
