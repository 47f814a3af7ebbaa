import { isAscii, isUtf8 } from "node:buffer";
import type { Encoding } from "./Encoding.js";
import type { LineFault } from "./LineFault.js";
import type { TextBlock } from "./TextBlock.js";

const LF = 10;
const CR = 13;
/** A line longer than this is no row of a table; its text is not kept. */
const LONGEST_LINE_BYTES = 1_000_000;
const SHOWN_BYTES = 200;

/**
 * Cuts bytes into blocks of complete physical lines. A line ends with LF, CR LF or CR; a byte order mark is taken off. Lines that are no
 * text of the encoding, hold NUL bytes or are longer than 1,000,000 bytes are marked; the others around them are not touched.
 *
 * The bytes are UTF-8 (for `utf-16` those that `utf8OfUtf16` gives), or of an encoding in which the bytes below 128 are ASCII wherever they stand and
 * which `decode` reads, putting U+FFFD for a byte that it does not have.
 */
export async function* textBlocks(
  chunks: AsyncIterable<Buffer>,
  encoding: Encoding = "utf-8",
  decode?: (bytes: Buffer) => string,
): AsyncGenerator<TextBlock> {
  const blockOf = (bytes: Buffer) => (decode === undefined ? utf8Block(bytes, encoding) : decodedBlock(bytes, decode));
  let rest: Buffer = Buffer.alloc(0);
  let started = false;
  let skipping = false;
  for await (const chunk of chunks) {
    let bytes = rest.length === 0 ? chunk : Buffer.concat([rest, chunk]);
    if (!started && bytes.length < 3) {
      rest = bytes;
      continue;
    }
    if (!started) bytes = withoutMark(bytes);
    started = true;
    if (skipping) {
      const end = firstLineEnd(bytes);
      if (end === -1) {
        rest = halfLineEnd(bytes);
        continue;
      }
      bytes = bytes.subarray(end);
      skipping = false;
    }
    const end = lastLineEnd(bytes);
    if (end > 0) yield blockOf(bytes.subarray(0, end));
    rest = bytes.subarray(Math.max(end, 0));
    if (rest.length > LONGEST_LINE_BYTES) {
      const half = halfLineEnd(rest);
      yield blockOf(rest.subarray(0, rest.length - half.length));
      rest = half;
      skipping = true;
    }
  }
  if (!started) rest = withoutMark(rest);
  if (rest.length > 0) yield blockOf(rest);
}

function withoutMark(bytes: Buffer): Buffer {
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? bytes.subarray(3) : bytes;
}

/** A CR at the very end, which may be half of a CR LF. */
function halfLineEnd(bytes: Buffer): Buffer {
  return bytes.subarray(bytes.at(-1) === CR ? bytes.length - 1 : bytes.length);
}

/** Just after the first line end, or -1. */
function firstLineEnd(bytes: Buffer): number {
  const lf = bytes.indexOf(LF);
  const cr = bytes.subarray(0, lf === -1 ? bytes.length - 1 : lf).indexOf(CR);
  if (cr === -1) return lf === -1 ? -1 : lf + 1;
  return cr + 1 === lf ? lf + 1 : cr + 1;
}

function lastLineEnd(bytes: Buffer): number {
  const cr = bytes.length < 2 ? -1 : bytes.lastIndexOf(CR, bytes.length - 2);
  return Math.max(bytes.lastIndexOf(LF), cr) + 1;
}

function utf8Block(bytes: Buffer, encoding: Encoding): TextBlock {
  if (isUtf8(bytes)) return checked(cut(bytes.toString("utf8")), new Map(), new Map());
  const latin1 = cut(bytes.toString("latin1"));
  const faults = new Map<number, LineFault>();
  const kept = new Map<number, Buffer>();
  const lines = latin1.lines.map((line, index) => {
    const own = Buffer.from(line, "latin1");
    if (!isUtf8(own)) {
      faults.set(index, encoding === "utf-16" ? "not_utf16" : "not_utf8");
      if (encoding !== "utf-16") kept.set(index, own);
    }
    return own.toString("utf8");
  });
  return checked({ lines, ends: latin1.ends }, faults, kept);
}

function decodedBlock(bytes: Buffer, decode: (bytes: Buffer) => string): TextBlock {
  if (isAscii(bytes)) return checked(cut(bytes.toString("latin1")), new Map(), new Map());
  const { lines, ends } = cut(decode(bytes));
  const faults = new Map<number, LineFault>();
  const kept = new Map<number, Buffer>();
  let raw: readonly string[] | null = null;
  lines.forEach((line, index) => {
    if (!line.includes("\ufffd")) return;
    raw ??= cut(bytes.toString("latin1")).lines;
    faults.set(index, "not_windows_1252");
    kept.set(index, Buffer.from(raw[index] ?? "", "latin1"));
  });
  return checked({ lines, ends }, faults, kept);
}

type Cut = Pick<TextBlock, "lines" | "ends">;

function cut(text: string): Cut {
  if (!text.includes("\r")) return { lines: withoutLast(text.split("\n")), ends: "\n" };
  if (!/\r(?!\n)|(?<!\r)\n/.test(text)) return { lines: withoutLast(text.split("\r\n")), ends: "\r\n" };
  const parts = text.split(/(\r\n|\r|\n)/);
  const lines = withoutLast(parts.filter((_, index) => index % 2 === 0));
  return { lines, ends: parts.filter((_, index) => index % 2 === 1) };
}

function withoutLast(lines: string[]): string[] {
  if (lines.at(-1) === "") lines.pop();
  return lines;
}

function checked({ lines, ends }: Cut, faults: Map<number, LineFault>, bytes: Map<number, Buffer>): TextBlock {
  const suspect = lines.some((line) => line.length > LONGEST_LINE_BYTES || line.includes("\0"));
  if (!suspect) return { lines, ends, faults, bytes };
  const shown = lines.map((line, index) => {
    if (line.includes("\0")) faults.set(index, "nul_byte");
    if (line.length <= LONGEST_LINE_BYTES) return line;
    faults.set(index, "line_too_long");
    bytes.delete(index);
    return line.slice(0, SHOWN_BYTES);
  });
  return { lines: shown, ends, faults, bytes };
}
