import type { CellRun } from "./CellRun.js";
import type { Notebook, NotebookCell } from "./Notebook.js";

/**
 * The notebook with what its cells put out and the numbers the kernel gave them; cells that were not run have neither. The
 * metadata of the notebook stay; where it names no kernel or language, those of the kernel are filled in.
 *
 * @private
 */
export function executedNotebook(
  notebook: Notebook,
  runs: readonly CellRun[],
  languageInfo: Readonly<Record<string, unknown>>,
): Notebook {
  const done = new Map<NotebookCell, CellRun>(runs.map((run) => [run.cell, run]));
  // Left out: the version, because the kernel gives a constant that is not that of its compiler.
  const language = Object.fromEntries(Object.entries(languageInfo).filter(([name]) => name !== "version"));
  const kernelspec = { display_name: "TypeScript", language: "typescript", name: "tslab" };
  return {
    ...notebook,
    metadata: { kernelspec, language_info: language, ...notebook.metadata },
    cells: notebook.cells.map((cell) => {
      if (cell.cell_type !== "code") return cell;
      const run = done.get(cell);
      // A copy, because late output could still come into the original.
      return { ...cell, outputs: structuredClone(run?.outputs ?? []), execution_count: run?.executionCount ?? null };
    }),
  };
}
