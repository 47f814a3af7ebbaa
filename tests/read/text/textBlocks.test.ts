import { expect, test } from "vitest";
import { textBlocks } from "../../../src/read/text/textBlocks.js";
import { chunksOf } from "./rowsOf.js";

async function linesOf(content: string | Uint8Array, size?: number): Promise<string[]> {
  const told: string[] = [];
  for await (const { lines, faults } of textBlocks(chunksOf(content, size))) {
    lines.forEach((line, index) => {
      const fault = faults.get(index);
      told.push(fault === undefined ? line : `!${fault}`);
    });
  }
  return told;
}

const sizes = [1, 2, 3, 5, 7, 1000];

test.each(sizes)("LF, CR LF and CR end a line, wherever the chunks of %i bytes are cut", async (size) => {
  expect(await linesOf("a\r\nb\rc\n\r\n\r\rd", size)).toEqual(["a", "b", "c", "", "", "", "d"]);
});

test.each(sizes)("a byte order mark is taken off once, in chunks of %i bytes", async (size) => {
  expect(await linesOf("\uFEFFa\n\uFEFFb", size)).toEqual(["a", "\uFEFFb"]);
});

test.each(sizes)("letters of several bytes survive chunks of %i bytes", async (size) => {
  expect(await linesOf("é\nföhr 🐴\n", size)).toEqual(["é", "föhr 🐴"]);
});

test.each(sizes)("a line with bytes that are not UTF-8 is marked and no other, in chunks of %i bytes", async (size) => {
  const bytes = Buffer.concat([Buffer.from("ä\n"), Buffer.from([0x66, 0xe9, 0x0a]), Buffer.from("é\r\n")]);
  expect(await linesOf(bytes, size)).toEqual(["ä", "!not_utf8", "é"]);
});

test("a replacement character that stands in the file is text", async () => {
  expect(await linesOf("a\uFFFDb\n")).toEqual(["a\uFFFDb"]);
});

test("a line with NUL bytes is marked", async () => {
  expect(await linesOf("a\nb\0\nc")).toEqual(["a", "!nul_byte", "c"]);
});

test.each([
  ["LF", "\n"],
  ["CR LF", "\r\n"],
  ["CR", "\r"],
])("a line of ten million bytes ended by %s is one marked line and not kept", async (_, end) => {
  for (const size of [65_536, 999_999, 1_000_001]) {
    const text = `a${end}${"x".repeat(10_000_000)}${end}b${end}`;
    expect(await linesOf(text, size)).toEqual(["a", "!line_too_long", "b"]);
  }
});

test("a long line that is cut in the middle of a CR LF ends once", async () => {
  const text = `${"x".repeat(2_000_000)}\r\nb`;
  expect(await linesOf(text, 2_000_001)).toEqual(["!line_too_long", "b"]);
  expect(await linesOf(`${"x".repeat(2_000_000)}\rb`, 2_000_001)).toEqual(["!line_too_long", "b"]);
});

test("a long line whose CR is the last byte of a chunk ends there, with or without an LF in the next", async () => {
  const long = "x".repeat(2_999_999);
  expect(await linesOf(`${long}\rb\rc`, 1_500_000)).toEqual(["!line_too_long", "b", "c"]);
  expect(await linesOf(`${long}\r\nb\r\nc`, 1_500_000)).toEqual(["!line_too_long", "b", "c"]);
});

test("a line of exactly a million bytes is text", async () => {
  expect((await linesOf(`${"x".repeat(1_000_000)}\nb`))[0]).toHaveLength(1_000_000);
});

test("no bytes, no lines", async () => {
  expect(await linesOf("")).toEqual([]);
  expect(await linesOf("\uFEFF")).toEqual([]);
});

test("the line ends are told: one for all, or each where they differ", async () => {
  const endsOf = async (content: string) => {
    for await (const { ends } of textBlocks(chunksOf(content))) return ends;
    return null;
  };
  expect(await endsOf("a\nb\n")).toBe("\n");
  expect(await endsOf("a\r\nb\r\n")).toBe("\r\n");
  expect(await endsOf("a\r\nb\nc\rd")).toEqual(["\r\n", "\n", "\r"]);
});

test("an encoding with a decoder: letters are decoded, a byte it does not have marks its line, whose bytes are kept", async () => {
  // The decoder of Node knows ISO 8859-1 as latin1; 0x81 stands for a byte that has no letter.
  const decode = (bytes: Buffer) => bytes.toString("latin1").replaceAll("\x81", "\ufffd");
  const bytes = Buffer.from("plain\nf\u00f6hr\nbad\x81\n", "latin1");
  for await (const block of textBlocks(chunksOf(bytes), "windows-1252", decode)) {
    expect(block.lines.slice(0, 2)).toEqual(["plain", "f\u00f6hr"]);
    expect([...block.faults]).toEqual([[2, "not_windows_1252"]]);
    expect(block.bytes.get(2)).toEqual(Buffer.from("bad\x81", "latin1"));
  }
});

test("the bytes of a line that is not UTF-8 are kept as they stand", async () => {
  const bad = Buffer.from([0x66, 0xe9, 0x2c, 0xff]);
  for await (const block of textBlocks(chunksOf(Buffer.concat([Buffer.from("\u00e4\n"), bad, Buffer.from("\n")])))) {
    expect(block.bytes.get(1)).toEqual(bad);
  }
});
