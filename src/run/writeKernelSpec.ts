import { join } from "node:path";
import { kernelMends } from "./kernel/kernelMends.js";
import { kernelProgram } from "./kernel/kernelProgram.js";
import { kernelSpec } from "./kernelSpec.js";
import { writeFileWhole } from "./writeFileWhole.js";

/**
 * Writes `kernel.json` for the tslab kernel installed beside this library into a folder, such as
 * `share/jupyter/kernels/tslab` of a Python environment, and beside it `start.cjs`, which starts the kernel with some of its faults mended; the path of `kernel.json`.
 *
 * @throws NotebookError `kernel_missing`, StudyError `cannot_write`.
 */
export async function writeKernelSpec(folder: string): Promise<string> {
  const path = join(folder, "kernel.json");
  const start = join(folder, "start.cjs");
  const spec = kernelSpec(process.execPath, start, kernelProgram(folder));
  await writeFileWhole(start, `"use strict";\n${kernelMends()}`);
  await writeFileWhole(path, `${JSON.stringify(spec, null, 2)}\n`);
  return path;
}
