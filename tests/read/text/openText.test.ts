import { createHash } from "node:crypto";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
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
