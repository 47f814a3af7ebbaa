import fc from "fast-check";
import { expect, test } from "vitest";
import { textTable } from "../../../src/read/text/textTable.js";

test("a piece of a text finds what a map finds by the piece cut out", () => {
  const piece = fc.stringMatching(/^[abé]{0,4}$/);
  fc.assert(
    fc.property(fc.array(fc.tuple(piece, piece, piece), { maxLength: 60 }), (rows) => {
      const { find, keep, texts } = textTable<number>();
      const map = new Map<string, number>();
      rows.forEach(([before, cell, after], index) => {
        const line = before + cell + after;
        const found = find(line, before.length, before.length + cell.length);
        expect(found).toBe(map.get(cell));
        if (found !== undefined) return;
        keep(cell, index);
        map.set(cell, index);
      });
      expect(new Map(texts)).toEqual(map);
    }),
  );
});

// Found by search: each pair leads FNV-1a from one state to one state, so that all sixteen texts have the same hash.
const PAIRS = [
  ["7yzla", "e6apa"],
  ["9tzla", "g1cpa"],
  ["05zla", "bpcpa"],
  ["05zla", "bpcpa"],
];
const ONE_HASH = PAIRS.reduce<string[]>((texts, pair) => texts.flatMap((text) => pair.map((next) => text + next)), [""]);

test("texts with one hash are told apart, and no more than eight of them are remembered", () => {
  const { find, keep, texts } = textTable<string>();
  for (const text of ONE_HASH) keep(text, text);
  expect(texts.size).toBe(8);
  for (const text of ONE_HASH.slice(0, 8)) expect(find(text, 0, text.length)).toBe(text);
  expect(find(ONE_HASH[8] ?? "", 0, ONE_HASH[8]?.length ?? 0)).toBeUndefined();
});

test("a text longer than 200 letters is not remembered", () => {
  const { find, keep } = textTable<boolean>();
  for (const length of [200, 201]) keep("x".repeat(length), true);
  expect(find("x".repeat(200), 0, 200)).toBe(true);
  expect(find("x".repeat(201), 0, 201)).toBeUndefined();
});
