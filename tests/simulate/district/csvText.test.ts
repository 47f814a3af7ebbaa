import { parse } from "csv-parse/sync";
import { expect, test } from "vitest";
import { csvText } from "../../../src/simulate/district/csvText.js";

// Read back by csv-parse, a reader of RFC 4180 written by others.
test("commas, quotes and line breaks come back as they were", () => {
  const cells = { a: 'owner says "sore", again', b: "two\nlines", c: 1.5 };
  expect(parse(csvText(["a", "b", "c", "d"], [{ cells }]), { columns: true })).toEqual([
    { a: 'owner says "sore", again', b: "two\nlines", c: "1.5", d: "" },
  ]);
});

test("a line can be cut or given a tail without quotes", () => {
  const cells = { a: 1, b: 2, c: 3 };
  const text = csvText(["a", "b", "c"], [{ cells, cutAfter: 2 }, { cells, tail: ",x" }, { cells: {} }]);
  expect(text).toBe("a,b,c\n1,2\n1,2,3,x\n,,\n");
});
