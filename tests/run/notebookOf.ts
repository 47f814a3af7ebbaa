import type { CodeCell, Notebook } from "../../src/run/Notebook.js";

/** A code cell for a test. */
export function codeCell(source: string, id: string, tags: readonly string[] = []): CodeCell {
  return { cell_type: "code", id, metadata: tags.length === 0 ? {} : { tags }, source, outputs: [], execution_count: null };
}

/** A notebook of code cells for a test. */
export function notebookOf(...sources: readonly string[]): Notebook {
  return { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: sources.map((source, i) => codeCell(source, `c${i + 1}`)) };
}
