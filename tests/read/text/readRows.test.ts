import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { cellsOf } from "../../../src/read/text/cellsOf.js";
import type { CutRecord } from "../../../src/read/text/CutRecord.js";
import { readRows } from "../../../src/read/text/readRows.js";
import { textBlocks } from "../../../src/read/text/textBlocks.js";
import { chunksOf, rowsOf } from "./rowsOf.js";

const isDate = ([date = ""]: readonly string[]) => /^\d{4}-\d{2}-\d{2}$/.test(date);
const header = "date,horse,note";

test("cells of plain and quoted rows", async () => {
  expect(await rowsOf(`${header}\n2025-01-01,A,\n2025-01-02,"B, the 2nd","he said ""no"""\n`)).toEqual([
    "1: date|horse|note",
    "2: 2025-01-01|A|",
    '3: 2025-01-02|B, the 2nd|he said "no"',
  ]);
});

// The worked examples of RFC 4180, section 2, points 1 to 7.
test("the examples of RFC 4180", async () => {
  expect(await rowsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")).toEqual(["1: aaa|bbb|ccc", "2: zzz|yyy|xxx"]);
  expect(await rowsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx")).toEqual(["1: aaa|bbb|ccc", "2: zzz|yyy|xxx"]);
  expect(await rowsOf('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual(["1: aaa|bbb|ccc", "2: zzz|yyy|xxx"]);
  expect(await rowsOf('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual(["1: aaa|b\nbb|ccc", "3: zzz|yyy|xxx"]);
  expect(await rowsOf('"aaa","b""bb","ccc"')).toEqual(['1: aaa|b"bb|ccc']);
});

test("lines are counted physically: blank lines and quoted line breaks count, and make no rows", async () => {
  const text = `\n${header}\n\n2025-01-01,A,"one\ntwo\n\nfour"\r\n   \n2025-01-02,B,x\r2025-01-03,C,y`;
  expect(await rowsOf(text)).toEqual([
    "2: date|horse|note",
    "4: 2025-01-01|A|one\ntwo\n\nfour",
    "9: 2025-01-02|B|x",
    "10: 2025-01-03|C|y",
  ]);
});

test.each([1, 2, 3, 7, 13, 64, 1000])("the cut of the chunks makes no difference (%i bytes)", async (size) => {
  const text = `${header}\n2025-01-01,A,"one\ntwo"\n2025-01-02,"B",6" wide\n2025-01-03,C,"open\n2025-01-04,D,ok\n`;
  expect(await rowsOf(text, size, isDate)).toEqual([
    "1: date|horse|note",
    "2: 2025-01-01|A|one\ntwo",
    '4: 2025-01-02|B|6" wide (bare quote)',
    "5: !stray_quote",
    "6: 2025-01-04|D|ok",
  ]);
});

test("a stray quote costs its own row and no good row after it", async () => {
  const good = Array.from({ length: 500 }, (_, day) => `2025-02-01,H${String(day)},fine`);
  const told = await rowsOf([header, '2025-01-01,A,"wet', ...good].join("\n"), 4096, isDate);
  expect(told[1]).toBe("2: !stray_quote");
  expect(told).toHaveLength(502);
});

test("two stray quotes that would close one another swallow nothing", async () => {
  const text = [header, '2025-01-01,A,"wet', "2025-01-02,B,fine", '2025-01-03,C,dry"', "2025-01-04,D,fine"].join("\n");
  expect(await rowsOf(text, 1000, isDate)).toEqual([
    "1: date|horse|note",
    "2: !stray_quote",
    "3: 2025-01-02|B|fine",
    '4: 2025-01-03|C|dry" (bare quote)',
    "5: 2025-01-04|D|fine",
  ]);
});

test("a quoted note over several lines is believed, also when a line of it has as many commas as a row", async () => {
  const text = `${header}\n2025-01-01,A,"moved, hay, straw\nstill wet, cold, windy\nend"\n2025-01-02,B,x`;
  expect(await rowsOf(text, 1000, isDate)).toEqual([
    "1: date|horse|note",
    "2: 2025-01-01|A|moved, hay, straw\nstill wet, cold, windy\nend",
    "5: 2025-01-02|B|x",
  ]);
});

test("a quoted cell is given up after a hundred lines, and each of them is looked at alone", async () => {
  const prose = Array.from({ length: 150 }, () => "and on");
  const told = await rowsOf([header, '2025-01-01,A,"it', ...prose, 'end"', "2025-01-02,B,x"].join("\n"), 1000, isDate);
  expect(told[1]).toBe("2: !stray_quote");
  expect(told.at(-1)).toBe("154: 2025-01-02|B|x");
  expect(told).toHaveLength(1 + 1 + 150 + 1 + 1);
});

test("a quoted cell that reaches over a damaged line is not put together", async () => {
  const told = await rowsOf(`${header}\n2025-01-01,A,"one\nt\0wo\nthree"\n2025-01-02,B,x`, 1000, isDate);
  expect(told).toEqual(["1: date|horse|note", "2: !stray_quote", "3: !nul_byte", '4: three" (bare quote)', "5: 2025-01-02|B|x"]);
});

test("lines that a quote would join into a record of another width are looked at one by one", async () => {
  const told = await rowsOf(`${header}\n2025-01-01,"A\nb",c,d,e\n2025-01-02,B,x`, 1000, isDate);
  expect(told).toEqual(["1: date|horse|note", "2: !stray_quote", '3: b"|c|d|e (bare quote)', "4: 2025-01-02|B|x"]);
});

test("a quote left open at the end of the file is a fault of its line", async () => {
  expect(await rowsOf(`${header}\n2025-01-01,A,"one`, 1000, isDate)).toEqual(["1: date|horse|note", "2: !stray_quote"]);
});

test("text after a closing quote is kept as it stands", async () => {
  expect(await rowsOf(`${header}\n2025-01-01,A,"wet" field`)).toEqual([
    "1: date|horse|note",
    '2: 2025-01-01|A|"wet" field (bare quote)',
  ]);
});

const cell = fc.stringMatching(/^[a-z",;' é\n]{0,8}$/).map((text) => text.trim());
const record = fc.array(cell, { minLength: 3, maxLength: 3 }).filter((cells) => cells.some((text) => text !== ""));
const written = (cells: readonly string[]) =>
  cells.map((text) => (/[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text)).join(",");

test("any well-formed file is read as csv-parse alone reads it", async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(record, { minLength: 1, maxLength: 12 }),
      fc.constantFrom("\n", "\r\n"),
      fc.integer({ min: 4, max: 60 }),
      async (records, end, size) => {
        const text = ["a,b,c", ...records.map(written)].join(end);
        const told = await rowsOf(text, size, () => false);
        const expected = parse(text, { record_delimiter: end, trim: true });
        expect(told.map((row) => row.replace(/^\d+: /, ""))).toEqual(expected.map((cells) => cells.join("|")));
      },
    ),
    { numRuns: 150 },
  );
});

test("a record over several lines is handed on as it stands in the file, with LF inside its cells", async () => {
  const told: [readonly string[], string][] = [];
  const sink = {
    width: () => 2,
    fits: () => false,
    row: (record: CutRecord, _line: number, _bare: boolean, text: string) => told.push([cellsOf(record), text]),
    refused: () => undefined,
  };
  const send = (content: string) => readRows(textBlocks(chunksOf(content, 3)), ",", sink);
  await send('a,"x\r\ny"\r\nb,"x\ry"\r\nc,"x\ny"\n');
  expect(told).toEqual([
    [["a", "x\ny"], 'a,"x\r\ny"'],
    [["b", "x\ny"], 'b,"x\ry"'],
    [["c", "x\ny"], 'c,"x\ny"'],
  ]);
});
