import { expect, test } from "vitest";
import { delimiterOf } from "../../../src/read/draft/delimiterOf.js";

test.each([
  [["a,b", "1,2"], ","],
  [["a;b", "1,2;3"], ";"],
  [["a\tb\tc", "x, y\t1\t2"], "\t"],
  [["a|b", '"x|y"|2'], "|"],
  [["a;b;c", "1;2;3", "a note, with a comma;2;3"], ";"],
  [["alone", "1"], null],
  [["a,b;c", "1,2;3"], null],
  [[], null],
])("%j is parted by %j", (lines, delimiter) => {
  expect(delimiterOf(lines).delimiter).toBe(delimiter);
});
