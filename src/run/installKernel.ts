import { homedir } from "node:os";
import { join } from "node:path";
import { exitCodes } from "./exitCodes.js";
import { jupyterFolders } from "./lab/jupyterFolders.js";
import type { Terminal } from "./Terminal.js";
import { writeKernelSpec } from "./writeKernelSpec.js";

/**
 * The command `kernel install`: tells Jupyter, and whatever else reads its kernel specifications, where the TypeScript kernel is.
 * `dataFolder` is a data folder of Jupyter; the user's own when left out. Needs no Python. Returns the exit code.
 *
 * @throws NotebookError `kernel_missing`, StudyError `cannot_write`.
 *
 * @private
 */
export async function installKernel(dataFolder: string | undefined, terminal: Terminal): Promise<number> {
  const place = { platform: process.platform, env: process.env, home: homedir(), prefix: null };
  const folder = dataFolder ?? jupyterFolders(place).user;
  const path = await writeKernelSpec(join(folder, "kernels", "tslab"));
  terminal.stdout.write(`Wrote ${path}\nOpen a notebook with the kernel TypeScript. Is all well? npx underfoot doctor\n`);
  return exitCodes.clean;
}
