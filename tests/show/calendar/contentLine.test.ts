import fc from "fast-check";
import { expect, test } from "vitest";
import { contentLine } from "../../../src/show/calendar/contentLine.js";

const octets = (text: string) => Buffer.byteLength(text, "utf8");

// RFC 5545 section 3.1: "Lines of text SHOULD NOT be longer than 75 octets, excluding the line break."
test("75 octets stay one line, 76 are folded with CRLF and one space", () => {
  expect(contentLine("x".repeat(75))).toBe(`${"x".repeat(75)}\r\n`);
  expect(contentLine("x".repeat(76))).toBe(`${"x".repeat(75)}\r\n x\r\n`);
  expect(contentLine("x".repeat(75 + 74 + 1))).toBe(`${"x".repeat(75)}\r\n ${"x".repeat(74)}\r\n x\r\n`);
});

test("octets count, not letters, and no character is cut", () => {
  // é has 2 octets: 37 of them are 74, and the next would make 76.
  expect(contentLine("é".repeat(38))).toBe(`${"é".repeat(37)}\r\n é\r\n`);
  // A horse's head has 4 octets: 18 make 72, the next 76.
  expect(contentLine("🐴".repeat(19))).toBe(`${"🐴".repeat(18)}\r\n 🐴\r\n`);
});

test("unfolding gives the line back, whatever is in it, and no line is too long", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", maxLength: 400 }), (text) => {
      const line = text.replace(/[\r\n]/g, "");
      const written = contentLine(line);
      expect(written.replaceAll("\r\n ", "").replace(/\r\n$/, "")).toBe(line);
      for (const each of written.split("\r\n")) expect(octets(each)).toBeLessThanOrEqual(75);
    }),
  );
});
