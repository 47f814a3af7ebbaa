import { NotebookError } from "../NotebookError.js";
import { connectKernel, type KernelChannels } from "./connectKernel.js";
import { freePorts } from "./freePorts.js";
import type { Kernel } from "./Kernel.js";
import { kernelOn } from "./kernelOn.js";
import { kernelProgram } from "./kernelProgram.js";
import type { Message } from "./Message.js";
import { type KernelProcess, spawnKernel } from "./spawnKernel.js";
import { stopKernel } from "./stopKernel.js";
import { within } from "./within.js";

/** How a kernel is started. */
export interface KernelOptions {
  /** Working folder of the kernel. */
  readonly folder: string;
  /** How long it may take to answer. */
  readonly timeoutMs: number;
  readonly signal: AbortSignal;
  /** Gets every message of the output channel but the state changes. */
  readonly onOutput: (message: Message) => void;
  /** Where free ports come from. */
  readonly ports?: (count: number) => Promise<number[]>;
}

/** Another program may take a port between the choice and the kernel's start. */
const attempts = 3;

function notStarted(message: string, words: string): NotebookError {
  const said = words.trim();
  return new NotebookError(
    "kernel_not_started",
    said === "" ? message : `${message} It said: ${said.split("\n").slice(0, 8).join("\n")}`,
    "Run it again; if it happens again, see whether the kernel works at all: npx tslab --version.",
    { kernelMessage: said === "" ? null : said },
  );
}

/**
 * Asks for the kernel's description until an answer comes on the shell and a state change on the output channel: a
 * subscription takes a moment to reach the kernel, and what is published before is lost.
 */
async function described(channels: KernelChannels): Promise<Message> {
  for (;;) {
    const id = channels.send("shell", "kernel_info_request", {});
    const info = await channels.reply(id);
    const heard = channels.idle(id).then(() => true);
    if ((await within(250, heard)) !== null) return info;
  }
}

async function firstAnswer(running: KernelProcess, channels: KernelChannels, options: KernelOptions): Promise<Message> {
  const ended = new AbortController();
  const whenEnded = new Promise<"cancelled">((resolve) => {
    options.signal.addEventListener(
      "abort",
      () => {
        resolve("cancelled");
      },
      { once: true, signal: ended.signal },
    );
    if (options.signal.aborted) resolve("cancelled");
  });
  const gone = running.exited.then(() => "gone" as const);
  const trouble = running.inTrouble.then(() => "trouble" as const);
  const first = await within(options.timeoutMs, Promise.race([described(channels), gone, trouble, whenEnded]));
  ended.abort();
  if (first === null) {
    throw notStarted(`The notebook kernel gave no answer within ${options.timeoutMs / 1000} s.`, running.lastWords());
  }
  if (first === "cancelled")
    throw new NotebookError("cancelled", "The run was ended before the first cell.", "Run it again when it suits.");
  if (typeof first === "string") throw notStarted("The notebook kernel could not start.", running.lastWords());
  return first;
}

/**
 * Starts the notebook kernel and waits until it answers and its output can be heard.
 *
 * @throws NotebookError `kernel_missing`, `kernel_not_started` or `cancelled`; no process is left then.
 */
export async function startKernel(options: KernelOptions): Promise<Kernel> {
  const program = kernelProgram(options.folder);
  for (let attempt = 1; ; attempt += 1) {
    const running = await spawnKernel(program, options.folder, await (options.ports ?? freePorts)(5));
    let channels: KernelChannels | null = null;
    try {
      channels = await connectKernel(running.connection, options.onOutput);
      const info = await firstAnswer(running, channels, options);
      await running.forgetConnection();
      return kernelOn(running, channels, info);
    } catch (fault) {
      await stopKernel(running, () => {
        running.signal("SIGTERM");
      });
      channels?.close();
      if (attempt === attempts || !/EADDRINUSE|address already in use/i.test(running.lastWords())) throw fault;
    }
  }
}
