import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { NotebookError } from "../NotebookError.js";

/**
 * Absolute path of the program of the tslab kernel: the copy installed beside this library, else one installed for the
 * folder given.
 *
 * @throws NotebookError `kernel_missing`.
 */
export function kernelProgram(folder: string): string {
  for (const from of [import.meta.url, join(folder, "notebook.js")]) {
    try {
      const manifest = createRequire(from).resolve("tslab/package.json");
      const { bin } = JSON.parse(readFileSync(manifest, "utf8")) as { bin: { tslab: string } };
      return join(dirname(manifest), bin.tslab);
    } catch {
      // The other place may have it.
    }
  }
  throw new NotebookError(
    "kernel_missing",
    "The notebook kernel tslab is not installed.",
    "Install it beside underfoot: npm install tslab@1.0.22 zeromq.",
  );
}
