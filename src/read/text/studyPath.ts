import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { nearestName } from "../report/nearestName.js";
import { refusals } from "../report/refusals.js";
import { systemCode } from "./systemCode.js";

/**
 * Path of a file of a study folder; null when it is not there and need not be.
 *
 * @throws StudyError `file_missing` when a needed file is not there, `not_a_file` when the name belongs to a folder or a device,
 * `file_unreadable` when the system does not let it be looked at.
 */
export async function studyPath(folder: string, file: string, needed: boolean): Promise<string | null> {
  const path = join(folder, file);
  const found = await stat(path).catch((error: unknown) => {
    const code = systemCode(error);
    if (code === "ENOENT" || code === "ENOTDIR") return null;
    throw refusals.unreadable(file, code);
  });
  if (found !== null && !found.isFile()) throw refusals.notAFile(file);
  if (found !== null) return path;
  if (!needed) return null;
  throw refusals.fileMissing(file, nearestName(file, await readdir(folder).catch(() => [])));
}
