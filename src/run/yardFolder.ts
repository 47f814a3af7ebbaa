import { join } from "node:path";
import { focusOn } from "../answer/focusOn.js";
import { readStudy } from "../read/readStudy.js";
import { toHtmlPage } from "../show/toHtmlPage.js";
import { yardPage } from "../show/yardPage.js";
import { fileSlug } from "./fileSlug.js";
import { progressLine } from "./progressLine.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

/** What the command `yard` is asked. */
export interface YardOptions {
  readonly out: string;
  /** As things stood on this day, `YYYY-MM-DD`. */
  readonly asOf?: string;
}

/**
 * The command `yard`: writes the page of one yard, which names no other yard and none of its horses. Returns the exit code.
 *
 * @throws StudyError when the folder, the yard or the day cannot be used.
 *
 * @private
 */
export async function yardFolder(folder: string, yardId: string, options: YardOptions, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  try {
    progress.show(`Reading ${folder}`);
    const read = await readStudy(folder);
    progress.show("Answering");
    const study = focusOn(read, { yardId, ...(options.asOf === undefined ? {} : { asOf: options.asOf }) });
    const path = join(options.out, `yard-${fileSlug(yardId)}.html`);
    await writeFileWhole(path, await toHtmlPage(yardPage(study, yardId, new Date().toISOString().slice(0, 10))));
    progress.clear();
    terminal.stdout.write(`Wrote ${path}\n`);
    return studyExitCode(read);
  } finally {
    progress.clear();
  }
}
