import fc from "fast-check";
import { expect, test } from "vitest";
import { literalValue } from "../../../src/run/parameters/literalValue.js";

test.each([
  ['"a\\"b\\n\\u00e9\\x41\\u{1F40E}";', 'a"b\né\u0041🐎', ";"],
  ["'it\\'s' // c", "it's", " // c"],
  ["`$5`", "$5", ""],
  ["-1_000.5e2", -100_050, ""],
  [".5;", 0.5, ";"],
  ["true", true, ""],
  ["null", null, ""],
  ["[ 1, 'b', null, ];", [1, "b", null], ";"],
  ["[]", [], ""],
])("%s is the value %j", (text, value, rest) => {
  expect(literalValue(text)).toEqual({ value, rest });
});

test.each([
  "trueish",
  "f(3)",
  "x",
  "`${x}`",
  '"open',
  "[1, x]",
  "[1 2]",
  "[[1]]",
  "{}",
  "12px",
  "0x1f",
  "1n",
  "undefined",
  "NaN",
  "",
])("%s would have to be computed", (text) => {
  expect(literalValue(text)).toBeNull();
});

test("what JSON writes for a plain value is read back, and what follows is left", () => {
  const plain = fc.oneof(
    fc.string({ unit: "binary" }),
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.boolean(),
    fc.constant(null),
  );
  fc.assert(
    fc.property(fc.oneof(plain, fc.array(plain)), (value) => {
      // -0 is written as 0.
      const expected = JSON.parse(JSON.stringify(value)) as unknown;
      expect(literalValue(`${JSON.stringify(value)}; // end`)).toEqual({ value: expected, rest: "; // end" });
    }),
  );
});
