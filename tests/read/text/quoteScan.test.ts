import { CsvError, parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { quoteScan } from "../../../src/read/text/quoteScan.js";

test("whole, open and broken lines", () => {
  expect(quoteScan('a,"b, c",d', ",")).toEqual({ state: "closed", delimiters: 2 });
  expect(quoteScan('a, "b ""c""" ,d', ",")).toEqual({ state: "closed", delimiters: 2 });
  expect(quoteScan('a,"b, c', ",")).toEqual({ state: "open", delimiters: 1 });
  expect(quoteScan('a,b"c', ",").state).toBe("broken");
  expect(quoteScan('a,"b"c', ",").state).toBe("broken");
});

test("a line that goes on inside a quoted cell", () => {
  expect(quoteScan('b, c",d', ",", { inside: true })).toEqual({ state: "closed", delimiters: 1 });
  expect(quoteScan("b, c", ",", { inside: true })).toEqual({ state: "open", delimiters: 0 });
  expect(quoteScan('b"c', ",", { inside: true }).state).toBe("broken");
});

const lines = (characters: RegExp) => fc.stringMatching(characters).filter((text) => text.trim() !== "");

/** What csv-parse makes of a line alone: one record of so many delimiters, a quote not closed, or a refusal. */
function referenceScan(text: string, relaxed: boolean): string {
  try {
    const records = parse(text, { relax_column_count: true, trim: !relaxed, relax_quotes: relaxed });
    return `closed ${String((records[0]?.length ?? 0) - 1)}`;
  } catch (error) {
    return error instanceof CsvError && error.code === "CSV_QUOTE_NOT_CLOSED" ? "open" : "broken";
  }
}

function ourScan(text: string, relaxed: boolean): string {
  const { state, delimiters } = quoteScan(text, ",", { relaxed });
  return state === "closed" ? `closed ${String(delimiters)}` : state;
}

test("csv-parse finds the same, strict and relaxed", () => {
  fc.assert(
    fc.property(lines(/^[a",]{0,12}$/), fc.boolean(), (text, relaxed) => {
      expect(ourScan(text, relaxed)).toBe(referenceScan(text, relaxed));
    }),
    { numRuns: 2000 },
  );
});

// With blanks the scan may refuse more (csv-parse lets a second quoted text follow `"" `), but never takes a record otherwise.
test("with blanks around cells, what is taken is taken alike", () => {
  fc.assert(
    fc.property(lines(/^[a ",]{0,12}$/), fc.boolean(), (text, relaxed) => {
      const ours = ourScan(text, relaxed);
      if (ours !== "broken") expect(ours).toBe(referenceScan(text, relaxed));
    }),
    { numRuns: 2000 },
  );
});
