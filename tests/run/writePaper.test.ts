import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import type { Answer } from "../../src/answer/Answer.js";
import { intervalLength } from "../../src/answer/intervalLength.js";
import { methodsSection } from "../../src/answer/methodsSection.js";
import { studyDeclaration } from "../../src/answer/studyDeclaration.js";
import { studyPaper } from "../../src/answer/studyPaper.js";
import { yardChanges } from "../../src/answer/yardChanges.js";
import { writePaper } from "../../src/run/writePaper.js";
import { seasonHerd } from "../answer/seasonHerd.js";
import { folderWith } from "./folders.js";

const study = seasonHerd();
const parts = [studyDeclaration(study), intervalLength(study), yardChanges(study)];
const replies = [...parts, studyPaper(study, parts)];
const digest = (data: Uint8Array) => createHash("sha256").update(data).digest("hex");
const cells = (path: string): Record<string, string>[] => parse(readFileSync(path, "utf8"), { columns: true });

test("tables as CSV, figures as SVG and PNG, methods, checklist map, session facts; all listed with checksums that hold", async () => {
  const folder = join(folderWith(), "deep", "paper");
  const files = await writePaper(replies, folder);
  expect(readdirSync(folder).sort()).toEqual([...files.map(({ file }) => file), "contents.csv"].sort());
  const contents = cells(join(folder, "contents.csv"));
  expect(contents.map((row) => [row["File"], row["SHA-256"]])).toEqual(files.map(({ file, sha256 }) => [file, sha256]));
  for (const { file, sha256 } of files) expect(digest(readFileSync(join(folder, file)))).toBe(sha256);
  expect(readFileSync(join(folder, "methods.md"), "utf8")).toBe(`${methodsSection(replies)}\n`);
  // The estimates in the file are those of the answer, in full precision.
  const effects = cells(join(folder, "interval-length-table-1.csv"));
  expect(effects.map((row) => Number(row["Odds ratio"]))).toEqual(
    (parts[1] as Answer).tables[0]!.rows.map((row) => row["estimate"]),
  );
  const svg = readFileSync(join(folder, "interval-length-figure-1.svg"), "utf8");
  expect(svg).toMatch(/^<svg[^>]* role="img"/);
  const png = readFileSync(join(folder, "interval-length-figure-1.png"));
  // PNG signature, W3C Portable Network Graphics (third edition), section 5.2; width in the header of section 11.2.1. Four dots a px, for print.
  expect([...png.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  expect(png.readUInt32BE(16)).toBe(4 * Math.round(Number(/ width="([\d.]+)"/.exec(svg)![1])));
  const captions = new Map(contents.map((row) => [row["File"]!, row["Holds"]!]));
  const tableOf = (start: string) => {
    const [file] = [...captions].find(([, holds]) => holds.startsWith(start))!;
    return cells(join(folder, file));
  };
  expect(tableOf("STROBE-Vet items")).toHaveLength(22);
  expect(tableOf("Seeds")[0]!["Seed"]).toBe("climate study");
  expect(tableOf("Versions").map((row) => row["Program"])).toEqual(["underfoot", "Node.js"]);
  expect(captions.get("interval-length-figure-1.svg")).toContain((parts[1] as Answer).charts[0]!.reading);
});

test("a cell that a spreadsheet would run has an apostrophe before it", async () => {
  const folder = folderWith();
  const answer = parts[1] as Answer;
  const [table] = answer.tables;
  const armed = { ...answer, charts: [], tables: [{ ...table!, rows: [{ ...table!.rows[0], name: "=1+1|cmd" }] }] };
  await writePaper([armed], folder);
  expect(cells(join(folder, "interval-length-table-1.csv"))[0]!["Analysis"]).toBe("'=1+1|cmd");
});

test("a second call takes away what it no longer writes, unless somebody changed it; other files stay", async () => {
  const folder = folderWith({ "notes.txt": "mine" });
  await writePaper(replies, folder);
  writeFileSync(join(folder, "interval-length-figure-1.svg"), "<svg>mended by hand</svg>");
  await writePaper([parts[0]!], folder);
  expect(readdirSync(folder).sort()).toEqual([
    ...["contents.csv", "interval-length-figure-1.svg", "methods.md", "notes.txt", "study-declaration-table-1.csv"],
  ]);
});

test("what cannot be drawn leaves the folder as it was", async () => {
  const folder = folderWith();
  await writePaper([parts[0]!], folder);
  const before = readdirSync(folder).map((file) => readFileSync(join(folder, file), "utf8"));
  const answer = parts[1] as Answer;
  const broken = { ...answer, charts: [{ ...answer.charts[0]!, spec: { mark: "no such mark", data: { values: [] } } }] };
  await expect(writePaper([parts[0]!, broken], folder)).rejects.toThrow();
  expect(readdirSync(folder).map((file) => readFileSync(join(folder, file), "utf8"))).toEqual(before);
});

test("a place that is a file is refused with a reason, and nothing is left beside it", async () => {
  const folder = folderWith({ taken: "a file" });
  await expect(writePaper([parts[0]!], join(folder, "taken"))).rejects.toMatchObject({ code: "cannot_write" });
  expect(readdirSync(folder)).toEqual(["taken"]);
});

test("no folder, no files", async () => {
  expect(await writePaper(replies, "")).toEqual([]);
  expect(existsSync("methods.md")).toBe(false);
});
