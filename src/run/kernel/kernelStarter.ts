/** What the kernel writes to its standard error, outside the messages, when it drops output. */
const droppedMark = "underfoot: the kernel dropped output";

/** Whether these words of a kernel say that it dropped output. */
const saysDropped = (words: string) => words.includes(droppedMark);

/**
 * The script that is run in place of the kernel's own first file; the one place that touches the kernel's insides (tslab 1.0.22).
 *
 * - It makes the kernel end when the program that runs the notebook is gone, however that went: the kernel's standard input
 *   closes then. The watch stands in a thread of its own, so that a cell that never pauses is ended too. With the kernel goes
 *   whatever it started, and the folder of the connection file.
 * - It makes the kernel say when it drops output. Its messaging library takes some 500 messages without a pause and refuses
 *   the rest, and the console passes over that refusal in silence, so that output is missing, here as in Jupyter.
 * - Its compiler no longer watches folders. When a folder of packages is made or removed near the notebook, it would set a timer that nothing ever
 *   fires, and every later cell would fail with "Unexpected pending rebuildTimer". Files that were read are watched as before.
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
  const script = `"use strict";
    const { writeSync } = require("node:fs");
    const { createRequire } = require("node:module");
    const { Worker } = require("node:worker_threads");
    new Worker(${JSON.stringify(watch)}, { eval: true, workerData: __dirname, execArgv: [] }).unref();
    process.argv.splice(1, 1);
    const { Publisher } = createRequire(process.argv[1])("zeromq");
    const { send } = Publisher.prototype;
    let told = false;
    const tell = () => { if (!told) writeSync(2, ${JSON.stringify(`${droppedMark}
`)}); told = true; };
    const watched = function (...parts) {
      try {
        const sent = send.apply(this, parts);
        sent.catch(tell);
        return sent;
      } catch (fault) {
        tell();
        throw fault;
      }
    };
    Object.defineProperty(Publisher.prototype, "send", { value: watched });
    const { sys } = createRequire(process.argv[1])("@tslab/typescript-for-tslab");
    sys.watchDirectory = () => ({ close() {} });
    require(process.argv[1]);
  `;
  return { script, saysDropped };
}
