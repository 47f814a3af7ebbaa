import { readFile } from "node:fs/promises";
import { StudyError } from "../study/StudyError.js";
import { checkedNotebook } from "./checkedNotebook.js";
import type { Notebook } from "./Notebook.js";

async function textOf(path: string): Promise<string> {
  try {
    return await readFile(path, "utf8");
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? "unknown";
    const reason = code === "ENOENT" ? "there is no such file" : `the system answered ${code}`;
    throw new StudyError("cannot_read", `The notebook ${path} could not be read: ${reason}.`, "Check the path.");
  }
}

function parsed(text: string, path: string): unknown {
  try {
    // A byte order mark is allowed by some editors and by no JSON parser.
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (fault) {
    const reason = fault instanceof Error ? fault.message : String(fault);
    throw new StudyError(
      "bad_notebook",
      `The notebook ${path} is not JSON: ${reason}.`,
      "Take an older copy, or mend the place named above in a text editor.",
    );
  }
}

/**
 * Reads a notebook file, nbformat 4.
 *
 * @throws StudyError `cannot_read` or `bad_notebook`, with the path.
 */
export async function readNotebook(path: string): Promise<Notebook> {
  const value = parsed(await textOf(path), path);
  try {
    return checkedNotebook(value);
  } catch (fault) {
    if (!(fault instanceof StudyError)) throw fault;
    throw new StudyError(fault.code, `${path}: ${fault.message}`, fault.hint);
  }
}
