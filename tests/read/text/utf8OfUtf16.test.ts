import { expect, test } from "vitest";
import { utf8OfUtf16 } from "../../../src/read/text/utf8OfUtf16.js";
import { chunksOf } from "./rowsOf.js";

async function utf8(bytes: Buffer, bigEndian: boolean, size: number): Promise<Buffer> {
  const found: Buffer[] = [];
  for await (const piece of utf8OfUtf16(chunksOf(bytes, size), bigEndian)) found.push(piece);
  return Buffer.concat(found);
}

const text = "\ufeffa;\u00f6\u20ac \u{1f40e}\r\n\u2028";

test.each([1, 2, 3, 5, 1000])("every letter comes through, in chunks of %i bytes, either end first", async (size) => {
  const little = Buffer.from(text, "utf16le");
  expect((await utf8(little, false, size)).toString("utf8")).toBe(text);
  expect((await utf8(Buffer.from(little).swap16(), true, size)).toString("utf8")).toBe(text);
});

test.each([1, 2, 1000])("half a pair and half a unit become a byte that is no UTF-8, in chunks of %i bytes", async (size) => {
  const broken = Buffer.from("a\ud83d\nb", "utf16le");
  expect(await utf8(broken, false, size)).toEqual(Buffer.from("a\xff\nb", "latin1"));
  expect(await utf8(Buffer.from("a\ud83d", "utf16le"), false, size)).toEqual(Buffer.from("a\xff", "latin1"));
  expect(await utf8(Buffer.from("ab", "utf16le").subarray(0, 3), false, size)).toEqual(Buffer.from("a\xff", "latin1"));
});
