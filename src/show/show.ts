import { bundlesOf } from "./notebook/bundlesOf.js";
import { kernelDisplay } from "./notebook/kernelDisplay.js";
import type { MimeBundle } from "./notebook/MimeBundle.js";
import type { Showable } from "./partsOf.js";
import { showableOf } from "./showableOf.js";
import type { Frame } from "./toFrame.js";
import { toText } from "./toText.js";

const jupyterDisplay = Symbol.for("Jupyter.display");

/** An object that knows how it is displayed: returns data by mime type, as some kernels and libraries agree on. */
export interface Displayable {
  readonly [jupyterDisplay]: () => Readonly<Record<string, unknown>> | Promise<Readonly<Record<string, unknown>>>;
}

type Item = Showable | Displayable | Frame | readonly object[];

/**
 * Shows answers, charts, tables, rows such as `study.visits`, data frames, studies, data reports or Markdown below the notebook cell that
 * runs, in the order given; outside a notebook prints them as text. What is still on its way is waited for. For several beside one another
 * see `sideBySide`. Of a long table the first 50 rows are shown, with the count.
 *
 * Must be awaited: what is printed after a cell has ended is lost.
 * @throws StudyError `not_showable` for anything else, with what to do.
 */
export async function show(...items: readonly (Item | PromiseLike<Item>)[]): Promise<void> {
  const display = kernelDisplay();
  for (const item of items) {
    const given = await item;
    const shown = isDisplayable(given) ? given : showableOf(given);
    if (display !== null) for (const bundle of await bundlesFor(shown)) display(bundle);
    else process.stdout.write(isDisplayable(shown) ? `${await plainText(shown)}\n` : `${toText(shown)}\n`);
  }
}

async function bundlesFor(item: Showable | Displayable): Promise<MimeBundle[]> {
  return isDisplayable(item) ? [{ data: await item[jupyterDisplay](), metadata: {} }] : bundlesOf(item);
}

async function plainText(item: Displayable): Promise<string> {
  const { "text/plain": text } = await item[jupyterDisplay]();
  return typeof text === "string" ? text : "(nothing that can be shown as text)";
}

function isDisplayable(item: unknown): item is Displayable {
  return typeof item === "object" && item !== null && jupyterDisplay in item;
}
