import { type ChildProcess, spawn } from "node:child_process";
import { randomBytes } from "node:crypto";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Connection } from "./Connection.js";
import { kernelStarter } from "./kernelStarter.js";

/** How a process ended: one of the two is null. */
export interface KernelExit {
  readonly code: number | null;
  readonly signal: string | null;
}

/** A kernel process, listening or about to. */
export interface KernelProcess {
  readonly pid: number;
  readonly connection: Connection;
  /** Resolves when the process has ended; never rejects. */
  readonly exited: Promise<KernelExit>;
  /** Resolves when it reports a fault outside the messages, as it does when it cannot listen; it does not end by itself then. */
  readonly inTrouble: Promise<void>;
  /** Resolves when it says that it dropped output. */
  readonly droppedOutput: Promise<void>;
  /** The end of what it wrote outside the messages, such as the last words of a crash. */
  readonly lastWords: () => string;
  /** Takes the connection file away; the kernel reads it once, when it starts. */
  readonly forgetConnection: () => Promise<void>;
  /** Sends a signal to the kernel and to whatever it started. */
  readonly signal: (signal: "SIGTERM" | "SIGKILL") => void;
}

function connectionOf(ports: readonly number[]): Connection {
  const [shell = 0, iopub = 0, stdin = 0, control = 0, heartbeat = 0] = ports;
  return {
    transport: "tcp",
    ip: "127.0.0.1",
    shell_port: shell,
    iopub_port: iopub,
    stdin_port: stdin,
    control_port: control,
    hb_port: heartbeat,
    signature_scheme: "hmac-sha256",
    key: randomBytes(32).toString("hex"),
  };
}

/** Signals the kernel and the group it leads. Windows knows no groups. */
function signalGroup(child: ChildProcess, signal: "SIGTERM" | "SIGKILL"): void {
  child.kill(signal);
  if (child.pid === undefined || process.platform === "win32") return;
  try {
    process.kill(-child.pid, signal);
  } catch {
    // Nobody of the group is left.
  }
}

/** How it ended, once its last words are in; what it started may hold its output open, so they are not waited for long. */
function ending(child: ChildProcess): Promise<KernelExit> {
  return new Promise((resolve) => {
    child.once("error", () => {
      resolve({ code: null, signal: null });
    });
    child.once("exit", (code, signal) => {
      const done = () => {
        clearTimeout(timer);
        resolve({ code, signal });
      };
      const timer = setTimeout(done, 200);
      child.once("close", done);
    });
  });
}

/** A promise that is resolved by a call. */
function flag(): { raised: Promise<void>; raise: () => void } {
  let raise: () => void = () => undefined;
  const raised = new Promise<void>((resolve) => {
    raise = resolve;
  });
  return { raised, raise };
}

/**
 * Starts `tslab kernel` with this Node, in the folder given, with a connection file only this user can read. The process leads
 * a group of its own, so Ctrl-C in a terminal does not reach it, and it ends by itself when this process is gone.
 */
export async function spawnKernel(program: string, folder: string, ports: readonly number[]): Promise<KernelProcess> {
  const connection = connectionOf(ports);
  const { script, saysDropped } = kernelStarter();
  const temporary = await mkdtemp(join(tmpdir(), "underfoot-kernel-"));
  const [starter, file] = [join(temporary, "start.cjs"), join(temporary, "connection.json")];
  await writeFile(starter, script, { mode: 0o600 });
  await writeFile(file, JSON.stringify(connection), { mode: 0o600 });

  const child = spawn(process.execPath, [starter, program, "kernel", "--config-path", file], {
    cwd: folder,
    detached: process.platform !== "win32",
    stdio: ["pipe", "pipe", "pipe"],
    windowsHide: true,
  });
  const forgetConnection = () => rm(temporary, { recursive: true, force: true });
  let words = "";
  const trouble = flag();
  const dropped = flag();
  const listen = (chunk: Buffer) => {
    words = (words + chunk.toString("utf8")).slice(-20_000);
    if (/UnhandledPromiseRejection|UncaughtException/.test(words)) trouble.raise();
    if (saysDropped(words)) dropped.raise();
  };
  child.stdout.on("data", listen);
  child.stderr.on("data", listen);
  child.stdin.on("error", () => undefined);
  child.on("error", (fault) => {
    words += fault.message;
  });
  return {
    pid: child.pid ?? 0,
    connection,
    exited: ending(child),
    inTrouble: trouble.raised,
    droppedOutput: dropped.raised,
    lastWords: () => words,
    forgetConnection,
    signal: (signal) => {
      signalGroup(child, signal);
    },
  };
}
