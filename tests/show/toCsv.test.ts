import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Table, TableCell } from "../../src/chart/Table.js";
import { toCsv } from "../../src/show/toCsv.js";

function table(cells: readonly TableCell[]): Table {
  return { caption: "A table", columns: [{ name: "cell", title: "Cell" }], rows: cells.map((cell) => ({ cell })) };
}
const lines = (cells: readonly TableCell[]) => toCsv(table(cells)).split("\r\n").slice(1, -1);

test("headings, full precision, missing empty, proportions named as such", () => {
  const text = toCsv({
    caption: "Thrush",
    columns: [
      { name: "month", title: "Month" },
      { name: "share", title: "Share", percent: true },
      { name: "rainMm", title: "Rain (mm)", digits: 0 },
      { name: "vet", title: "Vet told" },
    ],
    rows: [
      { month: "May 2025", share: 0.123456789, rainMm: 41.27, vet: true },
      { month: 'Say, "June"', share: null, rainMm: -0.5, vet: false },
    ],
  });
  expect(text).toBe(
    'Month,Share (proportion),Rain (mm),Vet told\r\nMay 2025,0.123456789,41.27,yes\r\n"Say, ""June""",,-0.5,no\r\n',
  );
});

test("NaN is refused", () => {
  expect(() => toCsv(table([NaN]))).toThrow(RangeError);
});

// First characters after the OWASP page "CSV Injection", read on memory: = + - @ tab, line breaks, full-width = + - @.
describe("formulas never leave alive", () => {
  test.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "\uff1d1", '=HYPERLINK("x","y")'])("%j", (text) => {
    const [, cell] = parse(toCsv(table([text]))).map((row: string[]) => row[0]);
    expect(cell).toBe(`'${text}`);
  });

  test("a heading neither", () => {
    expect(toCsv({ caption: "", columns: [{ name: "a", title: "=cmd" }], rows: [] })).toBe("'=cmd\r\n");
  });

  test("a number keeps its sign", () => {
    expect(lines([-3.5, 4])).toEqual(["-3.5", "4"]);
  });

  test("a harmless text is left alone", () => {
    expect(lines(["near fore", "a=b", "1-2", "it's"])).toEqual(["near fore", "a=b", "1-2", "it's"]);
  });

  test("a spreadsheet that splits at semicolons finds nothing to run", () => {
    expect(lines(["x;=1+1"])).toEqual(['"x;=1+1"']);
  });
});

// csv-parse 7 is the reference reader of RFC 4180.
test("another program reads back what was written", () => {
  const safe = fc
    .string({ unit: "binary" })
    .filter((text) => text !== "" && !/^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/.test(text));
  fc.assert(
    fc.property(fc.array(safe, { minLength: 1, maxLength: 8 }), (texts) => {
      const back: string[][] = parse(toCsv(table(texts)), { bom: false });
      expect(back.slice(1).map(([cell]) => cell)).toEqual(texts);
    }),
  );
});
