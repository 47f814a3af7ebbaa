import { expect, test } from "vitest";
import type { Table } from "../../src/chart/Table.js";
import { toText } from "../../src/show/toText.js";
import { wordsBelow } from "../../src/show/wordsBelow.js";

const long = "Estimating equations with season held equal, limits by t.";
const columns: Table["columns"] = [
  { name: "yard", title: "Yard" },
  { name: "held", title: "Held equal", below: "alike" },
  { name: "note", title: "Note", below: "long" },
];
const table = (rows: Table["rows"]): Table => ({ caption: "Yards", columns, rows });
const names = (found: { readonly table: Table }) => found.table.columns.map(({ name }) => name);

test("words that every row has are said once under the table, long or short", () => {
  const found = wordsBelow(
    table([
      { yard: "A", held: "season", note: long },
      { yard: "B", held: "season", note: long },
    ]),
  );
  expect(names(found)).toEqual(["yard"]);
  expect(found.words).toEqual(["Held equal: season", `Note: ${long}`]);
});

test("long words that differ, or that a row lacks, are numbered; equal ones share a number and none stays none", () => {
  const found = wordsBelow(
    table([
      { yard: "A", held: "season", note: long },
      { yard: "B", held: "nothing", note: "Short." },
      { yard: "C", held: null, note: null },
      { yard: "D", held: "season", note: long },
    ]),
  );
  expect(names(found)).toEqual(["yard", "held", "note"]);
  expect(found.table.rows.map(({ note }) => note)).toEqual(["1", "2", null, "1"]);
  expect(found.table.rows.map(({ held }) => held)).toEqual(["season", "nothing", null, "season"]);
  expect(found.words).toEqual([`Note 1: ${long}`, "Note 2: Short."]);
});

test("short words that differ stay in their cells, and a column without a word is left out", () => {
  const rows = [
    { yard: "A", held: null, note: "Few." },
    { yard: "B", held: "", note: "Many." },
  ];
  const found = wordsBelow(table(rows));
  expect(names(found)).toEqual(["yard", "note"]);
  expect(found.table.rows).toEqual(rows);
  expect(found.words).toEqual([]);
});

test("one word that only some rows have is not said of all", () => {
  const found = wordsBelow(
    table([
      { yard: "A", held: "season", note: "Few." },
      { yard: "B", held: null, note: null },
    ]),
  );
  expect(names(found)).toEqual(["yard", "held", "note"]);
  expect(found.words).toEqual([]);
});

test("a table without rows and columns that are not marked are left as they are", () => {
  expect(wordsBelow(table([]))).toEqual({ table: table([]), words: [] });
  const plain: Table = { caption: "Plain", columns: [{ name: "note", title: "Note" }], rows: [{ note: long }] };
  expect(wordsBelow(plain)).toEqual({ table: plain, words: [] });
});

test("in print, rows that are cut say nothing", () => {
  const rows = Array.from({ length: 60 }, (_, index) => ({ yard: `Y${index}`, held: "season", note: index < 55 ? null : long }));
  const text = toText(table(rows));
  expect(text).toContain("Held equal: season");
  expect(text).toContain("The first 50 of 60 rows.");
  expect(text).not.toContain(long.slice(0, 40));
  expect(toText(table(rows.slice(20)))).toContain(`Note: ${long}`.slice(6, 46));
});
