import type { CutRecord } from "./CutRecord.js";

/** Finds the cells of records, in one object that is used again for every record. */
export interface RecordCutter {
  /** A record without quotes. */
  readonly plain: (text: string) => CutRecord;
  /** A record whose cells were already taken apart. */
  readonly parted: (cells: readonly string[]) => CutRecord;
}

/** A cutter of records whose cells are parted by a delimiter of one character. */
export function recordCutter(delimiter: string): RecordCutter {
  const code = delimiter.charCodeAt(0);
  const bounds: number[] = [];
  const record = { text: "", width: 0, bounds };
  return {
    plain(text) {
      const { length } = text;
      let at = 1;
      bounds[0] = 0;
      for (let index = 0; index < length; index++) {
        if (text.charCodeAt(index) !== code) continue;
        bounds[at] = index;
        bounds[at + 1] = index + 1;
        at += 2;
      }
      bounds[at] = length;
      record.text = text;
      record.width = (at + 1) >> 1;
      return record;
    },
    parted(cells) {
      let at = 0;
      cells.forEach((cell, index) => {
        bounds[2 * index] = at;
        at += cell.length;
        bounds[2 * index + 1] = at;
      });
      record.text = cells.join("");
      record.width = cells.length;
      return record;
    },
  };
}
