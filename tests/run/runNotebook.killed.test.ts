import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { expect, test, vi } from "vitest";
import { isRunning } from "./isRunning.js";

// Starting kernels takes processor time, which a busy machine may not have.
vi.setConfig({ testTimeout: 120_000 });

const root = join(import.meta.dirname, "../..");

async function until(met: () => boolean, withinMs: number): Promise<boolean> {
  const end = Date.now() + withinMs;
  while (!met() && Date.now() < end) await pause(20);
  return met();
}

// A program that runs a notebook and is ended in the middle, in three ways it cannot or does not prepare for.
test.skipIf(process.platform === "win32").each([
  ["SIGKILL", "for (;;) {}"],
  ["SIGTERM", "await new Promise(() => undefined);"],
  ["SIGINT", "for (;;) {}"],
] as const)("when the program that runs a notebook gets %s, kernel, children and files are gone (%s)", async (signal, cell) => {
  const folder = mkdtempSync(join(tmpdir(), "underfoot-test-"));
  const temporary = join(folder, "temporary");
  mkdirSync(temporary);
  const source = `
    import { spawn } from "node:child_process"; import { writeFileSync } from "node:fs";
    const child = spawn("sleep", ["1000"]);
    writeFileSync("pids", process.pid + " " + child.pid);
    ${cell}`;
  const program = join(folder, "program.mjs");
  writeFileSync(
    program,
    `import { runNotebook } from ${JSON.stringify(join(root, "src/run/runNotebook.ts"))};
     const cell = { cell_type: "code", id: "a", metadata: {}, outputs: [], execution_count: null, source: ${JSON.stringify(source)} };
     await runNotebook({ nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] }, { folder: ${JSON.stringify(folder)} });`,
  );
  const env = { ...process.env, TMPDIR: temporary };
  const runner = spawn(process.execPath, ["--import", "tsx", program], { cwd: root, env, stdio: "ignore" });
  const ended = new Promise((resolve) => runner.once("exit", resolve));
  const pidFile = join(folder, "pids");
  try {
    expect(await until(() => existsSync(pidFile) && readFileSync(pidFile, "utf8") !== "", 60_000), "the cell runs").toBe(true);
    const [kernel = 0, child = 0] = readFileSync(pidFile, "utf8").split(" ").map(Number);
    expect([isRunning(kernel), isRunning(child)]).toEqual([true, true]);
    runner.kill(signal);
    await ended;
    expect(await until(() => !isRunning(kernel) && !isRunning(child), 10_000), "no process is left").toBe(true);
    expect(readdirSync(temporary).filter((name) => name.startsWith("underfoot-"))).toEqual([]);
  } finally {
    runner.kill("SIGKILL");
    rmSync(folder, { recursive: true, force: true });
  }
});
