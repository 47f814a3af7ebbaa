import { climateStudy } from "../answer/climateStudy.js";
import { readStudy } from "../read/readStudy.js";
import { StudyError } from "../study/StudyError.js";
import { progressLine } from "./progressLine.js";
import { requireVisits } from "./requireVisits.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writePaper } from "./writePaper.js";

/** What the command `paper` is asked. */
export interface PaperOptions {
  readonly out: string;
  /** Simulated studies behind each line of the power table, as typed. */
  readonly runs?: string;
}

/**
 * The command `paper`: runs the climate study and writes its tables, figures and methods into a folder. Says what was left out, and why. Returns the exit code.
 *
 * @throws StudyError when the folder, or the number of runs, cannot be used, or no part of the study can be made.
 *
 * @private
 */
export async function paperFolder(folder: string, options: PaperOptions, terminal: Terminal): Promise<number> {
  const runs = runsOf(options.runs);
  const progress = progressLine(terminal.stderr);
  try {
    progress.show(`Reading ${folder}`);
    const study = await readStudy(folder);
    requireVisits(study, folder, "to write about");
    progress.show("Running the climate study; this takes a while");
    const replies = climateStudy(study, runs);
    progress.show("Drawing the figures");
    const files = await writePaper(replies, options.out);
    progress.clear();
    const skipped = replies.filter((reply) => reply.kind === "not_enough_data");
    terminal.stdout.write(`Wrote ${files.length} files and contents.csv, which lists them, to ${options.out}\n`);
    for (const { id, reason } of skipped) terminal.stdout.write(`Left out ${id}: ${reason}\n`);
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
}

function runsOf(typed: string | undefined): { readonly runs?: number } {
  if (typed === undefined) return {};
  if (/^[1-9]\d{0,4}$/.test(typed)) return { runs: Number(typed) };
  throw new StudyError("not_a_count", `"${typed}" is no number of simulated studies.`, "Give a whole number from 1 to 99999.");
}
