import { readdir, realpath, stat } from "node:fs/promises";
import { isAbsolute, join, relative, sep } from "node:path";
import { nearestName } from "../../study/nearestName.js";
import { refusals } from "../report/refusals.js";
import { systemCode } from "./systemCode.js";

/**
 * Path of a file of a study folder; null when it is not there and need not be. A symbolic link is followed as long as it stays in the folder.
 *
 * @throws StudyError `file_missing` when a needed file is not there, `not_a_file` when the name belongs to a folder or a device,
 * `file_outside_folder` when it lies, or a link on its way leads, outside the folder, `file_unreadable` when the system does not let it be looked at.
 */
export async function studyPath(folder: string, file: string, needed: boolean): Promise<string | null> {
  const path = join(folder, file);
  if (!isInside(folder, path)) throw refusals.outsideFolder(file, null);
  const real = await realpath(path).catch((error: unknown) => absent(file, error));
  if (real === null) {
    if (!needed) return null;
    throw refusals.fileMissing(file, nearestName(file, await readdir(folder).catch(() => [])));
  }
  if (!isInside(await realpath(folder), real)) throw refusals.outsideFolder(file, real);
  const found = await stat(real).catch((error: unknown) => absent(file, error));
  if (found?.isFile() !== true) throw refusals.notAFile(file);
  return real;
}

function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== ".." && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

function absent(file: string, error: unknown): null {
  const code = systemCode(error);
  if (code === "ENOENT" || code === "ENOTDIR") return null;
  throw code === "ELOOP" ? refusals.linkLoop(file) : refusals.unreadable(file, code);
}
