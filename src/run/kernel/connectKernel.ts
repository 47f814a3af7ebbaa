import { randomUUID } from "node:crypto";
import { NotebookError } from "../NotebookError.js";
import type { Connection } from "./Connection.js";
import { decodeMessage } from "./decodeMessage.js";
import { encodeMessage } from "./encodeMessage.js";
import type { Message } from "./Message.js";

/** The channels of a kernel. */
export interface KernelChannels {
  /** Sends a request; its id. */
  readonly send: (channel: "shell" | "control", type: string, content: object) => string;
  /** Resolves with the answer to a request; never, when none comes. */
  readonly reply: (requestId: string) => Promise<Message>;
  /** Resolves when the kernel has published that it is done with a request. */
  readonly idle: (requestId: string) => Promise<void>;
  /** True when the kernel echoes a heartbeat within this time: its event loop turns. */
  readonly beats: (withinMs: number) => Promise<boolean>;
  /** Messages that were not signed or not formed as the protocol says, so far. */
  readonly notUnderstood: () => number;
  readonly close: () => void;
}

async function messaging() {
  try {
    return await import("zeromq");
  } catch (fault) {
    throw new NotebookError(
      "kernel_missing",
      `The messaging library of the notebook kernel cannot be loaded: ${fault instanceof Error ? fault.message : String(fault)}.`,
      "Install it beside underfoot: npm install zeromq.",
    );
  }
}

/** One promise for each id, whether it is waited for before or after it is delivered. */
function mailbox<T>() {
  const boxes = new Map<string, { promise: Promise<T>; resolve: (value: T) => void }>();
  const box = (id: string) => {
    const found = boxes.get(id);
    if (found !== undefined) return found;
    let resolve: (value: T) => void = () => undefined;
    const promise = new Promise<T>((done) => {
      resolve = done;
    });
    boxes.set(id, { promise, resolve });
    return { promise, resolve };
  };
  return {
    wait: (id: string) => box(id).promise,
    deliver: (id: string, value: T) => {
      box(id).resolve(value);
    },
  };
}

/**
 * Connects to a kernel, which may not be listening yet. `onOutput` gets every message of the output channel but the state
 * changes. Source: Jupyter messaging protocol 5.3.
 */
export async function connectKernel(connection: Connection, onOutput: (message: Message) => void): Promise<KernelChannels> {
  const zmq = await messaging();
  // Linger: what cannot be delivered any more must not hold this process back. High-water mark: nothing of the output is dropped here.
  const options = { linger: 0, reconnectInterval: 50 };
  const shell = new zmq.Dealer({ ...options, receiveHighWaterMark: 0 });
  const control = new zmq.Dealer(options);
  const output = new zmq.Subscriber({ ...options, receiveHighWaterMark: 0 });
  const address = (port: number) => `${connection.transport}://${connection.ip}:${port}`;
  output.connect(address(connection.iopub_port));
  output.subscribe();
  shell.connect(address(connection.shell_port));
  control.connect(address(connection.control_port));

  const session = randomUUID();
  const replies = mailbox<Message>();
  const idles = mailbox<undefined>();
  let strange = 0;

  async function listen(socket: AsyncIterable<Uint8Array[]>, take: (message: Message) => void): Promise<void> {
    try {
      for await (const frames of socket) {
        const message = decodeMessage(connection.key, frames);
        if (message === null) strange += 1;
        else take(message);
      }
    } catch {
      // The socket was closed.
    }
  }
  const takeReply = (message: Message) => {
    if (message.parentId !== null && message.type.endsWith("_reply")) replies.deliver(message.parentId, message);
  };
  void listen(shell, takeReply);
  void listen(control, takeReply);
  void listen(output, (message) => {
    if (message.type !== "status") onOutput(message);
    else if (message.content["execution_state"] === "idle" && message.parentId !== null)
      idles.deliver(message.parentId, undefined);
  });

  return {
    send: (channel, type, content) => {
      const id = randomUUID();
      const header = { msg_id: id, session, username: "underfoot", date: new Date().toISOString(), msg_type: type } as const;
      const frames = encodeMessage(connection.key, { ...header, version: "5.3" }, content);
      void (channel === "shell" ? shell : control).send(frames).catch(() => undefined);
      return id;
    },
    reply: (id) => replies.wait(id),
    idle: (id) => idles.wait(id),
    beats: async (withinMs) => {
      const heart = new zmq.Request({ ...options, receiveTimeout: withinMs });
      heart.connect(address(connection.hb_port));
      try {
        await heart.send("beat");
        return (await heart.receive()).length > 0;
      } catch {
        return false;
      } finally {
        heart.close();
      }
    },
    notUnderstood: () => strange,
    close: () => {
      for (const socket of [shell, control, output]) socket.close();
    },
  };
}
