import { droppedMark, kernelMends } from "./kernelMends.js";

/** Whether these words of a kernel say that it dropped output. */
const saysDropped = (words: string) => words.includes(droppedMark);

/**
 * The script that is run in place of the kernel's own first file when this library runs a notebook: its mends (`kernelMends`), and it ends when the
 * program that runs the notebook is gone, however that went, because the kernel's standard input closes then. The watch stands in a thread of its own,
 * so that a cell that never pauses is ended too. With the kernel goes whatever it started, and the folder of the connection file.
 */
export function kernelStarter(): { script: string; saysDropped: (words: string) => boolean } {
  const watch = `
    const { rmSync } = require("node:fs");
    const { Socket } = require("node:net");
    const { workerData } = require("node:worker_threads");
    new Socket({ fd: 0, readable: true, writable: false }).resume().on("error", () => {}).on("close", () => {
      try { rmSync(workerData, { recursive: true, force: true }); } catch {}
      try { process.kill(-process.pid, "SIGKILL"); } catch {}
      process.kill(process.pid, "SIGKILL");
    });
  `;
  const worker = `new (require("node:worker_threads").Worker)(${JSON.stringify(watch)}, { eval: true, workerData: __dirname, execArgv: [] }).unref();`;
  return { script: `"use strict";\n${worker}\n${kernelMends()}`, saysDropped };
}
