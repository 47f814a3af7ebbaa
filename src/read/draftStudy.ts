import { readdir } from "node:fs/promises";
import { basename, resolve } from "node:path";
import { fileTables } from "../study/fileTables.js";
import { grouped } from "../study/grouped.js";
import { StudyError } from "../study/StudyError.js";
import type { TableKind } from "../study/TableKind.js";
import { draftedMapping, type DraftedMapping } from "./draft/draftedMapping.js";
import type { Sample } from "./draft/Sample.js";
import { sampled } from "./draft/sampled.js";
import { tableMatch, type TableMatch } from "./draft/tableMatch.js";
import { refusals } from "./report/refusals.js";
import type { DraftNote, StudyDraft } from "./StudyDraft.js";
import type { StudyJson } from "./StudyJson.js";
import { studyPath } from "./text/studyPath.js";
import { systemCode } from "./text/systemCode.js";

const TABLE_FILE = /\.(csv|tsv|txt)$/i;
const NOT_DATA = /\.set-aside\.(csv|txt)$/i;

/**
 * Looks at the CSV, TSV and text files of a folder and proposes a `study.json` that reads them. Nothing is loaded and nothing written. What the files do not say, such as
 * the order of dates that can be read in two ways or a unit that no header names, is left as null with a question; a study in which null still stands there is refused.
 * The proposal rests on headers and on the first 20,000 lines or so of each file; the evidence is told.
 *
 * @throws StudyError when the folder cannot be read.
 */
export async function draftStudy(folder: string): Promise<StudyDraft> {
  const names = await readdir(folder).catch((error: unknown) => {
    const code = systemCode(error);
    if (code === "ENOENT") throw refusals.folderMissing(folder);
    throw code === "ENOTDIR" ? refusals.notAFolder(folder) : refusals.unreadable(folder, code);
  });
  const zod = await import("zod");
  const notes: DraftNote[] = [];
  const known: { sample: Sample; match: TableMatch }[] = [];
  for (const name of names.filter((each) => TABLE_FILE.test(each) && !NOT_DATA.test(each)).sort()) {
    const found = await lookedAt(folder, name);
    if ("match" in found) known.push(found);
    else notes.push(found);
  }
  const alike = [
    ...grouped(known, ({ sample, match }) =>
      JSON.stringify([match.kind, sample.delimiter, sample.encoding, sample.header]),
    ).values(),
  ];
  const drafted = alike.flatMap((group) => {
    const [first, ...rest] = group;
    if (first === undefined) return [];
    const samples = [first.sample, ...rest.map(({ sample }) => sample)] as const;
    return [{ match: first.match, ...draftedMapping(zod, samples, first.match) }];
  });
  const files = filesOf(drafted);
  const questions = drafted.flatMap((each) => {
    const at = files[each.match.kind]?.indexOf(each.mapping) ?? -1;
    return each.questions.map(({ path, question }) => ({ path: `files.${each.match.kind}.${at}.${path}`, question }));
  });
  const ofKnown = drafted.map(({ match, mapping, evidence, plain }): DraftNote => {
    const as = plain && evidence.length === 0 ? ["its columns are named and written as the table has them"] : [];
    return { files: [mapping.file].flat(), rows: `${match.kind}, ${match.row} a row`, evidence: [...evidence, ...as] };
  });
  const json: StudyJson = {
    $schema: "./study.schema.json",
    name: basename(resolve(folder)),
    gaugeDay: null,
    ...(Object.keys(files).length > 0 && { files }),
  };
  return { json, notes: [...ofKnown, ...notes], questions };
}

async function lookedAt(folder: string, name: string): Promise<{ sample: Sample; match: TableMatch } | DraftNote> {
  const unknown = (why: string): DraftNote => ({ files: [name], rows: null, evidence: [why] });
  try {
    const path = await studyPath(folder, name, true);
    const sample = await sampled(path ?? "", name);
    const match = tableMatch(sample.header);
    if (match !== null) return { sample, match };
    const shown = sample.header.slice(0, 8).map((header) => `"${header.slice(0, 40)}"`);
    return unknown(`its first line names no table: ${shown.length === 0 ? "it is empty" : shown.join(", ")}`);
  } catch (error) {
    if (error instanceof StudyError) return unknown(error.message);
    throw error;
  }
}

/** Files of the usual name that need no mapping are left out, unless their table has others too. */
function filesOf(drafted: readonly (DraftedMapping & { readonly match: TableMatch })[]): NonNullable<StudyJson["files"]> {
  const files: Partial<Record<TableKind, DraftedMapping["mapping"][]>> = {};
  for (const { kind, file } of fileTables) {
    const own = drafted.filter(({ match }) => match.kind === kind);
    const needed = own.some(({ plain, mapping }) => !plain || mapping.file !== file);
    if (needed) files[kind] = own.map(({ mapping }) => mapping);
  }
  return files;
}
