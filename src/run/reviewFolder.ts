import { join } from "node:path";
import { seasonReview } from "../answer/seasonReview.js";
import { readStudy } from "../read/readStudy.js";
import { reviewPage } from "../show/reviewPage.js";
import { toHtmlPage } from "../show/toHtmlPage.js";
import { progressLine } from "./progressLine.js";
import { requireVisits } from "./requireVisits.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

/**
 * The command `review`: writes the season's review of a study folder as one page, whole or not at all. Returns the exit code.
 *
 * @throws StudyError when the folder cannot be used, or holds no visit.
 *
 * @private
 */
export async function reviewFolder(folder: string, options: { readonly out: string }, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  try {
    progress.show(`Reading ${folder}`);
    const study = await readStudy(folder);
    requireVisits(study, folder, "to review");
    progress.show("Answering");
    const review = seasonReview(study);
    progress.show("Drawing the page");
    const path = join(options.out, "season-review.html");
    const today = new Date().toISOString().slice(0, 10);
    await writeFileWhole(path, await toHtmlPage(reviewPage(review, today)));
    progress.clear();
    terminal.stdout.write(`Wrote ${path}: ${countsOf(study.report.inputs)}\n`);
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
}

function countsOf(
  inputs: readonly { readonly rowsRead: number; readonly accepted: number; readonly setAside: number }[],
): string {
  const sum = (pick: (input: (typeof inputs)[number]) => number) => inputs.reduce((total, input) => total + pick(input), 0);
  const setAside = sum((input) => input.setAside);
  const read = sum((input) => input.rowsRead);
  const counts = `${read} ${read === 1 ? "row" : "rows"} read, ${sum((input) => input.accepted)} used, ${setAside} set aside.`;
  return setAside === 0 ? counts : `${counts}\nWhich, and why: underfoot check`;
}
