import fc from "fast-check";
import iconv from "iconv-lite";
import { parse } from "csv-parse/sync";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import type { SetAsideFile } from "../../src/read/SetAsideRow.js";
import { setAsideFiles } from "../../src/run/setAsideFiles.js";
import { inFolder } from "../read/folder.js";
import { readStudy } from "../../src/read/readStudy.js";
import { folderWith } from "./folders.js";

const file: SetAsideFile = {
  ...{ file: "visits.csv", delimiter: ",", encoding: "utf-8" },
  header: { text: "date,horse,foot", cells: ["date", "horse", "foot"] },
};
const row = (cells: readonly string[], line = 2) => ({
  ...{ line, text: cells.join(","), bytes: null, cells, reasons: ["foot: no foot, none at all"] },
});

test("the rows as they stand in one file, and the same cells with line, reasons and guard in another", async () => {
  const folder = folderWith();
  const files = await setAsideFiles(folder);
  files.sink(file, row(["2025-03-01", "Ash", "XX"], 7));
  files.sink(file, row(["-3", "++", '=HYPERLINK("x")'], 9));
  expect(files.finish()).toEqual(["visits.set-aside.csv", "visits.set-aside.txt"]);
  expect(readFileSync(join(folder, "visits.set-aside.txt"), "utf8")).toBe(
    'date,horse,foot\n2025-03-01,Ash,XX\n-3,++,=HYPERLINK("x")\n',
  );
  expect(readFileSync(join(folder, "visits.set-aside.csv"), "utf8").split("\r\n")).toEqual([
    "\uFEFFset_aside_line,set_aside_because,set_aside_guarded,date,horse,foot",
    '7,"foot: no foot, none at all",,2025-03-01,Ash,XX',
    `9,"foot: no foot, none at all",horse; foot,-3,'++,"'=HYPERLINK(""x"")"`.replace("horse; foot", '"horse; foot"'),
    "",
  ]);
});

test("no cell leaves as a formula under any delimiter, and every cell comes back", async () => {
  const cell = fc.oneof(
    fc.string({ maxLength: 12 }),
    fc.constantFrom("=1+1", "+a", "-b", "@c", "\t=d", ";=1", "x;=1", "|=1", "'", "\uff1de", "-3,5", "-9"),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 5 }), async (rows) => {
      await inFolder({}, async (folder) => {
        const files = await setAsideFiles(folder);
        for (const cells of rows) files.sink(file, row(cells));
        files.finish();
        const text = readFileSync(join(folder, "visits.set-aside.csv"), "utf8");
        const back = parse(text, { bom: true, relax_column_count: true, record_delimiter: "\r\n" }).slice(1);
        const names = ["date", "horse", "foot"];
        back.forEach(([, , guarded = "", ...cells], index) => {
          const live = guarded.split("; ");
          expect(cells.map((text, at) => (live.includes(names[at] ?? "") ? text.slice(1) : text))).toEqual(rows[index]);
        });
        // A spreadsheet set to another delimiter finds none of it outside quotes, so that no further cell begins.
        expect(text.replace(/"(?:[^"]|"")*"/g, "")).not.toMatch(/[;\t|]/);
        for (const cell of parse(text, { bom: true, relax_column_count: true, record_delimiter: "\r\n" }).flat())
          if (!/^[+-]?\d+([.,]\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[=+\-@\t\r\n\uff1d]/);
      });
    }),
    { numRuns: 150 },
  );
});

test("bytes that are no text come back as they were, and a row that cannot be split stands in one cell", async () => {
  const folder = folderWith();
  const header = Buffer.from("visit_date,horse_id,foot\n");
  const bad = Buffer.concat([Buffer.from("2025-03-01,R"), Buffer.from([0xfc, 0xff]), Buffer.from("be,LF")]);
  const stray = Buffer.from('2025-03-02,"Ash,LF');
  const visits = Buffer.concat([header, bad, Buffer.from("\n"), stray, Buffer.from("\n")]);
  await inFolder({ "study.json": '{"name":"T"}', "visits.csv": visits }, async (study) => {
    const files = await setAsideFiles(folder);
    await readStudy(study, { today: "2025-07-01", setAside: files.sink });
    files.finish();
  });
  expect(readFileSync(join(folder, "visits.set-aside.txt")).equals(visits)).toBe(true);
  const table = parse(readFileSync(join(folder, "visits.set-aside.csv"), "utf8"), { bom: true, relax_column_count: true });
  expect(table[2]?.slice(3)).toEqual(['2025-03-02,"Ash,LF']);
});

test.each(["windows-1252", "utf-16"] as const)("rows of a file in %s are written in it", async (encoding) => {
  const folder = folderWith();
  const lines = ["visit_date;horse_id;foot;note", "soon;Rübe;LF;naß"];
  const encoded = iconv.encode(lines.join("\n") + "\n", encoding === "utf-16" ? "utf16le" : encoding, {
    addBOM: encoding === "utf-16",
  });
  const files = { visits: [{ file: "sub/v.csv", delimiter: ";", encoding }] };
  const study = folderWith({ "study.json": JSON.stringify({ name: "T", files }) });
  const { mkdirSync, writeFileSync } = await import("node:fs");
  mkdirSync(join(study, "sub"));
  writeFileSync(join(study, "sub", "v.csv"), encoded);
  const out = await setAsideFiles(folder);
  await readStudy(study, { today: "2025-07-01", setAside: out.sink });
  expect(out.finish()).toEqual(["sub-v.set-aside.csv", "sub-v.set-aside.txt"]);
  expect(readFileSync(join(folder, "sub-v.set-aside.txt")).equals(encoded)).toBe(true);
  const back = iconv.decode(readFileSync(join(folder, "sub-v.set-aside.csv")), encoding === "utf-16" ? "utf16le" : encoding);
  expect(back.split("\r\n")[1]).toMatch(/^2;"?visit_date: "*soon"* is not a calendar day"?;;soon;Rübe;LF;naß$/);
});

test("what is given up leaves nothing behind", async () => {
  const folder = folderWith();
  const files = await setAsideFiles(folder);
  files.sink(file, row(["a", "b", "c"]));
  files.discard();
  expect(readdirSync(folder)).toEqual([]);
});
