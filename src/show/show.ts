import { bundlesOf } from "./notebook/bundlesOf.js";
import { kernelDisplay } from "./notebook/kernelDisplay.js";
import type { MimeBundle } from "./notebook/MimeBundle.js";
import type { Showable } from "./partsOf.js";
import { toText } from "./toText.js";

const jupyterDisplay = Symbol.for("Jupyter.display");

/** An object that knows how it is displayed: returns data by mime type, as some kernels and libraries agree on. */
export interface Displayable {
  readonly [jupyterDisplay]: () => Readonly<Record<string, unknown>> | Promise<Readonly<Record<string, unknown>>>;
}

/**
 * Shows answers, charts, tables, studies, data reports or Markdown below the notebook cell that runs, in the order given; outside a
 * notebook prints them as text. Must be awaited: what is printed after a cell has ended is lost.
 */
export async function show(...items: readonly (Showable | Displayable)[]): Promise<void> {
  const display = kernelDisplay();
  for (const item of items) {
    if (display !== null) for (const bundle of await bundlesFor(item)) display(bundle);
    else process.stdout.write(isDisplayable(item) ? `${await plainText(item)}\n` : `${toText(item)}\n`);
  }
}

async function bundlesFor(item: Showable | Displayable): Promise<MimeBundle[]> {
  return isDisplayable(item) ? [{ data: await item[jupyterDisplay](), metadata: {} }] : bundlesOf(item);
}

async function plainText(item: Displayable): Promise<string> {
  const { "text/plain": text } = await item[jupyterDisplay]();
  return typeof text === "string" ? text : "(nothing that can be shown as text)";
}

function isDisplayable(item: Showable | Displayable): item is Displayable {
  return typeof item === "object" && jupyterDisplay in item;
}
