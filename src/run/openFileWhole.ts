import { randomUUID } from "node:crypto";
import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync, writeSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { writeRefusal } from "./writeRefusal.js";

const BUFFERED_BYTES = 1 << 20;

/** A file that is written piece by piece and stands under its name only when it is whole. */
export interface WholeFile {
  /** @throws StudyError `cannot_write`. */
  readonly write: (data: Uint8Array) => void;
  /** Puts the file in its place, over an old one. @throws StudyError `cannot_write`. */
  readonly finish: () => void;
  /** Takes away what was written; of no effect once it is finished. */
  readonly discard: () => void;
}

/**
 * Opens a file that grows too large to be held in memory: it is written beside its place under another name and renamed when it is finished, so that whoever opens
 * the path sees the old content or the new, never a part. Folders on the way are made.
 *
 * @throws StudyError `cannot_write`.
 *
 * @private
 */
export function openFileWhole(path: string): WholeFile {
  const temporary = join(dirname(path), `.${basename(path).slice(0, 100)}.${randomUUID()}.tmp`);
  let pending: Uint8Array[] = [];
  let pendingBytes = 0;
  let handle: number | null = null;
  const close = () => {
    if (handle !== null) closeSync(handle);
    handle = null;
  };
  const discard = () => {
    close();
    try {
      rmSync(temporary, { force: true });
    } catch {
      // Where it could not be made there is nothing to take away.
    }
  };
  const attempt = (action: (open: number) => void) => {
    try {
      handle ??= opened(temporary);
      action(handle);
    } catch (fault) {
      discard();
      throw writeRefusal(path, fault);
    }
  };
  const flush = (open: number) => {
    const data = Buffer.concat(pending);
    pending = [];
    pendingBytes = 0;
    for (let at = 0; at < data.length;) at += writeSync(open, data, at);
  };
  attempt(() => undefined);
  return {
    write(data) {
      pending.push(data);
      pendingBytes += data.length;
      if (pendingBytes >= BUFFERED_BYTES) attempt(flush);
    },
    finish() {
      attempt((open) => {
        flush(open);
        fsyncSync(open);
        close();
        renameSync(temporary, path);
      });
    },
    discard,
  };
}

function opened(path: string): number {
  mkdirSync(dirname(path), { recursive: true });
  return openSync(path, "wx");
}
