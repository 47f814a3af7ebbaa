import fc from "fast-check";
import { expect, test } from "vitest";
import { cellAt } from "../../../src/read/text/cellAt.js";
import { cellsOf } from "../../../src/read/text/cellsOf.js";
import { isBlank } from "../../../src/read/text/isBlank.js";
import { recordCutter } from "../../../src/read/text/recordCutter.js";

const text = fc.stringMatching(/^[ab,;\t| é\u{1f40e}]{0,20}$/u);

test("the cells of a plain record are those that a split gives, whatever record came before", () => {
  fc.assert(
    fc.property(fc.constantFrom(",", ";", "\t", "|"), fc.array(text, { minLength: 1, maxLength: 5 }), (delimiter, records) => {
      const { plain } = recordCutter(delimiter);
      for (const record of records) expect(cellsOf(plain(record))).toEqual(record.split(delimiter));
    }),
  );
});

test("cells taken apart elsewhere come back as they are, also with delimiters and line ends inside, in turn with plain records", () => {
  fc.assert(
    fc.property(fc.array(fc.string(), { maxLength: 8 }), text, (cells, record) => {
      const { parted, plain } = recordCutter(",");
      expect(cellsOf(plain(record))).toEqual(record.split(","));
      expect(cellsOf(parted(cells))).toEqual(cells);
    }),
  );
});

test("a cell that the record does not have is empty, also when a longer record came before", () => {
  const { plain } = recordCutter(",");
  plain("a,b,c,d");
  const record = plain("x,y");
  expect([-1, 0, 1, 2, 3].map((index) => cellAt(record, index))).toEqual(["", "x", "y", "", ""]);
});

test("blank is what holds blanks only, from the cell named on", () => {
  const { plain } = recordCutter(",");
  expect(isBlank(plain(" ,\u00a0,\t"))).toBe(true);
  expect(isBlank(plain(" ,x,"))).toBe(false);
  expect(isBlank(plain("a,x, ,"), 2)).toBe(true);
  expect(isBlank(plain("a,x, ,"), 1)).toBe(false);
});
