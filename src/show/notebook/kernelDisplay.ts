import { createRequire } from "node:module";
import type { MimeBundle } from "./MimeBundle.js";

// Everything that knows the insides of tslab stands in this file. Its public `display` sends one mime type at a time; a bundle goes
// through the function it keeps for the running cell. Both live in modules the kernel has loaded, wherever it is installed.
const messaging = /[\\/]tslab[\\/]dist[\\/]jupyter\.js$/;
const publicFace = /[\\/]tslab[\\/]dist[\\/]public\.js$/;
const richestFirst = ["image/png", "text/html", "text/markdown", "text/plain"];

/**
 * How to send a bundle to the notebook whose kernel runs this process, or null outside one. Where the kernel takes only one mime
 * type at a time, the richest is sent.
 */
export function kernelDisplay(): ((bundle: MimeBundle) => void) | null {
  const loaded = Object.entries(createRequire(import.meta.url).cache);
  const exportsOf = (name: RegExp) =>
    loaded.find(([path]) => name.test(path))?.[1]?.exports as Record<string, unknown> | undefined;
  const write = exportsOf(messaging)?.["lastWriteDisplayData"];
  if (typeof write === "function") {
    return ({ data, metadata }) => {
      (write as (message: object, update: boolean) => void)({ data, metadata, transient: {} }, false);
    };
  }
  // Null until a cell runs: the package was only imported. Anything else: its insides have changed.
  if (write === null) return null;
  const display = exportsOf(publicFace)?.["display"] as { raw?: (mime: string, data: unknown) => void } | undefined;
  if (typeof display?.raw !== "function") return null;
  return ({ data }) => {
    const mime = richestFirst.find((each) => each in data);
    if (mime !== undefined) display.raw?.(mime, data[mime]);
  };
}
