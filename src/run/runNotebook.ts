import { randomUUID } from "node:crypto";
import { stat } from "node:fs/promises";
import { StudyError } from "../study/StudyError.js";
import type { CellProgress } from "./CellProgress.js";
import type { CellRun } from "./CellRun.js";
import { cellRunner } from "./cellRunner.js";
import { checkedNotebook } from "./checkedNotebook.js";
import { executedNotebook } from "./executedNotebook.js";
import { startKernel } from "./kernel/startKernel.js";
import type { CodeCell, Notebook } from "./Notebook.js";
import type { FailedCell } from "./NotebookError.js";
import { outputCollector } from "./outputCollector.js";
import type { ParameterValue } from "./parameters/ParameterValue.js";
import { withParameters } from "./parameters/withParameters.js";
import { type Failure, runFailure } from "./runFailure.js";
import { type RunWarning, runWarnings } from "./runWarnings.js";
import { streamText } from "./streamText.js";

/** How a notebook is run. */
export interface RunOptions {
  /** Working folder of the cells: the folder the notebook lies in. */
  readonly folder: string;
  /** Values in place of those in the cell tagged `parameters`. */
  readonly parameters?: Readonly<Record<string, ParameterValue>>;
  /** Time for the kernel to start; 60 s when left out. */
  readonly startTimeoutMs?: number;
  /** Time for each cell; 120 s when left out. */
  readonly cellTimeoutMs?: number;
  /** Time for all cells together; 30 min when left out. */
  readonly runTimeoutMs?: number;
  /** Output that is kept at most; 100 MB when left out. */
  readonly outputLimitBytes?: number;
  /** Ends the run. */
  readonly signal?: AbortSignal;
  /** Called before each cell that is run. */
  readonly onProgress?: (progress: CellProgress) => void;
}

/** A notebook that was run from the first cell to the last. */
export interface NotebookRun {
  readonly notebook: Notebook;
  readonly cellsRun: number;
  readonly warnings: readonly RunWarning[];
}

async function requireFolder(folder: string): Promise<void> {
  const found = await stat(folder).catch(() => null);
  if (found?.isDirectory() === true) return;
  throw new StudyError(
    "no_folder",
    `There is no folder ${folder} to run the notebook in.`,
    "Give the folder the notebook lies in.",
  );
}

const saying = (source: string) => source.split("\n").filter((line) => line.trim() !== "");

function placeOf({ cell, number }: CellRun): FailedCell {
  return { number, id: cell.id, firstLines: saying(cell.source).slice(0, 3).join("\n") };
}

function newRun(cell: CodeCell, number: number): CellRun {
  return { cell, number, requestId: "", outputs: [], executionCount: null };
}

/**
 * A cell that is run after the last one. It waits a moment, so that faults nobody waited for come to light, and prints a word
 * that only this run knows.
 */
function closingCell(word: string): CodeCell {
  const wait = "await new Promise((done) => globalThis.setTimeout(done, 100));";
  const source = `${wait} void globalThis.process.stdout.write(${JSON.stringify(word)});`;
  return { cell_type: "code", id: "closing", metadata: {}, source, outputs: [], execution_count: null };
}

/**
 * Runs a notebook from the first code cell to the last in a kernel of its own (tslab, by this Node; no Python) and gives it
 * back with its outputs. The input is not changed, and no kernel is left behind, whether the run succeeds, fails, or this
 * program is killed. Empty cells are passed over.
 *
 * A cell counts as run only when the kernel answers "ok" and has numbered it one above the cell before, which it does when it
 * starts to run a cell; an answer "abort" is a failure. After the last cell a word that only this run knows must come back
 * through the output channel. Output comes in order, so the word proves that the kernel lived to the end and that the output is whole.
 *
 * Text on the error stream of a cell that ended well is kept and comes back as a warning, and so does output that came after
 * its cell had ended.
 *
 * @throws NotebookError with the cell, the kernel's message and the partly run notebook.
 * @throws StudyError for a notebook, a folder or parameters that cannot be used; no kernel was started then.
 */
export async function runNotebook(notebook: Notebook, options: RunOptions): Promise<NotebookRun> {
  const prepared = withParameters(checkedNotebook(notebook), options.parameters ?? {});
  await requireFolder(options.folder);
  const cells = prepared.cells.filter((cell): cell is CodeCell => cell.cell_type === "code" && cell.source.trim() !== "");
  const { cellTimeoutMs = 120_000, runTimeoutMs = 1_800_000, outputLimitBytes: outputBytes = 100_000_000 } = options;

  const flood = new AbortController();
  const signal = options.signal === undefined ? flood.signal : AbortSignal.any([options.signal, flood.signal]);
  const collector = outputCollector();
  const kernel = await startKernel({
    folder: options.folder,
    timeoutMs: options.startTimeoutMs ?? 60_000,
    signal,
    onOutput: (message) => {
      collector.take(message);
      if (collector.bytes() > outputBytes) flood.abort();
    },
  });

  const runs: CellRun[] = [];
  const executed = () => executedNotebook(prepared, runs, kernel.languageInfo);
  const failure = (reason: Failure, run: CellRun, said: string) => {
    const details = { cell: run.number > cells.length ? null : placeOf(run), kernelMessage: said === "" ? null : said };
    return runFailure(reason, cells.length, { ...details, notebook: executed() });
  };
  const limits = { cellTimeoutMs, runTimeoutMs, outputBytes };
  const run = cellRunner(kernel, collector, limits, signal, failure);
  try {
    for (const cell of cells) {
      const next = newRun(cell, runs.length + 1);
      runs.push(next);
      options.onProgress?.({ cell: next.number, cells: cells.length, firstLine: saying(cell.source)[0]?.trim() ?? "" });
      await run(next);
    }
    const word = randomUUID();
    const closing = newRun(closingCell(word), cells.length + 1);
    await run(closing);
    const heard = streamText(closing.outputs, "stdout");
    if (!heard.includes(word)) throw failure({ kind: "output_lost" }, closing, "");
    const afterwards = heard.replace(word, "") + streamText(closing.outputs, "stderr");
    const warnings = runWarnings(runs, collector.isLate, afterwards, kernel.notUnderstood());
    return { notebook: executed(), cellsRun: runs.length, warnings };
  } finally {
    await kernel.stop();
  }
}
