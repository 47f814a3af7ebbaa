import fc from "fast-check";
import { expect, test } from "vitest";
import { jsonFault } from "../../src/read/jsonFault.js";

test.each([
  ["", 1, 1, "the end of the file"],
  ['{"a": }', 1, 7, 'the character "}"'],
  ['{\n  "a": 1\n  "b": 2\n}', 3, 3, 'the character "\\""'],
  ['{\r\n"a": [1,]}', 2, 9, 'the character "]"'],
  ['{"a": 1,}', 1, 9, 'the character "}"'],
  ["{'a': 1}", 1, 2, 'the character "\'"'],
  ['{"a": tru}', 1, 7, 'the character "t"'],
  ['{"a": 01}', 1, 8, 'the character "1"'],
  ['{"a": "one\ntwo"}', 1, 11, 'the character "\\n"'],
  ['{"a": "one', 1, 11, "the end of the file"],
  ['{"a": "\\x"}', 1, 8, 'the character "\\\\"'],
  ['{"a": 1', 1, 8, "the end of the file"],
  ["[1]]", 1, 4, 'the character "]"'],
  ["{]", 1, 2, 'the character "]"'],
  ["[}", 1, 2, 'the character "}"'],
  ["// note\n{}", 1, 1, 'the character "/"'],
])("%j stops being JSON at line %i, column %i", (text, line, column, found) => {
  expect(jsonFault(text)).toEqual({ line, column, found });
});

// JSON.parse is the engine's own implementation of the standard.
test("a text has a fault exactly when JSON.parse refuses it", () => {
  const broken = fc
    .tuple(fc.json(), fc.nat(), fc.constantFrom("", ",", '"', "{", "}", "]", ":", "0", "\\", "\n", "x", "\u2028", "é"))
    .map(([text, at, mark]) => {
      const cut = at % (text.length + 1);
      return text.slice(0, cut) + mark + text.slice(cut + (at % 3));
    });
  fc.assert(
    fc.property(fc.oneof(fc.json(), broken, fc.string()), (text) => {
      let good = true;
      try {
        JSON.parse(text);
      } catch {
        good = false;
      }
      expect(jsonFault(text) === null).toBe(good);
    }),
    { numRuns: 2000 },
  );
});
