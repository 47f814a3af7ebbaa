import { readdirSync, readFileSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { expect, test, vi } from "vitest";
import { freePorts } from "../../../src/run/kernel/freePorts.js";
import type { Kernel } from "../../../src/run/kernel/Kernel.js";
import { startKernel } from "../../../src/run/kernel/startKernel.js";
import { isRunning } from "../isRunning.js";

// Starting kernels takes processor time, which a busy machine may not have.
vi.setConfig({ testTimeout: 120_000 });

const never = new AbortController().signal;
const quiet = { folder: tmpdir(), signal: never, onOutput: () => undefined };

function run(kernel: Kernel, code: string) {
  return kernel.execute(code, { timeoutMs: 60_000, signal: never, started: () => undefined });
}

/** Kernels this process has started and not yet seen the end of. */
function kernelsOfThisProcess(): string[] {
  const started = (pid: string) => {
    try {
      const parent = /\) \w (\d+)/.exec(readFileSync(`/proc/${pid}/stat`, "utf8"))?.[1];
      return parent === String(process.pid) && readFileSync(`/proc/${pid}/cmdline`, "utf8").includes("start.cjs");
    } catch {
      return false;
    }
  };
  return process.platform === "linux" ? readdirSync("/proc").filter((name) => /^\d+$/.test(name) && started(name)) : [];
}

test("a port taken in the meantime is no failure; what fails, what is dropped, and what will not end, is told and ended", async () => {
  const [taken = 0] = await freePorts(1);
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(taken, "127.0.0.1", resolve));
  let [asked, printed] = [0, ""];
  const kernel = await startKernel({
    ...quiet,
    timeoutMs: 60_000,
    ports: async (count) => {
      asked += 1;
      return asked === 1 ? [taken, ...(await freePorts(count - 1))] : freePorts(count);
    },
    onOutput: (message) => {
      if (typeof message.content["text"] === "string") printed += message.content["text"];
    },
  });
  server.close();
  expect(asked).toBe(2);
  expect(kernel.languageInfo["name"]).toBe("typescript");

  // Two requests at once: the kernel drops the second because the first fails, and says neither "ok" nor "error".
  const [failed, dropped] = await Promise.all([run(kernel, 'throw new Error("x");'), run(kernel, "1")]);
  expect(failed).toEqual({ kind: "reply", status: "error", executionCount: 1 });
  expect(dropped).toEqual({ kind: "reply", status: "abort", executionCount: null });
  await new Promise((resolve) => setTimeout(resolve, 300));

  printed = "";
  const stubborn = `
    import { spawn } from "node:child_process";
    process.on("SIGTERM", () => undefined); setInterval(() => undefined, 1000);
    console.log(spawn("sleep", ["1000"]).pid);`;
  expect(await run(kernel, stubborn)).toEqual({ kind: "reply", status: "ok", executionCount: 2 });
  const child = Number(printed);
  expect([isRunning(kernel.pid), isRunning(child)]).toEqual([true, true]);
  await kernel.stop();
  expect([isRunning(kernel.pid), isRunning(child)]).toEqual([false, false]);
});

test("a kernel that gives no answer in time is ended", async () => {
  await expect(startKernel({ ...quiet, timeoutMs: 30 })).rejects.toMatchObject({
    name: "NotebookError",
    code: "kernel_not_started",
    message: "The notebook kernel gave no answer within 0.03 s.",
  });
  await expect(startKernel({ ...quiet, timeoutMs: 30_000, signal: AbortSignal.abort() })).rejects.toMatchObject({
    code: "cancelled",
  });
  expect(kernelsOfThisProcess()).toEqual([]);
});
