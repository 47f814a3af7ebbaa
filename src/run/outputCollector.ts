import { isJsonMime } from "./isJsonMime.js";
import type { Message } from "./kernel/Message.js";
import type { NotebookOutput } from "./Notebook.js";

type Display = Extract<NotebookOutput, { output_type: "display_data" | "execute_result" }>;

/** What the runner knows of one request. */
interface Filed {
  readonly outputs: NotebookOutput[];
  closed: boolean;
  late: boolean;
}

/** Gathers what a kernel puts out, by the request it belongs to. @private */
export interface OutputCollector {
  /** Starts the outputs of a request; the array grows as messages come. */
  readonly begin: (requestId: string) => readonly NotebookOutput[];
  /** Says that the request is done. What comes for it later is kept and counts as late. */
  readonly close: (requestId: string) => void;
  readonly take: (message: Message) => void;
  readonly isLate: (requestId: string) => boolean;
  /** Faults of promises and timers nobody waited for, as the kernel reported them. */
  readonly looseFaults: () => readonly string[];
  /** Bytes of all output that is kept. */
  readonly bytes: () => number;
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The schema allows JSON mime types any value, and all others text only. */
function bundle(data: unknown): Record<string, unknown> {
  if (!isObject(data)) return {};
  const text = (value: unknown) => (typeof value === "string" ? value : JSON.stringify(value));
  return Object.fromEntries(Object.entries(data).map(([mime, value]) => [mime, isJsonMime(mime) ? value : text(value)]));
}

const texts = (value: unknown): string[] => (Array.isArray(value) ? value.map(String) : []);
const textOf = (value: unknown): string => (typeof value === "string" ? value : "");

/** How the kernel begins the report of a fault that belongs to no cell. */
const looseFault = /^(?:UnhandledPromiseRejection|UncaughtException): /;

/**
 * Turns the messages of a kernel's output channel into outputs as nbformat 4.5 has them: stream texts that follow each other
 * are one output, a later update of a display changes it where it stands. Messages of other kinds, or not formed as the
 * protocol says, are passed over. Source: Jupyter messaging protocol 5.3, "Messages on the IOPub channel".
 */
export function outputCollector(): OutputCollector {
  const filed = new Map<string, Filed>();
  const displays = new Map<string, Display[]>();
  const faults: string[] = [];
  let bytes = 0;

  function addStream(outputs: NotebookOutput[], name: string, text: string): void {
    if (name === "stderr" && looseFault.test(text)) faults.push(text.replace(looseFault, ""));
    const last = outputs.at(-1);
    if (last?.output_type === "stream" && last.name === name) (last as { text: string }).text += text;
    else outputs.push({ output_type: "stream", name, text });
  }

  function addDisplay(outputs: NotebookOutput[], display: Display, transient: unknown): void {
    outputs.push(display);
    const id = isObject(transient) ? transient["display_id"] : undefined;
    if (typeof id === "string") displays.set(id, [...(displays.get(id) ?? []), display]);
  }

  function file(outputs: NotebookOutput[], { type, content }: Message): void {
    const shown = { data: bundle(content["data"]), metadata: isObject(content["metadata"]) ? content["metadata"] : {} };
    if (type === "stream" && typeof content["text"] === "string") {
      addStream(outputs, content["name"] === "stderr" ? "stderr" : "stdout", content["text"]);
    } else if (type === "display_data" && isObject(content["data"])) {
      addDisplay(outputs, { output_type: type, ...shown }, content["transient"]);
    } else if (type === "execute_result" && isObject(content["data"])) {
      const count = content["execution_count"];
      addDisplay(
        outputs,
        { output_type: type, execution_count: Number.isInteger(count) ? (count as number) : null, ...shown },
        content["transient"],
      );
    } else if (type === "error") {
      const { ename, evalue, traceback } = content;
      outputs.push({ output_type: type, ename: textOf(ename), evalue: textOf(evalue), traceback: texts(traceback) });
    } else if (type === "update_display_data" && isObject(content["data"]) && isObject(content["transient"])) {
      for (const display of displays.get(String(content["transient"]["display_id"])) ?? []) Object.assign(display, shown);
    }
  }

  return {
    begin: (requestId) => {
      const outputs: NotebookOutput[] = [];
      filed.set(requestId, { outputs, closed: false, late: false });
      return outputs;
    },
    close: (requestId) => {
      const found = filed.get(requestId);
      if (found !== undefined) found.closed = true;
    },
    take: (message) => {
      const found = message.parentId === null ? undefined : filed.get(message.parentId);
      if (found === undefined) return;
      // An update takes the place of what was there.
      if (message.type !== "update_display_data") bytes += message.contentBytes;
      const before = found.outputs.length;
      file(found.outputs, message);
      if (found.closed && (message.type === "stream" || found.outputs.length > before)) found.late = true;
    },
    isLate: (requestId) => filed.get(requestId)?.late ?? false,
    looseFaults: () => faults,
    bytes: () => bytes,
  };
}
