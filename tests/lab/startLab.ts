import { spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { freePorts } from "../../src/run/kernel/freePorts.js";
import type { Workplace } from "./workplace.js";

/** A JupyterLab without a window. */
export interface Lab {
  /** Address of a notebook, or of the lab itself. */
  readonly address: (notebook?: string) => string;
  readonly stop: () => Promise<void>;
}

/** Starts the JupyterLab of .venv and waits until it answers. */
export async function startLab({ programs, notebooks, env }: Workplace): Promise<Lab> {
  const [port = 0] = await freePorts(1);
  const token = randomBytes(16).toString("hex");
  const args = [
    "--no-browser",
    "--allow-root",
    "--ServerApp.ip=127.0.0.1",
    `--ServerApp.port=${port}`,
    "--ServerApp.port_retries=0",
    `--IdentityProvider.token=${token}`,
    `--ServerApp.root_dir=${notebooks}`,
    "--LabApp.expose_app_in_browser=True",
    "--LabApp.extension_manager=readonly",
  ];
  const child = spawn(join(programs, "jupyter-lab"), args, { cwd: notebooks, env, stdio: ["ignore", "pipe", "pipe"] });
  let said = "";
  const hear = (chunk: Buffer) => {
    said = (said + chunk.toString("utf8")).slice(-5000);
  };
  child.stdout.on("data", hear);
  child.stderr.on("data", hear);
  const ended = new Promise<void>((resolve) =>
    child.once("exit", () => {
      resolve();
    }),
  );
  const root = `http://127.0.0.1:${port}`;
  const patience = Date.now() + 90_000;
  for (;;) {
    const answer = await fetch(`${root}/api/status?token=${token}`).catch(() => null);
    if (answer?.ok === true) break;
    if (child.exitCode !== null || Date.now() > patience) throw new Error(`JupyterLab did not start: ${said}`);
    await pause(200);
  }
  return {
    address: (notebook) => `${root}/lab${notebook === undefined ? "" : `/tree/${notebook}`}?reset&token=${token}`,
    stop: async () => {
      // Asked twice it stops at once, and takes its kernels along.
      child.kill("SIGTERM");
      await Promise.race([ended, pause(10_000)]);
      child.kill("SIGKILL");
      await ended;
    },
  };
}
