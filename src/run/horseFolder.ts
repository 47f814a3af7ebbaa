import { join } from "node:path";
import { focusOn } from "../answer/focusOn.js";
import { readStudy } from "../read/readStudy.js";
import { horsePage } from "../show/horsePage.js";
import { toHtmlPage } from "../show/toHtmlPage.js";
import { StudyError } from "../study/StudyError.js";
import { fileSlug } from "./fileSlug.js";
import { progressLine } from "./progressLine.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

/** What the command `horse` is asked. */
export interface HorseOptions {
  readonly out: string;
  /** Only what was recorded while the horse stood at this yard. */
  readonly yard?: string;
  /** As things stood on this day, `YYYY-MM-DD`. */
  readonly asOf?: string;
}

/**
 * The command `horse`: writes the history of one horse on one sheet. Returns the exit code.
 *
 * @throws StudyError when the folder, the horse, the yard or the day cannot be used, or the horse was not seen by then.
 *
 * @private
 */
export async function horseFolder(folder: string, horseId: string, options: HorseOptions, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  try {
    progress.show(`Reading ${folder}`);
    const read = await readStudy(folder);
    const { yard, asOf } = options;
    const study = focusOn(read, {
      horseId,
      ...(yard === undefined ? {} : { yardId: yard }),
      ...(asOf === undefined ? {} : { asOf }),
    });
    if (study.visits.length === 0) {
      throw new StudyError(
        "no_visits",
        `${horseId} has no visit that can be used${yard === undefined ? "" : ` at ${yard}`}.`,
        `Give another day or yard, or run: underfoot check ${folder}`,
      );
    }
    progress.show("Writing the page");
    const path = join(options.out, `horse-${fileSlug(horseId)}.html`);
    await writeFileWhole(path, await toHtmlPage(horsePage(study, horseId, new Date().toISOString().slice(0, 10))));
    progress.clear();
    terminal.stdout.write(`Wrote ${path}\n`);
    return studyExitCode(read);
  } finally {
    progress.clear();
  }
}
