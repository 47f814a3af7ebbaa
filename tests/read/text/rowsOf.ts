import { cellsOf } from "../../../src/read/text/cellsOf.js";
import { readRows } from "../../../src/read/text/readRows.js";
import { textBlocks } from "../../../src/read/text/textBlocks.js";

/** Bytes in chunks of a given size, as a file would give them. */
export async function* chunksOf(content: string | Uint8Array, size = 1 << 16): AsyncGenerator<Buffer> {
  const bytes = Buffer.from(content as string);
  for (let at = 0; at < bytes.length; at += size) {
    await Promise.resolve();
    yield bytes.subarray(at, at + size);
  }
}

/** What a sink was told: `line: cells joined by |`, or `line: !fault`. The first record counts as the header. */
export async function rowsOf(
  content: string | Uint8Array,
  size?: number,
  isGood: (cells: readonly string[]) => boolean = () => true,
): Promise<string[]> {
  const told: string[] = [];
  let width: number | null = null;
  await readRows(textBlocks(chunksOf(content, size)), ",", {
    width: () => width,
    fits: (cells) => cells.length === width && isGood(cells),
    row(record, line, bareQuote) {
      const cells = cellsOf(record);
      width ??= cells.length;
      told.push(`${String(line)}: ${cells.join("|")}${bareQuote ? " (bare quote)" : ""}`);
    },
    refused(fault, line) {
      told.push(`${String(line)}: !${fault}`);
    },
  });
  return told;
}
