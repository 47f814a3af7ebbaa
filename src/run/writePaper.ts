import { createHash, randomUUID } from "node:crypto";
import { mkdir, readFile, rename, rm } from "node:fs/promises";
import { basename, dirname, join, resolve } from "node:path";
import type { Answer, NotEnoughData } from "../answer/Answer.js";
import { methodsSection } from "../answer/methodsSection.js";
import { paperParts } from "../answer/paperParts.js";
import type { Table } from "../chart/Table.js";
import { toCsv } from "../show/toCsv.js";
import { toPng } from "../show/toPng.js";
import { toSvg } from "../show/toSvg.js";
import { StudyError } from "../study/StudyError.js";
import { writeFileWhole } from "./writeFileWhole.js";
import { writeRefusal } from "./writeRefusal.js";

/** One file of a paper. */
export interface PaperFile {
  readonly file: string;
  /** Caption of the table, or what the figure says. */
  readonly holds: string;
  readonly sha256: string;
}

interface Draft {
  readonly file: string;
  readonly holds: string;
  readonly data: string | Uint8Array;
}

const contentsName = "contents.csv";

/**
 * Writes what replies hold into a folder, for a paper: every table as CSV (a cell that a spreadsheet would run has an apostrophe before it), every figure as SVG and as PNG,
 * the methods section as `methods.md`, and `contents.csv` with what each file holds and its SHA-256. Versions, settings, seeds and checksums of the inputs are tables of
 * `studyPaper`: give its reply among the others. Returns the files, as `contents.csv` lists them. With an empty folder name nothing is written.
 *
 * All files are made before the first is put into its place, so that what cannot be drawn or written leaves the folder as it was. Files that an earlier call wrote, that
 * nobody changed since, and that this one does not write are taken away; all others stay.
 *
 * @throws StudyError `cannot_write`.
 */
export async function writePaper(replies: readonly (Answer | NotEnoughData)[], folder: string): Promise<readonly PaperFile[]> {
  if (folder === "") return [];
  const drafts = await draftsOf(replies);
  const files = drafts.map(({ file, holds, data }): PaperFile => ({ file, holds, sha256: checksum(data) }));
  const target = resolve(folder);
  const stage = join(dirname(target), `.${basename(target)}.${randomUUID()}.tmp`);
  try {
    const contents = { file: contentsName, data: toCsv(contentsTable(files)) };
    for (const { file, data } of [...drafts, contents]) await writeFileWhole(join(stage, file), data);
    await mkdir(target, { recursive: true });
    const old = await leftOver(target, files);
    for (const { file } of [...drafts, contents]) await rename(join(stage, file), join(target, file));
    for (const file of old) await rm(join(target, file));
  } catch (fault) {
    throw fault instanceof StudyError ? fault : writeRefusal(folder, fault);
  } finally {
    await rm(stage, { recursive: true, force: true });
  }
  return files;
}

async function draftsOf(replies: readonly (Answer | NotEnoughData)[]): Promise<Draft[]> {
  const { tables, figures } = paperParts(replies);
  const drafts: Draft[] = [
    { file: "methods.md", holds: "Methods, from what was run", data: `${methodsSection(replies)}\n` },
    ...tables.map(({ name, table }) => ({ file: `${name}.csv`, holds: table.caption, data: toCsv(table) })),
  ];
  for (const { name, chart } of figures) {
    const holds = `${chart.title}. ${chart.reading}`;
    drafts.push({ file: `${name}.svg`, holds, data: await toSvg(chart) });
    drafts.push({ file: `${name}.png`, holds, data: (await toPng(chart, { scale: 4 })).png });
  }
  return drafts;
}

function contentsTable(files: readonly PaperFile[]): Table {
  return {
    caption: "Files of the paper",
    columns: [
      { name: "file", title: "File" },
      { name: "holds", title: "Holds" },
      { name: "sha256", title: "SHA-256" },
    ],
    rows: files.map((file) => ({ ...file })),
  };
}

/** Files of an earlier call, as they were written, that are not among these. */
async function leftOver(folder: string, files: readonly PaperFile[]): Promise<string[]> {
  const contents = await readFile(join(folder, contentsName), "utf8").catch(() => "");
  const listed = [...contents.matchAll(/^([\w.-]+),.*,([0-9a-f]{64})\r$/gm)].map(([, file = "", sha256]) => ({ file, sha256 }));
  const old: string[] = [];
  for (const { file, sha256 } of listed) {
    if (files.some((each) => each.file === file) || file === contentsName) continue;
    const data = await readFile(join(folder, file)).catch(() => null);
    if (data !== null && checksum(data) === sha256) old.push(file);
  }
  return old;
}

function checksum(data: string | Uint8Array): string {
  return createHash("sha256").update(data).digest("hex");
}
