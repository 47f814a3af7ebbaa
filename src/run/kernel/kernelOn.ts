import { setTimeout as pause } from "node:timers/promises";
import type { KernelChannels } from "./connectKernel.js";
import type { Kernel, Outcome } from "./Kernel.js";
import type { Message } from "./Message.js";
import type { KernelProcess } from "./spawnKernel.js";
import { stopKernel } from "./stopKernel.js";
import { within } from "./within.js";

/** Once a reply is in, what was printed before it needs only to cross this machine. */
const outputGraceMs = 10_000;

function whenAborted(signal: AbortSignal): { outcome: Promise<Outcome>; forget: () => void } {
  let listener: () => void = () => undefined;
  const outcome = new Promise<Outcome>((resolve) => {
    listener = () => {
      resolve({ kind: "aborted" });
    };
    if (signal.aborted) listener();
    else signal.addEventListener("abort", listener, { once: true });
  });
  const forget = () => {
    signal.removeEventListener("abort", listener);
  };
  return { outcome, forget };
}

async function answer(channels: KernelChannels, id: string): Promise<Outcome> {
  const { content } = await channels.reply(id);
  const done = channels.idle(id).then(() => true);
  if ((await within(outputGraceMs, done)) === null) return { kind: "output_lost" };
  const count = content["execution_count"];
  return { kind: "reply", status: String(content["status"]), executionCount: typeof count === "number" ? count : null };
}

/** The kernel that runs as this process, answers on these channels and has described itself in `info`. */
export function kernelOn(running: KernelProcess, channels: KernelChannels, info: Message): Kernel {
  const died = running.exited.then((exit): Outcome => ({ kind: "died", exit, lastWords: running.lastWords() }));
  const dropped = running.droppedOutput.then((): Outcome => ({ kind: "output_lost" }));
  let busy = false;
  const language = info.content["language_info"];
  return {
    pid: running.pid,
    languageInfo: typeof language === "object" && language !== null ? (language as Record<string, unknown>) : {},
    notUnderstood: channels.notUnderstood,
    execute: async (code, { timeoutMs, signal, started }) => {
      busy = true;
      const content = { code, silent: false, store_history: true, user_expressions: {}, allow_stdin: false, stop_on_error: true };
      const id = channels.send("shell", "execute_request", content);
      started(id);
      const abort = whenAborted(signal);
      const outcome = await within(timeoutMs, Promise.race([answer(channels, id), died, dropped, abort.outcome]));
      abort.forget();
      if (outcome === null) return { kind: "timeout", loopTurns: await channels.beats(2000) };
      // What it had printed may still be on its way.
      if (outcome.kind === "died") await pause(100);
      busy = outcome.kind !== "reply";
      return outcome;
    },
    stop: async () => {
      await stopKernel(running, () => {
        // A busy kernel would not hear the request.
        if (busy) running.signal("SIGTERM");
        else channels.send("control", "shutdown_request", { restart: false });
      });
      channels.close();
    },
  };
}
