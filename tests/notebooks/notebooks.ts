import { readdirSync } from "node:fs";
import { join } from "node:path";
import { root } from "../repository/trackedFiles.js";

export const notebookFolder = join(root, "notebooks");

/** File names of all notebooks of the project. */
export const notebooks: readonly string[] = readdirSync(notebookFolder)
  .filter((name) => name.endsWith(".ipynb"))
  .sort();
