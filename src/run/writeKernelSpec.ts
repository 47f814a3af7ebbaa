import { join } from "node:path";
import { kernelProgram } from "./kernel/kernelProgram.js";
import { kernelSpec } from "./kernelSpec.js";
import { writeFileWhole } from "./writeFileWhole.js";

/**
 * Writes `kernel.json` for the tslab kernel installed beside this library into a folder, such as
 * `share/jupyter/kernels/tslab` of a Python environment; the path of the file.
 *
 * @throws NotebookError `kernel_missing`, StudyError `cannot_write`.
 */
export async function writeKernelSpec(folder: string): Promise<string> {
  const path = join(folder, "kernel.json");
  const spec = kernelSpec(process.execPath, kernelProgram(folder));
  await writeFileWhole(path, `${JSON.stringify(spec, null, 2)}\n`);
  return path;
}
