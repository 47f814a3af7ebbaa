import type { MimeBundle, Notebook, NotebookCell, NotebookOutput } from "./Notebook.js";
import { writeFileWhole } from "./writeFileWhole.js";

/** Line ends as Python's `str.splitlines` has them, so that a file saved by Jupyter comes back the same. */
const ends = String.raw`\n\r\v\f\x1c-\x1e\x85\u2028\u2029`;

/** The lines of a text, with their ends. */
function lines(text: string): string[] {
  return text.match(new RegExp(`[^${ends}]*(?:\\r\\n|[${ends}])|[^${ends}]+$`, "g")) ?? [];
}

function bundleInLines(data: MimeBundle): MimeBundle {
  const cut = (mime: string) => /^text\/|^application\/javascript$|^image\/svg\+xml$/.test(mime);
  const entries = Object.entries(data);
  return Object.fromEntries(entries.map(([mime, item]) => [mime, typeof item === "string" && cut(mime) ? lines(item) : item]));
}

function outputInLines(output: NotebookOutput): object {
  if (output.output_type === "stream") return { ...output, text: lines(output.text) };
  return output.output_type === "error" ? output : { ...output, data: bundleInLines(output.data) };
}

function cellInLines(cell: NotebookCell): object {
  const source = lines(cell.source);
  if (cell.cell_type === "code") return { ...cell, source, outputs: cell.outputs.map(outputInLines) };
  if (cell.attachments === undefined) return { ...cell, source };
  const files = Object.entries(cell.attachments).map(([name, data]) => [name, bundleInLines(data)]);
  return { ...cell, source, attachments: Object.fromEntries(files) as object };
}

function sortedKeys(_key: string, value: unknown): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}

/**
 * Writes a notebook file whole or not at all, in the layout Jupyter itself writes (one space of indent, sorted keys, text as
 * lists of lines), so that a later save in Jupyter changes only what was changed.
 *
 * @throws StudyError `cannot_write`.
 */
export async function writeNotebook(path: string, notebook: Notebook): Promise<void> {
  const file = { ...notebook, cells: notebook.cells.map(cellInLines) };
  await writeFileWhole(path, `${JSON.stringify(file, sortedKeys, 1)}\n`);
}
