import type { LineFault } from "./LineFault.js";

/** Some complete physical lines of a file, in order, without their line ends. */
export interface TextBlock {
  readonly lines: readonly string[];
  /** The line end that all of them have in the file, or that of each line; the last line of a file may have none. */
  readonly ends: string | readonly string[];
  /** Lines that are not text, by index into `lines`. */
  readonly faults: ReadonlyMap<number, LineFault>;
  /** Bytes of faulty lines that their text does not give back, by index into `lines`. */
  readonly bytes: ReadonlyMap<number, Buffer>;
}
