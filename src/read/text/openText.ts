import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { StudyError } from "../../study/StudyError.js";
import { refusals } from "../report/refusals.js";
import type { Encoding } from "./Encoding.js";
import { markedEncoding } from "./markedEncoding.js";
import { refuseOtherFormats } from "./refuseOtherFormats.js";
import { systemCode } from "./systemCode.js";
import type { TextBlock } from "./TextBlock.js";
import { textBlocks } from "./textBlocks.js";
import { utf8OfUtf16 } from "./utf8OfUtf16.js";

const CHUNK_BYTES = 1 << 19;

/** A text file being read. */
export interface OpenText {
  readonly blocks: AsyncIterable<TextBlock>;
  /** Size and SHA-256 of the bytes read so far: of the whole file once `blocks` has come to its end. */
  readonly digest: () => { readonly bytes: number; readonly sha256: string };
  /** The encoding it is read in, known once the first block is. */
  readonly encoding: () => Encoding;
}

/**
 * Opens a text file to be read in blocks of lines, hashing it on the way. It is read in the encoding that is `stated`; when none is, as UTF-16
 * when it begins with the mark of UTF-16, else as UTF-8.
 *
 * @throws StudyError while the blocks are taken: `not_csv_text` for a workbook, for text whose mark contradicts what is stated, and for UTF-16 without a mark,
 * `file_unreadable` when the system refuses.
 */
export function openText(path: string, file: string, stated?: Encoding): OpenText {
  const hash = createHash("sha256");
  let bytes = 0;
  let encoding: Encoding = stated ?? "utf-8";
  async function* chunks(): AsyncGenerator<Buffer> {
    try {
      for await (const chunk of createReadStream(path, { highWaterMark: CHUNK_BYTES }) as AsyncIterable<Buffer>) {
        hash.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    } catch (error) {
      if (error instanceof StudyError) throw error;
      throw error instanceof Error && "code" in error ? refusals.unreadable(file, systemCode(error)) : error;
    }
  }
  async function* blocks(): AsyncGenerator<TextBlock> {
    const source = chunks();
    const first = await source.next();
    const start = first.done === true ? Buffer.alloc(0) : first.value;
    const mark = markedEncoding(start);
    if (stated !== undefined && (mark === null ? stated === "utf-16" : mark.encoding !== stated)) {
      throw refusals.encodingContradicted(file, stated, mark?.encoding ?? null);
    }
    encoding = stated ?? mark?.encoding ?? "utf-8";
    if (mark?.encoding !== "utf-16") refuseOtherFormats(start, file);
    const all = prepended(start, source);
    if (encoding === "utf-16") yield* textBlocks(utf8OfUtf16(all, mark?.bigEndian === true), encoding);
    else if (encoding === "utf-8") yield* textBlocks(all, encoding);
    else {
      const { default: iconv } = await import("iconv-lite");
      yield* textBlocks(all, encoding, (piece) => iconv.decode(piece, encoding));
    }
  }
  return { blocks: blocks(), digest: () => ({ bytes, sha256: hash.copy().digest("hex") }), encoding: () => encoding };
}

async function* prepended(first: Buffer, rest: AsyncGenerator<Buffer>): AsyncGenerator<Buffer> {
  if (first.length > 0) yield first;
  yield* rest;
}
