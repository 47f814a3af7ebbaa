import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Table } from "../../src/chart/Table.js";
import { toText } from "../../src/show/toText.js";
import { answer, longTable, notEnough, report } from "./shown.js";
import { studyOf } from "../study.js";

test("a table: numbers flush right, missing a dash, greyed rows starred and explained", () => {
  const text = toText({
    caption: "Thrush by yard",
    columns: [
      { name: "yard", title: "Yard" },
      { name: "n", title: "Horses seen" },
      { name: "share", title: "Share", percent: true },
    ],
    rows: [
      { yard: "Brook Farm", n: 41, share: 0.1951 },
      { yard: "Top", n: 3, share: null },
    ],
    greyed: [{ row: 1, reason: "fewer than 5 horses" }],
  });
  expect(text).toBe(
    [
      "Thrush by yard",
      "            Horses",
      "Yard          seen  Share",
      "----------  ------  -----",
      "Brook Farm      41    20%",
      "Top *            3      –",
      "* fewer than 5 horses",
      "",
    ].join("\n"),
  );
});

test("an answer: question, sentence, chart in words, table, cautions, method, in that order", () => {
  const text = toText(answer);
  const places = [answer.question, "Thrush was most", "Caption of the table", "Cautions", "- A foot not", "Method: "].map(
    (part) => text.indexOf(part),
  );
  expect(places).toEqual([...places].sort((a, b) => a - b));
  expect(places[0]).toBe(0);
  expect(text.replace(/\s+/g, " ")).toContain(
    "Unit: a horse in a month. 93 used, 4 left out because something was not recorded.",
  );
});

test("not enough data, a study and its report, a word", () => {
  expect(toText(notEnough)).toContain("Not enough data. Only one yard changed its bedding.");
  expect(toText(report)).toContain("Feet at visits");
  expect(toText(studyOf({ name: "Six yards", report }))).toMatch(/^Six yards: what was read\n=+\n/);
  expect(toText("**as it is**")).toBe("**as it is**\n");
});

test("long tables are cut with a count", () => {
  const text = toText(longTable(134));
  expect(text).toContain("The first 50 of 134 rows.");
  expect(text).not.toContain("Horse 51");
});

describe("whatever the width", () => {
  test("no line is longer, and every cell of the table is there", () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 120 }), (width) => {
        const lines = toText(answer, width).split("\n");
        expect(lines.filter((line) => line.length > width)).toEqual([]);
      }),
    );
    for (const width of [24, 40, 80]) for (const word of ["Captain", "127.5"]) expect(toText(answer, width)).toContain(word);
  });

  test("a wide table of a few rows falls into one line a cell", () => {
    expect(toText(longTable(1), 22)).toContain("  Yard: Brook Farm");
  });

  const months = ["January", "February", "March", "April", "May", "June", "July", "August", "September"];
  const wide = (rows: number): Table => ({
    caption: "Cases by month",
    columns: [{ name: "horse", title: "Horse" }, ...months.map((name) => ({ name, title: name }))],
    rows: Array.from({ length: rows }, (_, row) => ({
      horse: `Horse ${row + 1}`,
      ...Object.fromEntries(months.map((name, month) => [name, 1000 * (row + 1) + month])),
    })),
  });

  test("a wide table of more rows is set in blocks, each with the names of the rows and every cell once", () => {
    const text = toText(wide(3), 40);
    const lines = text.split("\n");
    expect(lines.filter((line) => line.length > 40)).toEqual([]);
    const heads = lines.filter((line) => line.startsWith("Horse ") && !/^Horse \d/.test(line));
    expect(heads.length).toBeGreaterThan(1);
    expect(heads.flatMap((line) => line.trim().split(/ +/).slice(1))).toEqual(months);
    const figures = (name: string) =>
      lines.filter((line) => line.startsWith(name)).flatMap((line) => line.slice(name.length).trim().split(/ +/).map(Number));
    [1, 2, 3].forEach((row) => {
      expect(figures(`Horse ${row}`)).toEqual(months.map((_, month) => 1000 * row + month));
    });
  });

  test("where not even one column fits beside the names, there are no blocks", () => {
    expect(
      toText(wide(3), 20)
        .split("\n")
        .filter((line) => line.length > 20),
    ).toEqual([]);
    const long: Table = { ...wide(3), rows: wide(3).rows.map((row) => ({ ...row, horse: "Bartholomew-the-Great" })) };
    expect(toText(long, 24)).toContain("  February: 1001");
  });

  test("too narrow is refused", () => {
    expect(() => toText("x", 10)).toThrow(RangeError);
  });
});
