import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { StudyError } from "../../study/StudyError.js";
import { refusals } from "../report/refusals.js";
import { refuseOtherFormats } from "./refuseOtherFormats.js";
import { systemCode } from "./systemCode.js";
import type { TextBlock } from "./TextBlock.js";
import { textBlocks } from "./textBlocks.js";

const CHUNK_BYTES = 1 << 19;

/** A text file being read. */
export interface OpenText {
  readonly blocks: AsyncIterable<TextBlock>;
  /** Size and SHA-256 of the bytes read so far: of the whole file once `blocks` has come to its end. */
  readonly digest: () => { readonly bytes: number; readonly sha256: string };
}

/**
 * Opens a UTF-8 text file to be read in blocks of lines, hashing it on the way.
 *
 * @throws StudyError while the blocks are taken: `not_csv_text` for a workbook or UTF-16 text, `file_unreadable` when the system refuses.
 */
export function openText(path: string, file: string): OpenText {
  const hash = createHash("sha256");
  let bytes = 0;
  async function* chunks(): AsyncGenerator<Buffer> {
    try {
      for await (const chunk of createReadStream(path, { highWaterMark: CHUNK_BYTES }) as AsyncIterable<Buffer>) {
        if (bytes === 0) refuseOtherFormats(chunk, file);
        hash.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    } catch (error) {
      if (error instanceof StudyError) throw error;
      throw error instanceof Error && "code" in error ? refusals.unreadable(file, systemCode(error)) : error;
    }
  }
  return { blocks: textBlocks(chunks()), digest: () => ({ bytes, sha256: hash.copy().digest("hex") }) };
}
