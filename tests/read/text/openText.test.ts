import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Encoding } from "../../../src/read/text/Encoding.js";
import { expect, test } from "vitest";
import { openText } from "../../../src/read/text/openText.js";
import { inFolder } from "../folder.js";

async function linesOf(folder: string, content: string | Uint8Array) {
  const path = join(folder, "a.csv");
  writeFileSync(path, content);
  const { blocks, digest } = openText(path, "a.csv");
  let lines = 0;
  for await (const block of blocks) lines += block.lines.length;
  return { lines, ...digest() };
}

// "abc" and a million times "a": the examples of FIPS 180-2, appendices B.1 and B.3.
test("size and SHA-256 are those of the bytes on disk, however many chunks they come in", async () => {
  await inFolder({}, async (folder) => {
    expect(await linesOf(folder, "abc")).toEqual({
      lines: 1,
      bytes: 3,
      sha256: "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
    });
    expect(await linesOf(folder, "a".repeat(1_000_000))).toEqual({
      lines: 1,
      bytes: 1_000_000,
      sha256: "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
    });
    const many = Buffer.from(`\uFEFF${"line é\r\n".repeat(200_000)}`);
    expect(await linesOf(folder, many)).toEqual({
      lines: 200_000,
      bytes: many.length,
      sha256: createHash("sha256").update(many).digest("hex"),
    });
  });
});

test("a file that goes away while it is opened is refused with the system's reason", async () => {
  const { blocks } = openText("/nowhere/at/all.csv", "all.csv");
  await expect(blocks[Symbol.asyncIterator]().next()).rejects.toMatchObject({
    code: "file_unreadable",
    message: "all.csv: the file cannot be read (ENOENT).",
  });
});

async function textOf(
  content: Uint8Array,
  stated?: Encoding,
): Promise<{ lines: string[]; faults: string[]; encoding: Encoding }> {
  return inFolder({ "a.csv": content }, async (folder) => {
    const { blocks, encoding } = openText(join(folder, "a.csv"), "a.csv", stated);
    const [lines, faults]: [string[], string[]] = [[], []];
    for await (const block of blocks) {
      lines.push(...block.lines);
      faults.push(...block.faults.values());
    }
    return { lines, faults, encoding: encoding() };
  });
}

const hoof = "\ufeffHuf;L\u00e4nge\r\nRappe \u{1f40e};13,5\r\n";

test("UTF-16 that begins with its mark is read, either end first, stated or not", async () => {
  const little = Buffer.from(hoof, "utf16le");
  const expected = { lines: ["Huf;L\u00e4nge", "Rappe \u{1f40e};13,5"], faults: [], encoding: "utf-16" };
  expect(await textOf(little)).toEqual(expected);
  expect(await textOf(Buffer.from(little).swap16())).toEqual(expected);
  expect(await textOf(little, "utf-16")).toEqual(expected);
});

// Bytes and letters: the table of code page 1252 of the Unicode Consortium, CP1252.TXT, from memory.
test("Windows-1252 is read by its own table, not as ISO 8859-1", async () => {
  const bytes = Buffer.from([0x80, 0x20, 0x93, 0x94, 0x20, 0x85, 0x20, 0xe4, 0x0a, 0x81, 0x0a]);
  expect(await textOf(bytes, "windows-1252")).toEqual({
    lines: ["\u20ac \u201c\u201d \u2026 \u00e4", "\ufffd"],
    faults: ["not_windows_1252"],
    encoding: "windows-1252",
  });
});

test("an encoding that the file itself contradicts is refused", async () => {
  await expect(textOf(Buffer.from(hoof, "utf16le"), "windows-1252")).rejects.toMatchObject({
    code: "not_csv_text",
    message: "a.csv: study.json says windows-1252, and the file begins with the mark of utf-16.",
  });
  await expect(textOf(Buffer.from(hoof, "utf8"), "windows-1252")).rejects.toMatchObject({ code: "not_csv_text" });
  await expect(textOf(Buffer.from("abc", "utf16le"), "utf-16")).rejects.toMatchObject({
    code: "not_csv_text",
    message: "a.csv: study.json says utf-16, and the file does not begin with the byte order mark of it.",
  });
});
