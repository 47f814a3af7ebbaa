import { lstat } from "node:fs/promises";
import { basename, join } from "node:path";
import { wrapped } from "../chart/parts/wrapped.js";
import { draftStudy } from "../read/draftStudy.js";
import type { StudyDraft } from "../read/StudyDraft.js";
import { studySchema } from "../read/studySchema.js";
import { StudyError } from "../study/StudyError.js";
import { exitCodes } from "./exitCodes.js";
import { progressLine } from "./progressLine.js";
import type { Terminal } from "./Terminal.js";
import { writeFileWhole } from "./writeFileWhole.js";

const WORDS =
  'A word that means that nothing was recorded goes to "missing"; one whose line is taken away is reported by the check.';

/**
 * The command `draft`: looks at the files of a folder and writes a proposal how to read them, as `study.json`, or beside one that is there as `study.draft.json`; neither
 * is ever written over. Prints what was recognised, on what evidence, and what must be answered. Returns the exit code.
 *
 * @throws StudyError when the folder cannot be read or written, no file holds a table that is known, or both names are taken.
 *
 * @private
 */
export async function draftFolder(folder: string, terminal: Terminal): Promise<number> {
  const progress = progressLine(terminal.stderr);
  progress.show(`Looking at ${folder}`);
  try {
    const draft = await draftStudy(folder);
    progress.clear();
    if (draft.notes.every(({ rows }) => rows === null)) {
      const looked = draft.notes.map(({ files, evidence }) => `${files.join(", ")}: ${evidence.join("; ")}`).join("\n");
      throw new StudyError(
        "nothing_recognised",
        `${folder}: no file was recognised as visits, horses, yards, changes, weather or outlines.${looked === "" ? "" : `\n${looked}`}`,
        "The first line of each file must name its columns; `underfoot new` makes an empty study to compare with.",
      );
    }
    const path = await freeName(folder);
    await writeFileWhole(path, `${JSON.stringify(draft.json, null, 2)}\n`);
    const schema = join(folder, "study.schema.json");
    if (!(await exists(schema))) await writeFileWhole(schema, `${JSON.stringify(await studySchema())}\n`);
    const width = Math.max(40, terminal.stdout.columns ?? 80);
    terminal.stdout.write(`${inWords(draft, folder, path, width).join("\n")}\n`);
    return exitCodes.clean;
  } finally {
    progress.clear();
  }
}

async function freeName(folder: string): Promise<string> {
  for (const name of ["study.json", "study.draft.json"]) {
    if (!(await exists(join(folder, name)))) return join(folder, name);
  }
  throw new StudyError(
    "already_there",
    `${join(folder, "study.json")} and study.draft.json are already there and are left as they are.`,
    "Move study.draft.json away to have a new one.",
  );
}

async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

function inWords({ notes, questions }: StudyDraft, folder: string, path: string, width: number): string[] {
  const item = (text: string, indent = "  ") =>
    wrapped(text, width - indent.length - 2).map((line, index) => `${indent}${index === 0 ? "- " : "  "}${line}`);
  const file = notes.flatMap(({ files, rows, evidence }) => [
    ...wrapped(`${files.join(", ")}: ${rows ?? "not recognised, and not read"}`, width),
    ...evidence.flatMap((each) => item(each)),
    "",
  ]);
  const proposal = `Wrote ${path}. It is a proposal: read it through before you rely on it.`;
  const name = basename(path);
  const next =
    name === "study.json"
      ? `Then: underfoot check ${folder}`
      : `study.json is left as it is. To use the draft, put it in its place.`;
  const open =
    questions.length === 0
      ? ["Nothing is left to answer."]
      : [
          ...wrapped(
            `To answer in ${name}, in the place of null (${questions.length}); until then the study is not read:`,
            width,
          ),
          ...(questions.some(({ path: at }) => at.includes(".words.")) ? wrapped(WORDS, width) : []),
          ...questions.flatMap(({ path: at, question }) => [
            ...item(at),
            ...wrapped(question, width - 4).map((line) => `    ${line}`),
          ]),
        ];
  return [...file, ...open, "", ...wrapped(proposal, width), ...wrapped(next, width)];
}
