import { connectKernel } from "../../src/run/kernel/connectKernel.js";
import { freePorts } from "../../src/run/kernel/freePorts.js";
import { kernelProgram } from "../../src/run/kernel/kernelProgram.js";
import type { Message } from "../../src/run/kernel/Message.js";
import { spawnKernel } from "../../src/run/kernel/spawnKernel.js";
import { notebookFolder } from "./notebooks.js";

/** A kernel that is asked what a front end asks: what may stand here, what is this, run this. */
export interface KernelTalk {
  /** Completions at the mark `|` in the code. */
  readonly complete: (code: string) => Promise<readonly string[]>;
  /** Help on what stands at the mark `|`. */
  readonly inspect: (code: string) => Promise<string>;
  /** Runs a cell: whether it went well, and what stands below it. */
  readonly run: (code: string) => Promise<{ readonly ok: boolean; readonly said: string }>;
  /** What the kernel says of its language. */
  readonly language: unknown;
  readonly close: () => Promise<void>;
}

/** Starts a kernel in the folder of the notebooks. */
export async function kernelTalk(): Promise<KernelTalk> {
  const running = await spawnKernel(kernelProgram(notebookFolder), notebookFolder, await freePorts(5));
  let heard: Message[] = [];
  const channels = await connectKernel(running.connection, (message) => heard.push(message));
  const ask = async (type: string, content: object): Promise<Readonly<Record<string, unknown>>> => {
    const id = channels.send("shell", type, content);
    const { content: answer } = await channels.reply(id);
    await channels.idle(id);
    return answer;
  };
  const marked = (code: string) => ({ code: code.replace("|", ""), cursor_pos: code.indexOf("|") });
  // The first state changes may come before the subscription has arrived.
  const info = await channels.reply(channels.send("shell", "kernel_info_request", {}));
  await new Promise((done) => setTimeout(done, 500));
  return {
    complete: async (code) => (await ask("complete_request", marked(code)))["matches"] as string[],
    inspect: async (code) => {
      const { data } = await ask("inspect_request", { ...marked(code), detail_level: 0 });
      return String((data as Record<string, unknown>)["text/plain"]);
    },
    run: async (code) => {
      // For 200 ms after a fault the kernel drops what comes, so that the rest of a run is not run.
      await new Promise((done) => setTimeout(done, 300));
      heard = [];
      const { status } = await ask("execute_request", { code, silent: false, store_history: true, user_expressions: {}, allow_stdin: false });
      return { ok: status === "ok", said: heard.map(({ content }) => (typeof content["text"] === "string" ? content["text"] : JSON.stringify(content["data"]))).join("") };
    },
    language: info.content["language_info"],
    close: async () => {
      await running.forgetConnection();
      running.signal("SIGKILL");
      await running.exited;
      channels.close();
    },
  };
}
