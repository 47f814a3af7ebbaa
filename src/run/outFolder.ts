import { StudyError } from "../study/StudyError.js";

/**
 * The folder that `--out` names. An empty name, as a shell makes of a variable that is not set, would mean the folder one stands in.
 *
 * @throws StudyError `no_out_folder`.
 *
 * @private
 */
export function outFolder(typed: string): string {
  if (typed.trim() !== "") return typed;
  throw new StudyError("no_out_folder", "--out names no folder.", "Give the folder for the files, as in: --out report");
}
