import { join } from "node:path";
import { dueTable } from "../answer/dueTable.js";
import { focusOn } from "../answer/focusOn.js";
import { readStudy } from "../read/readStudy.js";
import { dueEvents } from "../show/dueEvents.js";
import { duePage } from "../show/duePage.js";
import { toCalendar } from "../show/toCalendar.js";
import { toCsv } from "../show/toCsv.js";
import { toHtmlPage } from "../show/toHtmlPage.js";
import { version } from "../study/version.js";
import { withSettings } from "../study/withSettings.js";
import { StudyError } from "../study/StudyError.js";
import { fileSlug } from "./fileSlug.js";
import { progressLine } from "./progressLine.js";
import { studyExitCode } from "./studyExitCode.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

/** What the command `due` is asked. */
export interface DueOptions {
  readonly out: string;
  /** Day of the list, `YYYY-MM-DD`; that of the study when left out. */
  readonly asOf?: string;
  /** Only the horses of this yard; no other yard is named. */
  readonly yard?: string;
}

/**
 * The command `due`: writes who is due and who is over as a page, a CSV file and a calendar. Returns the exit code.
 *
 * @throws StudyError when the folder or the day cannot be used, or no horse is there on that day.
 *
 * @private
 */
export async function dueFolder(folder: string, options: DueOptions, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  try {
    progress.show(`Reading ${folder}`);
    const read = await readStudy(folder);
    const { asOf, yard } = options;
    const whole = asOf === undefined ? read : withSettings(read, { asOf });
    const study = yard === undefined ? whole : focusOn(whole, { yardId: yard });
    const name = yard ?? study.name;
    const table = dueTable(study);
    if (table.rows.length === 0) {
      throw new StudyError(
        "nobody_due",
        `${folder} holds no horse that is ${yard === undefined ? "there" : `at ${yard}`} on the day of the list.`,
        `Give another day with --as-of, or run: underfoot check ${folder}`,
      );
    }
    progress.show("Writing the list");
    const now = new Date().toISOString();
    const events = dueEvents(study);
    const calendar = { name: `Due: ${name}`, stamp: now, program: `underfoot ${version}` };
    const base = yard === undefined ? "due-list" : `due-list-${fileSlug(yard)}`;
    const files: [file: string, text: string][] = [
      [`${base}.html`, await toHtmlPage(duePage({ ...study, name }, now.slice(0, 10)))],
      [`${base}.csv`, toCsv(table)],
      ...(events.length === 0 ? [] : [[`${base}.ics`, toCalendar(events, calendar)] satisfies [string, string]]),
    ];
    for (const [file, text] of files) await writeFileWhole(join(options.out, file), text);
    progress.clear();
    terminal.stdout.write(`Wrote ${files.map(([file]) => join(options.out, file)).join(", ")}\n`);
    if (events.length === 0) terminal.stdout.write("No calendar: no horse on the list has a date.\n");
    return studyExitCode(study);
  } finally {
    progress.clear();
  }
}
