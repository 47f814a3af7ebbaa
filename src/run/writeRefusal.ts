import { StudyError } from "../study/StudyError.js";

/** Why the system did not let a file be written, in words. @private */
export function writeRefusal(path: string, fault: unknown): StudyError {
  const code = (fault as NodeJS.ErrnoException).code ?? "unknown";
  const reasons: Readonly<Record<string, readonly [string, string]>> = {
    EACCES: ["there is no permission to write there", "Choose another folder, or change who may write to this one."],
    EPERM: ["there is no permission to write there", "Choose another folder, or close the program that holds the file open."],
    EROFS: ["the disk cannot be written to", "Choose a folder on another disk."],
    ENOSPC: ["the disk is full", "Make room and run it again; the old file, if there was one, is untouched."],
    EISDIR: ["it is a folder", "Give the name of a file."],
    ENOTDIR: ["one of the folders on the way is a file", "Check the path."],
    EEXIST: ["one of the folders on the way is a file", "Check the path."],
    ENAMETOOLONG: ["the name is too long", "Choose a shorter name."],
  };
  const [reason, hint] = reasons[code] ?? [`the system answered ${code}`, "Check the path and the disk."];
  return new StudyError("cannot_write", `The file ${path} could not be written: ${reason}.`, hint);
}
