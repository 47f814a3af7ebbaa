import { isUtf8 } from "node:buffer";
import type { LineFault } from "./LineFault.js";
import type { TextBlock } from "./TextBlock.js";

const LF = 10;
const CR = 13;
/** A line longer than this is no row of a table; its text is not kept. */
const LONGEST_LINE_BYTES = 1_000_000;
const SHOWN_BYTES = 200;

/**
 * Cuts UTF-8 bytes into blocks of complete physical lines. A line ends with LF, CR LF or CR; a byte order mark is taken off. Lines that are
 * not UTF-8, hold NUL bytes or are longer than 1,000,000 bytes are marked; the others around them are not touched.
 */
export async function* textBlocks(chunks: AsyncIterable<Buffer>): AsyncGenerator<TextBlock> {
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

function blockOf(bytes: Buffer): TextBlock {
  const faults = new Map<number, LineFault>();
  const valid = isUtf8(bytes);
  const text = valid ? bytes.toString("utf8") : bytes.toString("latin1");
  const raw = text.includes("\r") ? text.split(/\r\n|\r|\n/) : text.split("\n");
  if (raw.at(-1) === "") raw.pop();
  const lines = valid ? raw : raw.map((line, index) => decoded(line, index, faults));
  const suspect = text.includes("\0") || text.length > LONGEST_LINE_BYTES;
  if (!suspect) return { lines, faults };
  const shown = lines.map((line, index) => {
    if (line.includes("\0")) faults.set(index, "nul_byte");
    if (line.length <= LONGEST_LINE_BYTES) return line;
    faults.set(index, "line_too_long");
    return line.slice(0, SHOWN_BYTES);
  });
  return { lines: shown, faults };
}

function decoded(latin1: string, index: number, faults: Map<number, LineFault>): string {
  const bytes = Buffer.from(latin1, "latin1");
  if (!isUtf8(bytes)) faults.set(index, "not_utf8");
  return bytes.toString("utf8");
}
